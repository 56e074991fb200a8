package outlook_test

import (
	"reflect"
	"testing"

	"garner/internal/cal"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/record"
)

// fate returns the course of one planting of a holding under every future.
func fate(t *testing.T, h *holding.Holding, planting string) outlook.Fate {
	t.Helper()
	s := setting(t, h, 2)
	s.Years = 200
	for _, f := range compute(t, s, outlook.NewMemory()).Plantings {
		if f.Planting == planting {
			return f
		}
	}
	t.Fatalf("planting %s is not in the table", planting)
	return outlook.Fate{}
}

// spread returns the mean and the variance of what is ready and when.
func spread(f outlook.Fate) (day, dayVariance, kg, kgVariance float64) {
	var days, weights []float64
	for _, y := range f.Years {
		if y.Ready >= 0 && len(y.Standing) > 0 {
			days = append(days, float64(y.Ready))
			weights = append(weights, float64(y.Standing[0]))
		}
	}
	day, dayVariance = moments(days)
	kg, kgVariance = moments(weights)
	return day, dayVariance, kg, kgVariance
}

func moments(values []float64) (mean, variance float64) {
	for _, v := range values {
		mean += v / float64(len(values))
	}
	for _, v := range values {
		variance += (v - mean) * (v - mean) / float64(len(values))
	}
	return mean, variance
}

// A date known to within three weeks and a half, and an area known to within a
// half, widen the band and leave its middle about where it was. A uniform draw
// over half-widths d and a has the variances d(d+1)/3 and a*a/3 (the discrete
// and the continuous uniform distribution); weather and growth soften the first,
// since later sowings catch up.
func TestRoughlyToldWidensTheBand(t *testing.T) {
	exact := small()
	rough := small()
	rough.Plantings[2].DateWithinD, rough.Plantings[2].AreaWithin = 25, 0.5
	day, days, kg, kgs := spread(fate(t, exact, "p3"))
	roughDay, roughDays, roughKg, roughKgs := spread(fate(t, rough, "p3"))
	if full := 25.0 * 26 / 3; roughDays < days+0.15*full || roughDays > days+1.2*full {
		t.Errorf("variance of the ready day %.0f, exactly told %.0f", roughDays, days)
	}
	if gap := roughDay - day; gap < -6 || gap > 6 {
		t.Errorf("ready %.1f days later when told roughly", gap)
	}
	if full := kg * kg * 0.25 / 3; roughKgs < kgs+0.5*full || roughKgs > kgs+2.5*full {
		t.Errorf("variance of the weight %.2f kg2, exactly told %.2f, from the area alone %.2f", roughKgs, kgs, full)
	}
	if share := roughKg / kg; share < 0.9 || share > 1.1 {
		t.Errorf("weight %.2f times that of exactly told", share)
	}
}

// What is told roughly of one planting changes nothing of the others, and an
// area told roughly leaves the dates as they were.
func TestRoughlyToldReshufflesNothing(t *testing.T) {
	rough := small()
	rough.Plantings[1].DateWithinD, rough.Plantings[1].AreaWithin = 10, 0.3
	if !reflect.DeepEqual(fate(t, small(), "p1"), fate(t, rough, "p1")) {
		t.Error("another planting fares otherwise")
	}
	area := small()
	area.Plantings[1].AreaWithin = 0.3
	was, is := fate(t, small(), "p2"), fate(t, area, "p2")
	for i := range was.Years {
		if was.Years[i].Ready != is.Years[i].Ready {
			t.Fatalf("future %d: ready on day %d, was %d", i, is.Years[i].Ready, was.Years[i].Ready)
		}
	}
}

// A planting whose day was recorded is exact, and one told within days of the
// first day of weather is never lost before it.
func TestRoughlyToldKnowsItsBounds(t *testing.T) {
	recorded := func(within int) *holding.Holding {
		h := small()
		h.Plantings[0].DateWithinD = within
		h.Records = []record.Record{{ID: "r", What: record.Planted, Planting: "p1", Date: cal.Of(2027, 4, 8)}}
		return h
	}
	if !reflect.DeepEqual(fate(t, recorded(0), "p1"), fate(t, recorded(30), "p1")) {
		t.Error("a recorded day is not taken as exact")
	}
	old := small()
	old.Plantings[3].Date = cal.Of(2027, 1, 4) - 495
	old.Plantings[3].DateWithinD = 30
	for i, y := range fate(t, old, "p4").Years {
		if y.Emerged < 0 && y.Ready < 0 && y.End == 0 {
			t.Fatalf("future %d: the planting never began", i)
		}
	}
}
