package web

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/record"
	"garner/internal/words"
)

// All that is due is told as fed by one form, without script, as one entry.
func TestAllAreFedByOneForm(t *testing.T) {
	sample, err := desk.Sample("")
	if err != nil {
		t.Fatal(err)
	}
	sample.Today, sample.FeedGM2 = cal.Of(2027, 8, 2), 70
	office := emptyOffice(t)
	if err := office.Begin(desk.Author{Entry: "begin", At: "2027-08-02T08:00:00Z"}, sample); err != nil {
		t.Fatal(err)
	}
	h := newServer(t, optionsOver(office, words.English()))
	if !strings.Contains(ask(h, "GET", "/week", "").Body.String(), "By the label and local rules") {
		t.Error("the week feeds without a caution")
	}
	form := open(t, h, "/water/feed").one(t, "form", "id", "feed-all")
	values := url.Values{"how": {"dry"}}
	for _, i := range form.named("input") {
		values.Add(i.attrs["name"], i.attrs["value"])
	}
	buttons := form.named("button")
	if len(buttons) != 2 || len(values["planting"]) < 3 {
		t.Fatalf("%d buttons for %v", len(buttons), values["planting"])
	}
	if got := ask(h, "POST", form.attrs["action"], values.Encode()); got.Code != http.StatusSeeOther {
		t.Fatalf("%d", got.Code)
	}
	now, err := office.Holding()
	if err != nil {
		t.Fatal(err)
	}
	fed := now.Records[len(sample.Records):]
	if len(fed) != len(values["planting"]) || fed[0].What != record.Fed || fed[0].Unit != record.KgUnit {
		t.Errorf("%+v", fed)
	}
	page := ask(h, "GET", "/water/feed", "").Body.String()
	if strings.Contains(page, "feed-all") || !strings.Contains(page, "Last fed dry") {
		t.Error("what was fed is offered again, or is not told")
	}
}
