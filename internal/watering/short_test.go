package watering_test

import (
	"math"
	"reflect"
	"testing"

	"garner/internal/cal"
	"garner/internal/demotest"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/watering"
)

// short asks for the order of the demo's beds on a site in a dry fortnight, when every
// planting is worth a hundred portions.
func short(t *testing.T, today cal.Date, ask watering.Scarce, change func(*holding.Holding)) []watering.Turn {
	t.Helper()
	h := demotest.Holding(t, "main")
	h.Today = today
	dry(h, today, 21)
	if change != nil {
		change(h)
	}
	s := demotest.Setting(t, h, 20)
	s.Today, s.From = today, today.Monday()
	if ask.Portions == nil {
		ask.Portions = map[string]float64{}
		for i := range h.Plantings {
			ask.Portions[h.Plantings[i].ID] = 100
		}
	}
	turns, err := watering.Short(s, outlook.NewMemory(), ask)
	if err != nil {
		t.Fatal(err)
	}
	return turns
}

// What is given is never more than what is left or needed; the order is by what a litre
// saves; more water left never takes any from a bed; with plenty all is saved.
func TestWhoGetsTheWater(t *testing.T) {
	today := cal.Of(2027, 7, 12)
	ask := watering.Scarce{Site: "home", LeftL: 150, Days: 10}
	few := short(t, today, ask, nil)
	ask.LeftL = 1e6
	plenty := short(t, today, ask, nil)
	if len(few) < 5 || len(few) != len(plenty) {
		t.Fatalf("%d and %d beds", len(few), len(plenty))
	}
	given, before := 0.0, math.Inf(1)
	for i, b := range few {
		given += b.GetL
		worth := 0.0
		if b.NeedL > 0 {
			worth = b.AtStake / b.NeedL
		}
		switch full := plenty[i]; {
		case full.Bed != b.Bed || full.GetL < b.GetL-1e-9:
			t.Errorf("%s gets %.0f L, of plenty %s %.0f", b.Bed, b.GetL, full.Bed, full.GetL)
		case full.AtStake > 0 && full.NeedL > 0 && math.Abs(full.Saves-full.AtStake) > 1e-9:
			t.Errorf("%s: plenty saves %v of %v", b.Bed, full.Saves, full.AtStake)
		case worth > before+1e-12:
			t.Errorf("%s saves %v a litre, the one before it %v", b.Bed, worth, before)
		case b.GetL > b.NeedL+1e-9 || b.AtStake < 0 || (b.AtStake > 0) != (b.Stage != ""):
			t.Errorf("%+v", b)
		}
		before = worth
		if b.Bed[0] == 's' || b.Bed[0] == 't' {
			t.Errorf("%s lies on another site", b.Bed)
		}
	}
	if math.Abs(given-150) > 1e-6 {
		t.Errorf("%.1f L are shared out", given)
	}
}

// Common practice, no source: what was set out two days ago goes before a stand of
// roots that is well grown.
func TestTransplantsGoFirst(t *testing.T) {
	today := cal.Of(2027, 7, 12)
	turns := short(t, today, watering.Scarce{Site: "home", LeftL: 100, Days: 10}, func(h *holding.Holding) {
		for i := range h.Plantings {
			if p := &h.Plantings[i]; p.ID == "lee-27" { // all of bed h3
				p.Date, p.Relation, p.To = today-2, "", ""
			}
		}
	})
	at := map[string]int{}
	for i, b := range turns {
		at[b.Bed] = i + 1
		if b.Bed == "h3" && (b.Stage != "young" || b.Planting != "lee-27" || !b.Wants.IsSet()) {
			t.Errorf("%+v", b)
		}
	}
	if at["h3"] == 0 || at["h3"] > 3 {
		t.Errorf("set out two days ago it comes as number %d", at["h3"])
	}
}

// What brings nothing to the table gets nothing of the little there is; asked again the
// answer is the same.
func TestWorthAtTheTable(t *testing.T) {
	today := cal.Of(2027, 7, 12)
	ask := watering.Scarce{Site: "home", LeftL: 300, Days: 7}
	turns := short(t, today, ask, nil)
	if again := short(t, today, ask, nil); !reflect.DeepEqual(turns, again) {
		t.Error("asked again, the answer is another")
	}
	ask.Portions = map[string]float64{}
	for _, b := range short(t, today, ask, nil) {
		if b.AtStake != 0 || b.GetL != 0 {
			t.Errorf("worth nothing: %+v", b)
		}
	}
}
