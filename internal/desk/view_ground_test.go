package desk

import (
	"testing"

	"garner/internal/cal"
)

// The lists do not wait for a cold run; once the table is there they tell when
// each planting is ready and over, and what is past is called so.
func TestGroundViewTellsWhatStands(t *testing.T) {
	o := demoOffice(t)
	cold, err := o.GroundView()
	if err != nil {
		t.Fatal(err)
	}
	if cold.Forecast || len(cold.Plantings) != len(sampleHolding(t).Plantings) {
		t.Errorf("cold: forecast %v, %d plantings", cold.Forecast, len(cold.Plantings))
	}
	if _, err := o.TableView(nil); err != nil {
		t.Fatal(err)
	}
	warm, err := o.GroundView()
	if err != nil {
		t.Fatal(err)
	}
	states := map[string]string{}
	last := cal.None
	for _, p := range warm.Plantings {
		if p.Date < last {
			t.Errorf("%s is out of order", p.ID)
		}
		last, states[p.ID] = p.Date, p.State
		if p.State == Ahead && p.Date <= warm.Today || p.State != Ahead && p.Date > warm.Today {
			t.Errorf("%s of %s is %s on %s", p.ID, p.Date, p.State, warm.Today)
		}
	}
	// The demo's own records and dates: lifted on 2 October 2026; standing rhubarb.
	if !warm.Forecast || states["pot-26"] != Past || states["rhu-21"] != Standing {
		t.Errorf("forecast %v, potatoes %s, rhubarb %s", warm.Forecast, states["pot-26"], states["rhu-21"])
	}
}
