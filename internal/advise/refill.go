package advise

import (
	"math"
	"sort"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/plan"
)

// Refill ranks what a hole can be filled with: plants on hand, as many as there
// are; seed on hand; and then seed that can be got and is still in time. What is
// on hand comes first, each by its worth.
func (a *Adviser) Refill(s Space) (*Advice, error) {
	hand, err := a.fromHand(s)
	if err != nil {
		return nil, err
	}
	have := map[string]bool{}
	for i := range hand {
		have[key(hand[i].use)] = true
	}
	ways := a.sown(s, have)
	if ways, err = a.screen(ways); err != nil {
		return nil, err
	}
	out := &Advice{Space: s, Tried: a.usesTried()}
	if out.Candidates, err = a.weigh(append(hand, shortlist(ways)...)); err != nil {
		return nil, err
	}
	sort.SliceStable(out.Candidates, func(i, k int) bool {
		x, y := out.Candidates[i].Lot != nil, out.Candidates[k].Lot != nil
		return x && !y
	})
	return out, a.finish(out)
}

// fromHand are the ways that lots on hand allow: plants at once, on the ground
// they fill; seed on the best day, or raised where that is in time.
func (a *Adviser) fromHand(s Space) ([]way, error) {
	var out []way
	for i := range a.holding.OnHand {
		l := &a.holding.OnHand[i]
		ways, err := a.screen(a.ofLot(s, l))
		if err != nil {
			return nil, err
		}
		best := map[string]bool{}
		for _, w := range ways {
			if !best[key(w.use)] {
				best[key(w.use)] = true
				out = append(out, w)
			}
		}
	}
	return out, nil
}

// ofLot are the ways of one lot.
func (a *Adviser) ofLot(s Space, l *plan.Lot) []way {
	var out []way
	a.eachUse(func(c *crop.Crop, u *crop.Use) {
		if !a.serves(l, c.ID, u.Name) || !a.alive(l, u.SeedLifeYears) {
			return
		}
		if l.Form == plantForm {
			if !u.Allows(string(plan.Plant)) || !a.started(s.Bed, u, plan.Plant, s.From) {
				return
			}
			own := s
			own.AreaM2 = min(s.AreaM2, rounded(math.Floor(l.Amount)/u.PlantsPerM2()))
			out = append(out, a.wayOf(own, c, u, plan.Plant, s.From, l))
			return
		}
		for _, method := range []plan.Method{plan.Seed, plan.Plant} {
			if !u.Allows(string(method)) {
				continue
			}
			for _, day := range startDays(&s, a.Table.End()) {
				if inTime := method == plan.Seed || day-cal.Date(u.RaiseDays) >= a.Today; inTime && a.started(s.Bed, u, method, day) {
					out = append(out, a.wayOf(s, c, u, method, day, l))
				}
			}
		}
	})
	return out
}

func (a *Adviser) wayOf(s Space, c *crop.Crop, u *crop.Use, method plan.Method, day cal.Date, l *plan.Lot) way {
	w := a.way(s, c, u, method, day)
	w.lot, w.planting.Variety = l, l.Variety
	return w
}

// sown are the uses that are sown, or raised from seed in time, without those at
// hand.
func (a *Adviser) sown(s Space, without map[string]bool) []way {
	var out []way
	a.eachUse(func(c *crop.Crop, u *crop.Use) {
		if without[key(u)] {
			return
		}
		for _, day := range startDays(&s, a.Table.End()) {
			for _, method := range u.Methods {
				raised := method == crop.Plant && day-cal.Date(u.RaiseDays) >= a.Today && u.PlantsPerM2() <= mostPlants
				if (method == crop.Seed || raised) && a.started(s.Bed, u, plan.Method(method), day) {
					out = append(out, a.way(s, c, u, plan.Method(method), day))
				}
			}
		}
	})
	return out
}
