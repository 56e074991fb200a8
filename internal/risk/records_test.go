package risk

import (
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/station"
)

func record(t testing.TB, name string) *Weather {
	t.Helper()
	f, err := os.Open("testdata/hourly/" + name + ".csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	hours, _, err := station.ReadHourly(f, name)
	if err != nil {
		t.Fatal(err)
	}
	return New(hours)
}

// The Hutton and Smith days of five real records are those counted apart from the
// program.
// Source: testdata/README.md.
func TestPeriodsOnRealRecords(t *testing.T) {
	want := map[[2]string][]string{}
	for _, row := range rows(t, "periods.csv") {
		key := [2]string{row["record"], row["rule"]}
		want[key] = append(want[key], row["date"])
	}
	if len(want) != 10 {
		t.Fatalf("%d lists of days, want 10", len(want))
	}
	for key, dates := range want {
		var got []string
		for _, r := range ruleNamed(t, key[1]).Fired(record(t, key[0]), Options{Since: cal.None}) {
			got = append(got, r.Date.String())
		}
		if !slices.Equal(got, dates) {
			t.Errorf("%s %s: %v, want %v", key[0], key[1], got, dates)
		}
	}
}

// Every rule looks at every record: readings rise by date, say nothing that is not
// a number, and most rules fire somewhere.
func TestEveryRuleOverEveryRecord(t *testing.T) {
	b, err := Load()
	if err != nil {
		t.Fatal(err)
	}
	if len(b.Rules) < 12 {
		t.Fatalf("%d rules", len(b.Rules))
	}
	records := map[string]*Weather{}
	for _, name := range []string{"athenry_ie_2017", "de_bilt_nl_2000", "new_york_jfk_us_2013"} {
		records[name] = record(t, name)
	}
	var silent []string
	for _, r := range b.Rules {
		fired := 0
		for name, w := range records {
			o := Options{Since: cal.None}
			if r.Needs() {
				o.Since = w.Days[5].Date
			}
			before := cal.None
			for _, x := range r.Readings(w, o) {
				if x.Date < before || math.IsNaN(x.Value) || math.IsNaN(x.Sum) || x.Fired && (x.Threshold == 0 && r.ID != "blitecast") {
					t.Errorf("%s on %s: %+v", r.ID, name, x)
				}
				if before = x.Date; x.Fired {
					fired++
				}
			}
		}
		if fired == 0 {
			silent = append(silent, r.ID)
		}
	}
	if len(silent) > 0 {
		t.Errorf("silent on all records: %v", silent)
	}
}

// More humidity never takes a Hutton day away.
func TestMoreHumidityNeverTakesADayAway(t *testing.T) {
	w := record(t, "athenry_ie_2017")
	r := ruleNamed(t, "hutton")
	before := r.Fired(w, Options{Since: cal.None})
	for i := range w.Hours {
		w.Hours[i].HumidityPct = min(100, w.Hours[i].HumidityPct+3)
	}
	after := r.Fired(New(w.Hours), Options{Since: cal.None})
	if len(after) <= len(before) {
		t.Errorf("%d days before, %d after", len(before), len(after))
	}
	for _, x := range before {
		if !slices.ContainsFunc(after, func(y Reading) bool { return y.Date == x.Date }) {
			t.Errorf("%s was taken away", x.Date)
		}
	}
}

// A day with 21 known hours does not count, one with 22 does.
func TestShortDaysDoNotCount(t *testing.T) {
	w := record(t, "athenry_ie_2017")
	r := ruleNamed(t, "hutton")
	day := r.Fired(w, Options{Since: cal.None})[0].Date
	for missing, want := range map[int]bool{0: true, 2: true, 3: false} {
		hours := slices.Clone(w.Hours)
		for i := range hours {
			if hours[i].Date == day && hours[i].Hour >= 12 && hours[i].Hour < 12+missing {
				hours[i].TempC = math.NaN()
			}
		}
		got := slices.ContainsFunc(r.Fired(New(hours), Options{Since: cal.None}), func(x Reading) bool { return x.Date == day })
		if got != want {
			t.Errorf("with %d hours missing fired is %v", missing, got)
		}
	}
}

// A record without what a rule looks at is told so.
func TestWhatARecordLacks(t *testing.T) {
	hours := slices.Clone(record(t, "athenry_ie_2017").Hours[:48])
	for i := range hours {
		hours[i].HumidityPct, hours[i].RainMM, hours[i].WindMS = math.NaN(), math.NaN(), math.NaN()
	}
	w := New(hours)
	for id, want := range map[string][]string{"hutton": {"rh_pct", "wind_ms"}, "hyre": {"rain_mm"}, "blitecast": {"rh_pct", "rain_mm", "wind_ms"},
		"powdery-mildew": nil, "carrot-fly": nil} {
		if got := ruleNamed(t, id).Lacks(w, ByTree); !slices.Equal(got, want) {
			t.Errorf("%s lacks %v, want %v", id, got, want)
		}
	}
	if got := ruleNamed(t, "hutton").Lacks(record(t, "athenry_ie_2017"), ByTree); got != nil {
		t.Errorf("a whole record lacks %v", got)
	}
}

// Sums begin on the day told.
func TestSumsBeginWhenTold(t *testing.T) {
	w := record(t, "athenry_ie_2017")
	r := ruleNamed(t, "pdays")
	year := r.Fired(w, Options{Since: cal.None})
	later := r.Fired(w, Options{Since: cal.Of(2017, 6, 1)})
	if len(year) != 1 || len(later) != 1 || later[0].Date <= year[0].Date {
		t.Errorf("from the year's beginning %v, from June %v", year, later)
	}
	first := r.Readings(w, Options{Since: cal.Of(2017, 6, 1)})[0]
	if first.Date != cal.Of(2017, 6, 1) || first.Sum != first.Value {
		t.Errorf("the sum begins with %+v", first)
	}
}

// A record that begins in summer says nothing of sums that begin in spring.
func TestAPestsSumNeedsItsSpring(t *testing.T) {
	all := record(t, "athenry_ie_2017")
	r := ruleNamed(t, "carrot-fly")
	if got := r.Fired(all, Options{Since: cal.None}); len(got) < 3 || got[0].Event != "first_flight" {
		t.Errorf("over the year: %v", got)
	}
	if got := r.Fired(record(t, "de_bilt_nl_2000"), Options{Since: cal.None}); len(got) != 0 {
		t.Errorf("from May on: %v", got)
	}
}

// Every rule is of crops in the crop book, and says what growers do, chemicals last.
func TestRulesAreOfKnownCrops(t *testing.T) {
	book, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	b, err := Load()
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range b.Rules {
		for _, id := range r.Crops {
			if _, ok := book.Crop(id); !ok {
				t.Errorf("%s: no crop %q", r.ID, id)
			}
		}
		for i, m := range r.Measures {
			if last := i == len(r.Measures)-1; (m.Kind == "chemical") != last {
				t.Errorf("%s: measure %s stands in the wrong place", r.ID, m.ID)
			}
		}
		if r.Mark == "seen" && !strings.HasPrefix(r.URL, "http") {
			t.Errorf("%s was read, but where?", r.ID)
		}
	}
}

func BenchmarkAYearThroughAllRules(b *testing.B) {
	hours := record(b, "athenry_ie_2017").Hours
	book, err := Load()
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		w := New(hours)
		for _, r := range book.Rules {
			r.Readings(w, Options{Since: cal.None})
		}
	}
}
