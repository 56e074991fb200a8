package web

import (
	"net/url"
	"slices"
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/record"
	"garner/internal/words"
)

// mayWeek is the demo's page in a week of May, with nothing ticked since January.
func mayWeek(t *testing.T) (*element, *desk.Office, func(string, url.Values) *element) {
	t.Helper()
	h, err := desk.Sample("")
	if err != nil {
		t.Fatal(err)
	}
	h.Today = cal.Of(2027, 5, 5)
	office := emptyOffice(t)
	if err := office.Begin(desk.Author{Entry: "begin", At: "2027-05-05T08:00:00Z"}, h); err != nil {
		t.Fatal(err)
	}
	server := newServer(t, optionsOver(office, words.English()))
	send := func(path string, values url.Values) *element {
		w := ask(server, "POST", path, values.Encode())
		to, _, _ := strings.Cut(w.Header().Get("Location"), "#") // a browser keeps that part to itself
		if to == "" {
			t.Fatalf("%s leads nowhere: %d", path, w.Code)
		}
		return open(t, server, to)
	}
	return open(t, server, "/week"), office, send
}

// several is the form that gives several jobs an answer, with all it sends.
func several(t *testing.T, page *element, tag, within, did string) url.Values {
	t.Helper()
	for _, f := range page.one(t, tag, "id", within).all(func(e *element) bool { return e.name == "form" && e.attrs["action"] == "/week/answers" }) {
		values := url.Values{"did": {did}}
		for _, i := range f.named("input") {
			values.Add(i.attrs["name"], i.attrs["value"])
		}
		if len(values["job"]) > 1 && slices.ContainsFunc(f.named("button"), func(b *element) bool { return b.attrs["value"] == did }) {
			return values
		}
	}
	t.Fatalf("nothing within %s answers several jobs with %s", within, did)
	return nil
}

// What nobody ticked stands below the week and is answered with one tap, without script.
func TestWhatIsPastIsAnsweredWithOneTap(t *testing.T) {
	page, office, send := mayWeek(t)
	values := several(t, page, "section", "past", "done")
	page = send("/week/answers", values)
	kept := answersOf(t, office)
	if len(kept) != len(values["job"]) {
		t.Errorf("%d answers for %d jobs", len(kept), len(values["job"]))
	}
	for _, a := range kept {
		if a.Did != record.Done || a.Date >= cal.Of(2027, 5, 1) {
			t.Errorf("kept %+v", a)
		}
	}
	page.one(t, "form", "action", "/undo")
}

// A round has one tick for all of it, and each of its jobs its own.
func TestARoundIsTickedAtOnce(t *testing.T) {
	page, office, send := mayWeek(t)
	values := several(t, page, "li", "job-round_hoe_home", "done")
	told := jobsTold(page)
	for _, id := range values["job"] {
		if !slices.Contains(told, id) {
			t.Errorf("%s has no tick of its own", id)
		}
	}
	page = send("/week/answers", values)
	if kept := answersOf(t, office); len(kept) != len(values["job"]) || kept[0].Date != cal.Of(2027, 5, 5) {
		t.Errorf("%d answers for %d jobs", len(kept), len(values["job"]))
	}
	if left := page.all(func(e *element) bool { return e.attrs["id"] == "job-round_hoe_home" }); len(left) > 0 {
		t.Error("it is still told")
	}
}

// What was done otherwise than proposed is told by its day, amount and store, and taken
// back as one; an amount of nothing is refused beside its field.
func TestDoneOtherwise(t *testing.T) {
	page, office, send := mayWeek(t)
	const job = "pick:rhu-21:7"
	form := answerForm(t, page, job, "done")
	key := jobKey(job)
	for _, f := range page.all(func(e *element) bool { return e.name == "form" && e.filled()["job"] == job }) {
		if _, has := f.filled()["kg-"+key]; has {
			form = f
		}
	}
	values := url.Values{"did": {"done"}}
	for name, value := range form.filled() {
		values.Set(name, value)
	}
	values.Set("kg-"+key, "0")
	if w := ask(newServer(t, optionsOver(office, words.English())), "POST", "/week/answer", values.Encode()); w.Code != 422 || !strings.Contains(w.Body.String(), "no amount above nothing") {
		t.Errorf("nothing got %d", w.Code)
	}
	values.Set("kg-"+key, "2,5")
	values.Set("date-"+key, "2027-05-03")
	send("/week/answer", values)
	h, err := office.Holding()
	if err != nil {
		t.Fatal(err)
	}
	last := h.Records[len(h.Records)-1]
	if last.Planting != "rhu-21" || last.Value != 2.5 || last.Date != cal.Of(2027, 5, 3) {
		t.Errorf("recorded %+v", last)
	}
	if kept := answersOf(t, office); len(kept) != 1 || kept[0].Date != cal.Of(2027, 5, 3) {
		t.Errorf("kept %+v", kept)
	}
}
