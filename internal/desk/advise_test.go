package desk

import (
	"math"
	"testing"

	"garner/internal/cal"
	"garner/internal/holding"
	"garner/internal/plan"
)

// lacking is all that lacks of a holding's table [kg].
func lacking(t *testing.T, h *holding.Holding, years int) float64 {
	t.Helper()
	r, err := Outlook(h, OutlookOptions{Years: years, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	sum := 0.0
	for _, v := range r.Vegetables {
		for _, kg := range v.ShortKg {
			sum += kg
		}
	}
	return sum
}

// planted is the planting of a row of plantings.csv.
func planted(t *testing.T, cells map[string]string) plan.Planting {
	t.Helper()
	p := plan.New(cells["id"], cells["plan"])
	for _, name := range plan.Fields() {
		if value := cells[name]; value != "" {
			if err := plan.SetField(&p, name, value); err != nil {
				t.Fatal(err)
			}
		}
	}
	return p
}

// A candidate's row, put into the plan as it is written, brings what it is told
// to be worth: the difference of two tables within 1 %.
func TestACandidatesRowIsWorthWhatIsTold(t *testing.T) {
	const years = 20
	h := sampleHolding(t)
	before := lacking(t, h, years)
	for _, o := range []AdviseOptions{
		{AdviseQuery: AdviseQuery{Bed: "Home 9", From: cal.Of(2027, 3, 1)}},
		{AdviseQuery: AdviseQuery{Bed: "t2", From: cal.Of(2027, 6, 24)}},
		{AdviseQuery: AdviseQuery{Bed: "s2", From: cal.Of(2027, 8, 30)}, Refill: true},
	} {
		o.Years, o.Seed = years, 1
		v, err := Advise(h, o)
		if err != nil {
			t.Fatal(err)
		}
		if len(v.Candidates) == 0 {
			t.Errorf("%s: no candidates", o.Bed)
		}
		for i := range v.Candidates[:min(2, len(v.Candidates))] {
			c := &v.Candidates[i]
			own := *h
			own.Plantings = append(append([]plan.Planting(nil), h.Plantings...), planted(t, c.Cells))
			if full := before - lacking(t, &own, years); math.Abs(full-c.DropKg) > 0.01*full {
				t.Errorf("%s in %s: told %.4f kg, two tables differ by %.4f", c.Name, v.BedName, c.DropKg, full)
			}
		}
	}
}
