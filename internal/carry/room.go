package carry

import (
	"garner/internal/cal"
	"garner/internal/plan"
	"garner/internal/record"
)

// stay is ground of a bed that is held for a time.
type stay struct {
	planting string
	from, to cal.Date // to: the first day it is free again; None: it stays
	areaM2   float64  // 0 for what stands under or between another
}

// bookless is how long a sowing is taken to stand when neither the plan nor a
// forecast tells [d]. judgement: about a season.
const bookless = 120

// rounding is room for rounded areas [m2].
const rounding = 0.01

// stand finds what holds each bed already.
func (c *carrier) stand() {
	cleared := c.ended()
	for i := range c.Plantings {
		p := &c.Plantings[i]
		s := stay{p.ID, c.begun(p), c.until(p), p.AreaM2}
		if on, ok := cleared[p.ID]; ok {
			s.to = on
		}
		if leans(p) {
			s.areaM2 = 0
		}
		c.stood[p.Bed] = append(c.stood[p.Bed], s)
	}
}

// until is when a planting of this plan leaves the ground; None: it stays.
func (c *carrier) until(p *plan.Planting) cal.Date {
	if p.ClearBy.IsSet() {
		return p.ClearBy
	}
	if c.stays(p) {
		return cal.None
	}
	if c.Over != nil {
		if over := c.Over(p.ID); over.IsSet() {
			return over
		}
	}
	return c.begun(p) + bookless
}

// stayOf is the ground a sowing of next year holds: as long as the one it was made
// from, where its end is not told.
func (c *carrier) stayOf(s *Carried) stay {
	to := s.ClearBy
	if !to.IsSet() {
		to = s.Date + bookless
		for i := range c.Plantings {
			if p := &c.Plantings[i]; p.ID == s.From {
				to = s.Date + max(1, c.until(p)-c.begun(p))
			}
		}
	}
	out := stay{s.ID, s.Date, to, s.AreaM2}
	if leans(&s.Planting) {
		out.areaM2 = 0
	}
	return out
}

// fits tells whether a stay finds room beside others on a bed.
func (c *carrier) fits(bed string, s stay, others []stay) bool {
	if s.areaM2 == 0 {
		return true
	}
	has := c.beds[bed]
	for _, day := range append([]cal.Date{s.from}, starts(others, s)...) {
		held := s.areaM2
		for _, o := range others {
			if o.planting != s.planting && o.holds(day) {
				held += o.areaM2
			}
		}
		if held > has.AreaM2()+rounding {
			return false
		}
	}
	return true
}

// starts are the days within a stay on which others begin: the ground held is most
// on one of them or on its own first day.
func starts(others []stay, s stay) []cal.Date {
	var days []cal.Date
	for _, o := range others {
		if s.holds(o.from) {
			days = append(days, o.from)
		}
	}
	return days
}

func (s stay) holds(day cal.Date) bool { return s.from <= day && (!s.to.IsSet() || day < s.to) }

// ended are the days on which plantings were cleared by the records.
func (c *carrier) ended() map[string]cal.Date {
	out := map[string]cal.Date{}
	for _, r := range c.Records {
		if r.What == record.Cleared && r.Planting != "" {
			out[r.Planting] = r.Date
		}
	}
	return out
}
