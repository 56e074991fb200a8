package draft_test

import (
	"testing"

	"garner/internal/cal"
	"garner/internal/demotest"
	"garner/internal/draft"
	"garner/internal/holding"
	"garner/internal/larder"
	"garner/internal/place"
	"garner/internal/programme"
)

func demo(t testing.TB) *holding.Holding { return demotest.Holding(t, "") }

// small is a garden of three beds, two of them alike, with the demo's weather and
// nothing in the ground.
func small(t testing.TB) *holding.Holding {
	t.Helper()
	from := demo(t)
	site := from.Sites[0]
	h := &holding.Holding{ID: "small", Zone: "UTC", Today: cal.Of(2027, 3, 1), Eaters: 2, Plan: from.Plan, Plans: from.Plans[:1],
		Sites: []place.Site{site}, Weather: from.Weather,
		Stores: []larder.Store{{ID: "shed", Name: "shed", Method: "cool shed", WinterC: 5, SummerC: 16, CapacityKg: 80}}}
	h.Plans[0].ID, h.Plans[0].Base = h.Plan, ""
	for i, light := range []float64{1, 1, 0.7} {
		h.Beds = append(h.Beds, place.Bed{ID: string(rune('a' + i)), Name: string(rune('a' + i)), Site: site.ID, Kind: "bed",
			LengthM: 5, WidthM: 1.2, Light: light, Soil: "good", Order: i + 1})
	}
	for i, vegetable := range []string{"carrot", "onion", "lettuce", "French bean", "kale"} {
		h.Wants = append(h.Wants, larder.Want{ID: string(rune('p' + i)), Vegetable: vegetable, KgPerWeek: 0.7})
	}
	return h
}

func setting(t testing.TB, h *holding.Holding, wishes ...draft.Wish) draft.Setting {
	t.Helper()
	return draft.Setting{Setting: demotest.Setting(t, h, draft.Futures), Wishes: wishes}
}

func built(t testing.TB, h *holding.Holding, wishes ...draft.Wish) *draft.Draft {
	t.Helper()
	d, err := draft.Build(setting(t, h, wishes...))
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// greedy takes what lowers the cost most for its time in the ground, a number of times.
func greedy(p *programme.Problem, steps int) *programme.Standing {
	s := p.NewStanding()
	for range steps {
		best, at := 0.0, -1
		for j := range p.Sowings {
			if s.Room(j) == 0 {
				continue
			}
			w := &p.Sowings[j]
			if gain := s.Price(programme.Change{Sowing: j, Units: 1}) / float64(w.Last+1-w.First); gain < best {
				best, at = gain, j
			}
		}
		if at < 0 {
			break
		}
		s.Add(at, 1)
	}
	return s
}
