package web

import (
	"net/http"
	"slices"
	"strings"
	"testing"

	"garner/internal/desk"
	"garner/internal/record"
	"garner/internal/words"
)

// answerForm is the form of a job that has a button of a name.
func answerForm(t *testing.T, page *element, job, did string) *element {
	t.Helper()
	for _, f := range page.all(func(e *element) bool { return e.name == "form" && e.attrs["action"] == "/week/answer" }) {
		if f.filled()["job"] == job && slices.ContainsFunc(f.named("button"), func(b *element) bool { return b.attrs["value"] == did }) {
			return f
		}
	}
	t.Fatalf("no form has %s %s", job, did)
	return nil
}

// jobsTold are the ids of the jobs on a page.
func jobsTold(page *element) []string {
	var out []string
	for _, f := range page.all(func(e *element) bool { return e.name == "form" && e.attrs["action"] == "/week/answer" }) {
		if id := f.filled()["job"]; !slices.Contains(out, id) {
			out = append(out, id)
		}
	}
	return out
}

const chitted = "chit:pot-27t"

// A job is ticked, stands struck at the foot with Undo, and is told again once that is
// pressed.
func TestAJobIsTickedAndTakenBack(t *testing.T) {
	h, office := garden(t, words.English())
	page := open(t, h, "/week?days=28")
	page = follow(t, h, post(t, h, answerForm(t, page, chitted, "done"), "did", "done", "minutes-chit_pot-27t", "12,5", "note-chit_pot-27t", "forty of them"))
	if slices.Contains(jobsTold(page), chitted) {
		t.Error("it is still told")
	}
	if kept := answersOf(t, office); len(kept) != 1 || kept[0].Job != chitted || kept[0].Did != record.Done {
		t.Errorf("kept %+v", kept)
	}
	line := page.one(t, "section", "id", "answered").one(t, "li")
	if got := line.words(); !strings.Contains(got, "Set") || !strings.Contains(got, "seed potato") || !strings.Contains(got, "Done") {
		t.Errorf("answered: %q", got)
	}
	line.one(t, "span", "class", "what struck")
	back := line.one(t, "form")
	if got := back.filled()["back"]; got != "/week?days=28" {
		t.Errorf("undo leads to %q", got)
	}
	page = follow(t, h, post(t, h, back))
	if !slices.Contains(jobsTold(page), chitted) || len(answersOf(t, office)) != 0 {
		t.Error("taken back, it is not told")
	}
}

// answersOf are the answers that stand.
func answersOf(t *testing.T, office *desk.Office) []record.Answer {
	t.Helper()
	h, err := office.Holding()
	if err != nil {
		t.Fatal(err)
	}
	return h.Answers
}

// The minutes it took and a note go with what was done.
func TestMinutesAndANoteAreKept(t *testing.T) {
	h, office := garden(t, words.English())
	form := detailForm(t, open(t, h, "/week?days=28"), chitted, "done")
	follow(t, h, post(t, h, form, "did", "done", "minutes-chit_pot-27t", "12,5", "note-chit_pot-27t", "forty of them"))
	if kept := answersOf(t, office); len(kept) != 1 || kept[0].Minutes != 12.5 || kept[0].Note != "forty of them" {
		t.Errorf("kept %+v", kept)
	}
}

// detailForm is the form with fields of a job.
func detailForm(t *testing.T, page *element, job, did string) *element {
	t.Helper()
	for _, f := range page.all(func(e *element) bool { return e.name == "form" && e.attrs["class"] == "form" }) {
		if f.filled()["job"] == job && slices.ContainsFunc(f.named("button"), func(b *element) bool { return b.attrs["value"] == did }) {
			return f
		}
	}
	t.Fatalf("no form with fields has %s %s", job, did)
	return nil
}

// A job is put off until a day; what cannot be is told beside the field and what was
// typed stays.
func TestAJobIsPutOff(t *testing.T) {
	h, office := garden(t, words.English())
	page := open(t, h, "/week?days=28")
	const field = "until-chit_pot-27t"
	for _, typed := range []string{"", "2026-12-01", "someday"} {
		w := post(t, h, detailForm(t, page, chitted, "put off"), "did", "put off", field, typed)
		again := read(t, w.Body.String())
		if w.Code != http.StatusUnprocessableEntity || len(answersOf(t, office)) != 0 {
			t.Fatalf("%q: %d, kept %+v", typed, w.Code, answersOf(t, office))
		}
		again.one(t, "div", "id", "f-"+field+"-wrong")
		if got := detailForm(t, again, chitted, "put off").filled()[field]; got != typed {
			t.Errorf("%q became %q", typed, got)
		}
	}
	page = follow(t, h, post(t, h, detailForm(t, page, chitted, "put off"), "did", "put off", field, "2027-01-20"))
	if got := page.one(t, "section", "id", "answered").words(); !strings.Contains(got, "Put off to 20 January") {
		t.Errorf("answered: %q", got)
	}
	if got := page.one(t, "li", "id", "job-chit_pot-27t").words(); !strings.Contains(got, "Put off to 20 January") {
		t.Errorf("told: %q", got)
	}
}

// What putting a job off costs is told when it is asked for, and not before.
func TestPuttingOffIsWeighedWhenAsked(t *testing.T) {
	h, _ := garden(t, words.English())
	page := open(t, h, "/week?days=120")
	job := ""
	for _, id := range jobsTold(page) {
		if strings.HasPrefix(id, "sow:") {
			job = id
			break
		}
	}
	if job == "" || strings.Contains(page.words(), "it costs") {
		t.Fatalf("no sowing, or weighed unasked: %q", job)
	}
	key := jobKey(job)
	page = open(t, h, "/week?days=120&job="+job+"&until-"+key+"=2027-04-30")
	if got := page.one(t, "p", "class", "cost").words(); !strings.Contains(got, "table") {
		t.Errorf("the cost is told as %q", got)
	}
	if _, open := page.one(t, "li", "id", "job-"+key).one(t, "details").attrs["open"]; !open {
		t.Error("it is folded")
	}
	if got := open(t, h, "/week?days=120&job="+job+"&until-"+key+"=soon").words(); !strings.Contains(got, "soon") {
		t.Error("a day that is none is not told")
	}
}

// Skipped twice, it asks once whether to drop the job; kept, it asks no more.
func TestSkippedTwiceItAsksOnce(t *testing.T) {
	h, office := garden(t, words.English())
	again := func() (string, *element) {
		page := open(t, h, "/week?days=70")
		for _, id := range jobsTold(page) {
			if strings.HasPrefix(id, "pick:lee-26") {
				return id, page
			}
		}
		t.Fatalf("no leeks are picked: %v", jobsTold(page))
		return "", nil
	}
	for range 2 {
		id, page := again()
		if strings.Contains(page.words(), "drop it?") {
			t.Fatal("it asks too soon")
		}
		follow(t, h, post(t, h, answerForm(t, page, id, "skipped"), "did", "skipped"))
	}
	id, page := again()
	if got := page.words(); strings.Count(got, "drop it?") != 1 {
		t.Fatalf("it asks %d times", strings.Count(got, "drop it?"))
	}
	follow(t, h, post(t, h, answerForm(t, page, id, "kept"), "did", "kept"))
	if _, page = again(); strings.Contains(page.words(), "drop it?") {
		t.Error("it asks again")
	}
	if n := len(answersOf(t, office)); n != 3 {
		t.Errorf("%d answers", n)
	}
}

// Cut to the hours, what is left out is told; two people have a sheet each; nonsense is
// told beside its field.
func TestTheWeekIsAskedFor(t *testing.T) {
	s, _ := demo()
	code, html := get(t, s, "/week?days=28&hours=0.5&people=2&who=child")
	page := read(t, html)
	if code != http.StatusOK || len(page.all(func(e *element) bool { return e.attrs["class"] == "sheet" })) != 2 {
		t.Errorf("%d", code)
	}
	if got := page.words(); !strings.Contains(got, "Sheet 2 of 2") || !strings.Contains(got, "No time for these") {
		t.Errorf("%s", got)
	}
	for _, wrong := range []string{"days=0", "days=soon", "hours=-1", "hours=NaN", "people=40", "who=cat"} {
		code, html := get(t, s, "/week?"+wrong)
		name, _, _ := strings.Cut(wrong, "=")
		read(t, html).one(t, "div", "id", "f-"+name+"-wrong")
		if code != http.StatusUnprocessableEntity {
			t.Errorf("%s: %d", wrong, code)
		}
	}
}
