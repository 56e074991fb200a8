package jobs

import (
	"math"
	"slices"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/words"
)

// house is all that lies under one kind of cover at a site.
type house struct {
	site  string
	spell cover.Spell
}

// houses are covers that are opened and closed: one job for all beds of a site that lie
// under a kind of them, at the first.
func (d *deriver) houses(r *groundRule) {
	type name struct {
		site string
		kind cover.Kind
	}
	seen := map[name]bool{}
	for i := range d.Holding.Beds {
		b := &d.Holding.Beds[i]
		for _, s := range d.spells[b.ID] {
			n := name{b.Site, s.Kind}
			if seen[n] || !slices.Contains(r.covers, string(s.Kind)) {
				continue
			}
			seen[n] = true
			h := house{b.Site, s.Spell}
			d.around(r, b.Site+":"+coverKey(s.Kind), d.stop(b), 0, func(next *Job, on cal.Date) bool {
				return d.aired(h, on) && d.weather(r, next, h, on)
			})
		}
	}
}

// aired tells whether something stands under a kind of cover on a day.
func (d *deriver) aired(h house, on cal.Date) bool {
	for i := range d.Holding.Beds {
		b := &d.Holding.Beds[i]
		if b.Site != h.site {
			continue
		}
		for _, s := range d.spells[b.ID] {
			if s.Kind == h.spell.Kind && s.On <= on && (!s.Off.IsSet() || on < s.Off) && d.standing(b.ID, on) {
				return true
			}
		}
	}
	return false
}

// weather fits a turn to the days of its week: open it from the first that grows warm
// under the cover, close it on the first evening before a cold night. Where no day asks
// for it there is no turn; where the weather is not told it is aired by the calendar.
func (d *deriver) weather(r *groundRule, next *Job, h house, on cal.Date) bool {
	s, from := d.skyOver(h.site), max(on, d.Today)
	if !s.knows(from) {
		return r.kind != Shut
	}
	over, err := cover.Of(h.spell)
	if err != nil {
		return false
	}
	first, top, days := cal.None, d.limits.warm, 0
	for day := from; day < on+aWeek && s.knows(day); day++ {
		if c := s.middle(day, over, warmest); c >= d.limits.warm {
			if !first.IsSet() {
				first = day
			}
			top, days = max(top, c), days+1
		}
	}
	if !first.IsSet() {
		return false
	}
	if r.kind == Shut {
		return d.shut(next, s, max(first, from), on+aWeek)
	}
	*next = d.day(*next, first)
	reason := "aired"
	if s.knows(first+1) && s.middle(first+1, over, coldest) >= d.limits.mild && top >= d.limits.hot {
		reason = "open"
	}
	next.Why = words.P("jobs.why_"+reason, words.Args{"date": first, "c": math.Round(top), "days": days})
	return true
}

// shut puts closing on the first evening before a cold night.
func (d *deriver) shut(next *Job, s *Sky, from, until cal.Date) bool {
	bare, err := cover.Lookup(cover.Open)
	if err != nil {
		return false
	}
	for evening := from; evening < until && s.knows(evening+1); evening++ {
		if c := s.middle(evening+1, bare, coldest); c <= d.limits.cold {
			*next = d.day(*next, evening)
			next.Why = words.P("jobs.why_cold_night", words.Args{"date": evening, "c": math.Round(c)})
			return true
		}
	}
	return false
}
