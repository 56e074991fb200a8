package advise

import (
	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/plan"
	"garner/internal/season"
)

// way is a use started in one way on one day.
type way struct {
	planting plan.Planting
	crop     *crop.Crop
	use      *crop.Use
	lot      *plan.Lot // seed or plants on hand that it takes from; nil: to be got
	odds     float64   // of a usable crop, under the first futures
	ready    cal.Date  // in the middle of them; None: never
	guess    float64   // estimated worth [kg]
	helps    span      // time in which it is to help; zero: the whole table
}

// span is a time from its first day to its last; the zero span is all time.
type span struct{ first, last cal.Date }

func (s span) holds(d cal.Date) bool { return s == span{} || s.first <= d && d <= s.last }

// Days after the first possible one on which candidates are started: week by
// week at first, then further apart, to where a space is no longer being filled
// but kept for something [d].
func startDays(s *Space, end cal.Date) []cal.Date {
	var out []cal.Date
	last := end - leastDays
	if s.Until.IsSet() {
		last = min(last, s.Until-leastDays)
	}
	last = min(last, s.From+farthest)
	step := cal.Date(7)
	for d := s.From; d <= last || len(out) == 0; d += step {
		out = append(out, d)
		if d-s.From >= 28 {
			step = 14
		}
		if d-s.From >= 112 {
			step = 28
		}
	}
	return out
}

const (
	mostPlants = 80  // what stands closer is sown, not planted out [1/m2]. judgement
	leastDays  = 21  // no crop of the book is ready sooner [d]
	farthest   = 280 // how long after a space comes free a sowing still fills it [d]. judgement
)

// ways are the wanted uses in every way of starting on every day.
func (a *Adviser) ways(s Space, days []cal.Date) []way {
	var out []way
	a.eachUse(func(c *crop.Crop, u *crop.Use) {
		for _, method := range u.Methods {
			if method == crop.Plant && u.PlantsPerM2() > mostPlants && u.Allows(crop.Seed) {
				continue
			}
			for _, day := range days {
				if a.started(s.Bed, u, plan.Method(method), day) {
					out = append(out, a.way(s, c, u, plan.Method(method), day))
				}
			}
		}
	})
	return out
}

// started tells whether the time of year has come in which a use is started.
func (a *Adviser) started(bed string, u *crop.Use, method plan.Method, day cal.Date) bool {
	return !season.TooEarly(u, growth.StartOf(string(method)), day, a.northern(bed))
}

// eachUse goes through the uses that feed, are over within a season, and whose
// vegetable somebody wants.
func (a *Adviser) eachUse(do func(c *crop.Crop, u *crop.Use)) {
	for _, c := range a.book.Crops() {
		for _, u := range c.Uses {
			if u.Feeds() && u.Pattern != crop.Perennial && a.lacking[u.Vegetable] {
				do(c, u)
			}
		}
	}
}

func (a *Adviser) way(s Space, c *crop.Crop, u *crop.Use, method plan.Method, day cal.Date) way {
	p := plan.New(a.names.Free(c.ID, day), a.holding.Plan)
	p.Bed, p.Crop, p.Use, p.Method = s.Bed, c.ID, u.Name, method
	p.Date, p.AreaM2, p.ClearBy, p.Store = day, s.AreaM2, s.Until, a.stores[key(u)].id
	return way{planting: p, crop: c, use: u, ready: cal.None}
}

// lotID is the id of the lot a way takes from; empty when it is to be got.
func (w *way) lotID() string {
	if w.lot == nil {
		return ""
	}
	return "/" + w.lot.ID
}
