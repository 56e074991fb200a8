package advise

import (
	"math"
	"slices"
	"sort"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/outlook"
	"garner/internal/plan"
)

// Aim is a shortage of some vegetables in a span of the table.
type Aim struct {
	Vegetables  []string // any of them fills it
	First, Last cal.Date // first and last day
	Kg          float64  // all that lacks in it [kg]
}

// How a sowing toward a shortage is cut to it.
const (
	spare       = 1.5  // ground for so much more than lacks, for poor years and what is not eaten in time. judgement
	ample       = 3.0  // so many times that ground is weighed as well, where it is free
	pieceM2     = 0.1  // to which the ground is rounded up [m2]
	towardWays  = 32   // ways that are weighed
	spacesAUse  = 4    // spaces in which a use is weighed
	besideFirst = 0.8  // share of the best estimate from which a later or sown way of a use is weighed as well
	leastShare  = 0.02 // of what lacks, that a candidate must give by the estimate
)

// Toward ranks what, put into any of some spaces, would help against a shortage,
// on as much of the ground as that takes, and on ample ground where there is more.
// Of a use it gives the best way in each space. All of a candidate but its last
// day, its remarks and its reason is filled in, see Tell.
func (a *Adviser) Toward(aim Aim, spaces []Space) ([]Candidate, error) {
	var chosen []way
	for _, s := range spaces {
		ways, err := a.screen(a.waysToward(&aim, s))
		if err != nil {
			return nil, err
		}
		chosen = append(chosen, bestToward(ways, leastShare*aim.Kg)...)
	}
	sort.SliceStable(chosen, func(i, k int) bool { return chosen[i].guess > chosen[k].guess })
	chosen = a.withAmple(fewSpaces(chosen), spaces)
	edits := make([]outlook.Edit, len(chosen))
	for i := range chosen {
		edits[i].Set = []plan.Planting{chosen[i].planting}
	}
	weights, err := a.scales.Weigh(edits)
	if err != nil {
		return nil, err
	}
	var out []Candidate
	for i := range chosen {
		if c := a.candidate(&chosen[i], &weights[i]); c.Odds >= leastOdds {
			out = append(out, c)
		}
	}
	return out, nil
}

// fewSpaces keeps of each use its few best spaces, and of all ways the best, given
// the best first.
func fewSpaces(ways []way) []way {
	beds := map[string]map[string]bool{}
	var out []way
	for i := range ways {
		k, bed := key(ways[i].use), ways[i].planting.Bed
		if beds[k] == nil {
			beds[k] = map[string]bool{}
		}
		if !beds[k][bed] && len(beds[k]) == spacesAUse {
			continue
		}
		beds[k][bed] = true
		if out = append(out, ways[i]); len(out) == towardWays {
			break
		}
	}
	return out
}

// withAmple adds to ways the same ways on ample ground, each after its own.
func (a *Adviser) withAmple(ways []way, spaces []Space) []way {
	var out []way
	for i := range ways {
		out = append(out, ways[i])
		most := 0.0
		for _, s := range spaces {
			if p := &ways[i].planting; s.Bed == p.Bed && s.Until == p.ClearBy && s.From <= p.Date {
				most = max(most, s.AreaM2)
			}
		}
		more := ways[i]
		more.planting.AreaM2 = min(most, rounded(ample*more.planting.AreaM2))
		if more.planting.AreaM2-ways[i].planting.AreaM2 >= pieceM2 {
			out = append(out, more)
		}
	}
	return out
}

// waysToward are the ways in which a space could feed an aim.
func (a *Adviser) waysToward(aim *Aim, s Space) []way {
	days := startDays(&s, min(a.Table.End(), aim.Last))
	var out []way
	a.eachUse(func(c *crop.Crop, u *crop.Use) {
		if !slices.Contains(aim.Vegetables, u.Vegetable) {
			return
		}
		own := s
		own.AreaM2 = fitted(aim.Kg, u, s.AreaM2)
		for _, method := range u.Methods {
			if method == crop.Plant && u.PlantsPerM2() > mostPlants && u.Allows(crop.Seed) {
				continue
			}
			for _, day := range days {
				if a.started(s.Bed, u, plan.Method(method), day) {
					w := a.way(own, c, u, plan.Method(method), day)
					w.helps = span{aim.First, aim.Last}
					out = append(out, w)
				}
			}
		}
	})
	return out
}

// fitted is the ground that a shortage takes of a use, at most what there is [m2].
func fitted(kg float64, u *crop.Use, mostM2 float64) float64 {
	if u.YieldKgM2 <= 0 {
		return mostM2
	}
	pieces := math.Ceil(spare*kg/u.YieldKgM2/pieceM2 - 1e-9)
	return min(mostM2, rounded(max(pieceM2, pieces*pieceM2)))
}

// bestToward takes the best way of each use in a space, and the best one that is
// sown where it comes near that.
func bestToward(ways []way, leastKg float64) []way {
	var out []way
	best, sown := map[string]float64{}, map[string]bool{}
	for i := range ways { // the best first
		w := &ways[i]
		k := key(w.use)
		isSown := w.planting.Method == plan.Seed
		switch {
		case w.guess < leastKg || w.guess < besideFirst*best[k]:
			continue
		case best[k] == 0:
			best[k], sown[k] = w.guess, isSown
			out = append(out, *w)
		case isSown && !sown[k]:
			sown[k] = true
			out = append(out, *w)
		}
	}
	return out
}

// Tell fills in what Toward left open of a candidate for a space.
func (a *Adviser) Tell(c *Candidate, s Space) error {
	s.AreaM2 = c.Planting.AreaM2
	list := []Candidate{*c}
	if err := a.lastDays(list, s); err != nil {
		return err
	}
	*c = list[0]
	if a.Remarks != nil {
		c.Remarks = a.Remarks(&c.Planting)
	}
	c.Reason = c.reason()
	return nil
}

// Scales are those the adviser weighs on.
func (a *Adviser) Scales() *outlook.Scales { return a.scales }

// Usable is the share of futures in which a planting that was weighed gives a
// usable crop, 0-1.
func (a *Adviser) Usable(f *outlook.Fate, u *crop.Use, p *plan.Planting) float64 {
	return a.oddsOf(f, u, p)
}

// Keeps tells whether a use keeps in one of the household's stores.
func (a *Adviser) Keeps(u *crop.Use, store string) bool {
	_, ok := a.keeps(u, store)
	return ok
}
