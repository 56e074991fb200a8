package watering_test

import (
	"maps"
	"math"
	"reflect"
	"slices"
	"testing"

	"garner/internal/cal"
	"garner/internal/demotest"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/watering"
)

// short asks for the order of the demo's beds on a site in a dry fortnight, when every
// planting is worth so many portions and loses as many as it loses of its share.
func short(t *testing.T, today cal.Date, ask watering.Scarce, leftL, portions float64, change func(*holding.Holding)) []watering.Turn {
	t.Helper()
	h := demotest.Holding(t, "main")
	h.Today = today
	dry(h, today, 21)
	if change != nil {
		change(h)
	}
	s := demotest.Setting(t, h, 20)
	s.Today, s.From = today, today.Monday()
	claims, err := watering.Claims(s, outlook.NewMemory(), ask)
	if err != nil {
		t.Fatal(err)
	}
	var stakes []watering.Stake
	for _, c := range claims {
		s := watering.Stake{Claim: c}
		for k := range c.Lost {
			for _, id := range slices.Sorted(maps.Keys(c.Lost[k])) { // sums depend on their order
				s.Loses[k] += portions * c.Lost[k][id]
			}
		}
		stakes = append(stakes, s)
	}
	return watering.Share(stakes, leftL)
}

// What is given is never more than what is left or needed; more water left never takes any
// from a bed; with plenty all is saved; with half a bed loses no more than with none, and
// with all of what it needs nothing.
func TestWhoGetsTheWater(t *testing.T) {
	today := cal.Of(2027, 7, 12)
	ask := watering.Scarce{Site: "home", Days: 10}
	few, plenty := short(t, today, ask, 150, 100, nil), short(t, today, ask, 1e6, 100, nil)
	if len(few) < 5 || len(few) != len(plenty) {
		t.Fatalf("%d and %d beds", len(few), len(plenty))
	}
	given, parts := 0.0, 0
	for i, b := range few {
		given += b.GetL
		switch full := plenty[i]; {
		case full.Bed != b.Bed || full.GetL < b.GetL-1e-9:
			t.Errorf("%s gets %.0f L, of plenty %s %.0f", b.Bed, b.GetL, full.Bed, full.GetL)
		case full.Loses[0] > 0 && math.Abs(full.Saves-full.Loses[0]) > 1e-9:
			t.Errorf("%s: plenty saves %v of %v", b.Bed, full.Saves, full.Loses[0])
		case b.GetL > b.NeedL+1e-9 || b.Loses[0] < b.Loses[1] || b.Loses[2] > 1e-9 || (b.Loses[0] > 0) != (b.Stage != ""):
			t.Errorf("%+v", b)
		case b.Loses[0] > 0 && !(b.PartL[0] == 0 && b.PartL[1] > 0 && b.PartL[1] < b.NeedL && b.PartL[2] == b.NeedL):
			t.Errorf("parts of %v", b.PartL)
		}
		if b.Part {
			parts++
		}
		if b.Bed[0] == 's' || b.Bed[0] == 't' {
			t.Errorf("%s lies on another site", b.Bed)
		}
	}
	if math.Abs(given-150) > 1e-6 || parts == 0 {
		t.Errorf("%.1f L are shared out, %d beds get a part", given, parts)
	}
}

// By hand: of two beds that need 100 L each, one loses 10 portions without water and 2 with
// half; the other 8 and 4. Of 100 L each gets half: that saves 12, all for the first 10. Of
// 60 the first gets half and the other 10. One that loses as much with half as without is
// given all or nothing.
func TestSharingByHand(t *testing.T) {
	stake := func(bed string, none, half float64) watering.Stake {
		return watering.Stake{Claim: watering.Claim{Bed: bed, NeedL: 100, PartL: [3]float64{0, 50, 100}}, Loses: [3]float64{none, half, 0}}
	}
	for _, one := range []struct {
		stakes []watering.Stake
		left   float64
		get    map[string]float64
		saves  float64
	}{
		{[]watering.Stake{stake("a", 10, 2), stake("b", 8, 4)}, 100, map[string]float64{"a": 50, "b": 50}, 12},
		{[]watering.Stake{stake("b", 8, 4), stake("a", 10, 2)}, 60, map[string]float64{"a": 50, "b": 10}, 8.8},
		{[]watering.Stake{stake("a", 10, 10), stake("b", 8, 4)}, 100, map[string]float64{"a": 100}, 10},
		{[]watering.Stake{stake("a", 0, 0), stake("b", 8, 4)}, 1000, map[string]float64{"b": 100}, 8},
	} {
		saves := 0.0
		for _, turn := range watering.Share(one.stakes, one.left) {
			saves += turn.Saves
			if math.Abs(turn.GetL-one.get[turn.Bed]) > 1e-9 {
				t.Errorf("of %v L %s gets %v, want %v", one.left, turn.Bed, turn.GetL, one.get[turn.Bed])
			}
		}
		if math.Abs(saves-one.saves) > 1e-9 {
			t.Errorf("of %v L %v portions are saved, want %v", one.left, saves, one.saves)
		}
	}
}

// Common practice, no source: what was set out two days ago goes before a stand of
// roots that is well grown.
func TestTransplantsGoFirst(t *testing.T) {
	today := cal.Of(2027, 7, 12)
	turns := short(t, today, watering.Scarce{Site: "home", Days: 10}, 100, 100, func(h *holding.Holding) {
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

// What is worth nothing at the table gets nothing of the little there is; asked again the
// answer is the same.
func TestWorthAtTheTable(t *testing.T) {
	today := cal.Of(2027, 7, 12)
	ask := watering.Scarce{Site: "home", Days: 7}
	turns := short(t, today, ask, 300, 100, nil)
	if again := short(t, today, ask, 300, 100, nil); !reflect.DeepEqual(turns, again) {
		t.Error("asked again, the answer is another")
	}
	for _, b := range short(t, today, ask, 300, 0, nil) {
		if b.Loses[0] != 0 || b.GetL != 0 {
			t.Errorf("worth nothing: %+v", b)
		}
	}
}
