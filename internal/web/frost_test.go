package web

import (
	"net/http"
	"strings"
	"testing"
	"time"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/desk"
	"garner/internal/holding"
	"garner/internal/record"
	"garner/internal/words"
)

// frostyMay serves the demo in the middle of May, with a frost forecast for tonight.
func frostyMay(t *testing.T) (http.Handler, *desk.Office) {
	t.Helper()
	h, err := desk.Sample("")
	if err != nil {
		t.Fatal(err)
	}
	h.Today = cal.Of(2027, 5, 14)
	h.Weather[0].Forecast = &climate.Record{Days: []climate.Observation{{Date: h.Today, TMinC: climate.Is(5), TMaxC: climate.Is(12)}, {Date: h.Today + 1, TMinC: climate.Is(-4), TMaxC: climate.Is(11)}}}
	s, office := serverOver(h, words.English())
	return s.Handler(), office
}

// The page leads with tonight, says what is to be done by dusk, and links each bed.
func TestFrostIsToldBedByBed(t *testing.T) {
	s, _ := frostyMay(t)
	page := open(t, s, "/frost").words()
	for _, want := range []string{"Tonight about", "by the forecast", "beds are at risk", "Tunnel, left", "By dusk lay fleece", "tender", "in figures", "Left shut"} {
		if !strings.Contains(page, want) {
			t.Errorf("the page does not tell %q", want)
		}
	}
}

// A night can be told without being kept, and one that cannot be is refused beside its
// field, with the night as it stands below.
func TestANightCanBeTold(t *testing.T) {
	s, _ := frostyMay(t)
	told := open(t, s, "/frost?minimum=6&stage-pear=full_bloom")
	if text := told.words(); !strings.Contains(text, "If tonight falls to 6 °C") || !strings.Contains(text, "nothing is kept") || !strings.Contains(text, "As you say: full bloom") {
		t.Errorf("told: %q", text[:min(len(text), 600)])
	}
	for given, want := range map[string]string{"cold": "cold is not a temperature", "-99": "from -40 to 30", "NaN": "NaN is not a temperature"} {
		got := ask(s, "GET", "/frost?minimum="+given, "")
		if got.Code != http.StatusUnprocessableEntity {
			t.Errorf("%s got %d", given, got.Code)
		}
		if text := read(t, got.Body.String()).words(); !strings.Contains(text, want) || !strings.Contains(text, "by the forecast") {
			t.Errorf("%s: %q is not told", given, want)
		}
	}
	if again := open(t, s, "/frost").words(); strings.Contains(again, "nothing is kept") {
		t.Error("the told night was kept")
	}
}

// A frost that is likely to hurt something is told on the table, the ground and the beds
// concerned, in one line, and on no other bed.
func TestTonightsFrostIsToldElsewhere(t *testing.T) {
	s, office := frostyMay(t)
	var tonight *desk.FrostTonight
	for range 600 { // it is worked out apart from the pages
		var err error
		if tonight, err = office.FrostTonight(); err != nil {
			t.Fatal(err)
		}
		if tonight != nil {
			break
		}
		time.Sleep(100 * time.Millisecond)
	}
	if tonight == nil || tonight.Odds < 0.9 || tonight.MinimumC > -2 || len(tonight.Beds) < 3 {
		t.Fatalf("tonight: %+v", tonight)
	}
	lines := func(path string) int {
		return len(open(t, s, path).all(func(e *element) bool { return e.attrs["class"] == "frost-line" }))
	}
	for path, want := range map[string]int{"/": 1, "/ground": 1, "/beds/t1": 1, "/beds/h11": 0} {
		if got := lines(path); got != want {
			t.Errorf("%s tells it %d times, want %d", path, got, want)
		}
	}
}

// Without weather, beds or plants the page tells so.
func TestFrostWithNothingToTell(t *testing.T) {
	h, err := desk.Sample("")
	if err != nil {
		t.Fatal(err)
	}
	for name, change := range map[string]func(h *holding.Holding){
		"Nothing stands that a frost could hurt": func(h *holding.Holding) {
			h.Plantings, h.Records, h.Batches, h.Changes, h.Wishes = nil, nil, nil, nil, nil
		},
		"weather": func(h *holding.Holding) { h.Weather = nil },
	} {
		own := *h
		change(&own)
		s, office := serverOver(&own, words.English())
		if got := ask(s.Handler(), "GET", "/frost", ""); got.Code != http.StatusOK || !strings.Contains(read(t, got.Body.String()).words(), name) {
			t.Errorf("%s: %d %q", name, got.Code, read(t, got.Body.String()).words())
		}
		if _, err := office.FrostTonight(); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// A stage of blossom that was seen is kept as a record, stands on the page from then on,
// and is told once; one that there is none of is refused.
func TestBlossomIsRecorded(t *testing.T) {
	h, office := garden(t, words.English())
	tell := func() *element { return formTo(t, open(t, h, "/frost"), "/frost/blossom") }
	form := tell()
	page := follow(t, h, post(t, h, form, "stage-pear", "full_bloom"))
	kept, err := office.Holding()
	if err != nil {
		t.Fatal(err)
	}
	r := kept.Records[len(kept.Records)-1]
	if r.What != record.Blossomed || r.Feature != "pear" || r.Stage != record.FullBloom {
		t.Fatalf("%+v", r)
	}
	if !strings.Contains(page.words(), "As you say: full bloom") {
		t.Error("the page does not tell the stage that was kept")
	}
	n := len(kept.Records)
	post(t, h, tell(), "stage-pear", "full_bloom")
	if kept, err = office.Holding(); err != nil || len(kept.Records) != n {
		t.Errorf("told again the same, %d records became %d, %v", n, len(kept.Records), err)
	}
	for _, wrong := range [][3]string{{"stage-pear", "ripe", "no stage of the blossom of"}, {"stage-pear", "pink", "Its stages are"}, {"stage-nowhere", "pink", "no stages of blossom"}} {
		got := post(t, h, tell(), wrong[0], wrong[1])
		if got.Code < 400 || got.Code >= 500 || !strings.Contains(read(t, got.Body.String()).words(), wrong[2]) {
			t.Errorf("%v: %d %.300s", wrong, got.Code, read(t, got.Body.String()).words())
		}
	}
	if kept, err = office.Holding(); err != nil || len(kept.Records) != n {
		t.Errorf("what was refused was kept: %d records became %d, %v", n, len(kept.Records), err)
	}
}

// What is too hot is told once by its rule, with the beds named in it.
func TestHeatIsGatheredByItsRule(t *testing.T) {
	h, err := desk.Sample("")
	if err != nil {
		t.Fatal(err)
	}
	h.Today = cal.Of(2027, 7, 12)
	var days []climate.Observation
	for i := range cal.Date(5) {
		days = append(days, climate.Observation{Date: h.Today + i, TMinC: climate.Is(20), TMaxC: climate.Is(36)})
	}
	h.Weather[0].Forecast = &climate.Record{Days: days}
	s, _ := serverOver(h, words.English())
	text := open(t, s.Handler(), "/frost").words()
	for _, once := range []string{"Doors and lids to open", "Shade under film and glass", "Poor set of fruit", "Beans that drop their flowers"} {
		if n := strings.Count(text, once); n != 1 {
			t.Errorf("%q is told %d times", once, n)
		}
	}
	if !strings.Contains(text, "Tunnel, left · Tunnel, middle · Tunnel, right: Left shut") {
		t.Errorf("the beds of the tunnel are not told together: %s", text[strings.Index(text, "Too hot"):])
	}
}
