package desk

import (
	"math"
	"testing"

	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/plan"
	"garner/internal/watering"
)

// shortOf is the expected shortage of a whole table [kg].
func shortOf(t *testing.T, s outlook.Setting) (kg float64) {
	t.Helper()
	table, err := outlook.Compute(s, outlook.NewMemory())
	if err != nil {
		t.Fatal(err)
	}
	for _, v := range table.Summarise(false).Vegetables {
		for _, w := range v.Short {
			kg += w
		}
	}
	return kg
}

// What a bed loses without water, and with half of what it needs, is the difference of two
// full tables, and so is the order of the beds: on a small holding, the share's beds in the
// demo's July, each weighed by computing the whole table twice.
func TestWhatIsAtStakeIsTheDifferenceOfTwoTables(t *testing.T) {
	h := inJuly(t)
	small := *h
	small.Plantings = nil
	for _, p := range h.Plantings {
		if p.Bed == "s3" || p.Bed == "s4" || p.Bed == "t1" {
			small.Plantings = append(small.Plantings, p)
		}
	}
	s := demoSetting(t, &small)
	s.Years = 20
	a := &asked{holding: &small, setting: s}
	m := outlook.NewMemory()
	scales, err := outlook.NewScales(s, m)
	if err != nil {
		t.Fatal(err)
	}
	claims, err := watering.Claims(s, m, watering.Scarce{Site: "share", Days: 14})
	if err != nil {
		t.Fatal(err)
	}
	stakes, err := stakesOf(a, scales, claims)
	if err != nil {
		t.Fatal(err)
	}
	before, weighed := shortOf(t, s), 0
	for _, stake := range stakes {
		for k := range watering.Parts {
			set := lessened(scales.Plantings(), stake.Lost[k])
			if len(set) == 0 {
				continue
			}
			then := s
			then.Holding = withPlantings(&small, set)
			p := newNamer(a).plantings[stake.Planting]
			_, u, err := useOf(s.Book, p.Crop, p.Use)
			if err != nil {
				t.Fatal(err)
			}
			want := max(0, shortOf(t, then)-before) * 1000 / u.PortionG
			if math.Abs(want-stake.Loses[k]) > 0.01*want+1e-3 {
				t.Errorf("%s with %v of its need loses %v portions, by two full tables %v", stake.Bed, watering.Parts[k], stake.Loses[k], want)
			}
			weighed++
		}
		if stake.Loses[0] < stake.Loses[1]-1e-6 {
			t.Errorf("%s loses %v without water, %v with half", stake.Bed, stake.Loses[0], stake.Loses[1])
		}
	}
	if weighed < 3 {
		t.Errorf("%d losses were weighed", weighed)
	}
}

func withPlantings(h *holding.Holding, set []plan.Planting) *holding.Holding {
	own := *h
	own.Plantings = nil
	for _, p := range h.Plantings {
		for _, n := range set {
			if n.ID == p.ID {
				p = n
			}
		}
		own.Plantings = append(own.Plantings, p)
	}
	return &own
}
