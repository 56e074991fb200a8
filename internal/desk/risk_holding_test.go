package desk

import (
	"math"
	"slices"
	"testing"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/holding"
	"garner/internal/record"
)

// riskOn is the demo on a day, seen without its table.
func riskOn(t *testing.T, name string, today cal.Date, change func(h *holding.Holding)) *RiskView {
	t.Helper()
	h, err := Sample(name)
	if err != nil {
		t.Fatal(err)
	}
	h.Today = today
	if change != nil {
		change(h)
	}
	setting, err := settingOf(h, OutlookOptions{})
	if err != nil {
		t.Fatal(err)
	}
	w, err := newRiskWork(&asked{holding: h, setting: setting}, nil)
	if err != nil {
		t.Fatal(err)
	}
	v, err := w.view()
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func riskItemOf(t *testing.T, v *RiskView, problem string) *RiskItem {
	t.Helper()
	at := slices.IndexFunc(v.Items, func(i RiskItem) bool { return i.Problem == problem })
	if at < 0 {
		t.Fatalf("nothing is told of %s", problem)
	}
	return &v.Items[at]
}

// dampDays are hours of so many days to before a day, all of 15 C and a humidity.
func dampDays(until cal.Date, days int, pct float64) []climate.Hour {
	var out []climate.Hour
	for i := range 24 * days {
		out = append(out, climate.Hour{Date: until - cal.Date(days) + cal.Date(i/24), Hour: i % 24, TempC: 15, HumidityPct: pct, RainMM: 0, WindMS: math.NaN()})
	}
	return out
}

// Three damp days fire the Hutton criteria on the second and the third (two days
// running of 10 C and six hours at 90 %); dry ones do not.
func TestDampDaysPutPotatoesAtRisk(t *testing.T) {
	today := cal.Of(2027, 7, 10)
	v := riskOn(t, "", today, func(h *holding.Holding) { h.Weather[0].Hours = dampDays(today, 3, 95) })
	blight := riskItemOf(t, v, "late-blight")
	if blight.State != AtRiskFired || blight.Rules[0].Grade != GradeHours || len(blight.Hosts) == 0 {
		t.Errorf("%s, %s, %d hosts", blight.State, blight.Rules[0].Grade, len(blight.Hosts))
	}
	if f := blight.Rules[0].Fired; len(f) != 2 || f[0].Date != today-2 || f[1].Date != today-1 {
		t.Errorf("fired %+v", f)
	}
	dry := riskOn(t, "", today, func(h *holding.Holding) { h.Weather[0].Hours = dampDays(today, 3, 60) })
	if i := riskItemOf(t, dry, "late-blight"); i.State != AtRiskQuiet || len(i.Rules[0].Fired) != 0 {
		t.Errorf("dry days: %s, %+v", i.State, i.Rules[0].Fired)
	}
	none := riskOn(t, "", today, nil)
	if i := riskItemOf(t, none, "late-blight"); i.State != AtRiskDark {
		t.Errorf("without weather: %s", i.State)
	}
}

// A sighting comes before all else, is set beside the rule that foresaw it, and starts
// the count of a disease that begins with the first spots.
func TestASightingLeadsThePage(t *testing.T) {
	today := cal.Of(2027, 7, 10)
	v := riskOn(t, "", today, func(h *holding.Holding) {
		h.Weather[0].Hours = dampDays(today, 20, 95)
		bed := ""
		for _, p := range h.Plantings {
			if p.Crop == "carrot" {
				bed = p.Bed
			}
		}
		h.Records = append(h.Records,
			record.Record{ID: "s1", Date: today - 5, What: record.Sighted, Bed: bed, Problem: "late-blight", Stage: record.Damage},
			record.Record{ID: "s2", Date: today - 10, What: record.Sighted, Bed: bed, Problem: "carrot-leaf-blight", Stage: record.Damage})
	})
	blight := riskItemOf(t, v, "late-blight")
	if blight.State != AtRiskSeen || len(blight.Seen) != 1 || blight.Seen[0].Foreseen.Key != "desk.risk_foreseen" {
		t.Errorf("%s, %+v", blight.State, blight.Seen)
	}
	if v.Items[0].State != AtRiskSeen {
		t.Errorf("the page begins with %s, %s", v.Items[0].Problem, v.Items[0].State)
	}
	leaf := riskItemOf(t, v, "carrot-leaf-blight")
	if r := leaf.Rules[0]; r.Waiting || r.Since != today-10 || r.At == 0 && len(r.Fired) == 0 {
		t.Errorf("the count of leaf blight: %+v", r)
	}
}

// What is sown before the flight meets it; the same under mesh does not, and mesh that
// is told to help lies over the flight.
func TestFlightsMeetWhatLiesOpen(t *testing.T) {
	v := riskOn(t, "", cal.Of(2027, 1, 4), nil)
	fly := riskItemOf(t, v, "carrot-fly")
	if len(fly.Flights) < 2 || !fly.Flights[0].From.IsSet() || fly.Flights[0].From.Month() < 4 || fly.Flights[0].From.Month() > 6 {
		t.Fatalf("the first flight: %+v", fly.Flights)
	}
	open, helped := 0, 0
	for i := range fly.Hosts {
		h := &fly.Hosts[i]
		if len(h.Open) == 1 && len(h.Shut) == 0 && h.From < fly.Flights[0].P10 && h.Until > fly.Flights[0].Until {
			open++
			if h.firstMet() == nil {
				t.Errorf("%s stands through the first flight and is not met", h.Planting)
			}
		}
		if len(h.Does) > 0 {
			helped++
		}
		for _, m := range h.Meets {
			if m.Odds < 0 || m.Odds > 1 {
				t.Errorf("%s: odds %v", h.Planting, m.Odds)
			}
		}
	}
	if open == 0 || helped == 0 {
		t.Errorf("%d lie open to all of the flight, for %d something is told to help", open, helped)
	}
}

// The southern spring brings the flies half a year later.
func TestFlightsOfTheSouth(t *testing.T) {
	v := riskOn(t, "south", cal.Of(2027, 1, 5), nil)
	for i := range v.Items {
		for _, f := range v.Items[i].Flights {
			if f.Number == 1 && f.From.IsSet() && f.From.Month() > 2 && f.From.Month() < 7 {
				t.Errorf("%s: the first flight comes on %s", v.Items[i].Problem, f.From)
			}
		}
	}
}
