package desk

import (
	"sort"

	"garner/internal/cal"
)

// usualTurnRound is how long ground takes to be ready again where the bed does not
// say [d]: common practice, no source.
const usualTurnRound = 5

// leastShare is the part of a bed under which ground is not told apart, 0-1.
const leastShare = 0.03

// leastFreeDays is how short a time ground may be free to be told [d].
const leastFreeDays = 7

// layOut gives each planting its place along the bed, first come first served, and
// finds what is free and what is held twice.
func (y *BedYear) layOut(from, until cal.Date) {
	sort.SliceStable(y.Held, func(i, k int) bool { return y.Held[i].Date < y.Held[k].Date })
	for i := range y.Held {
		h := &y.Held[i]
		if h.Shares() {
			h.At = y.placeOf(h.To)
			continue
		}
		y.give(i, until)
	}
	y.findFree(from, until)
}

func (y *BedYear) placeOf(planting string) float64 {
	for i := range y.Held {
		if y.Held[i].ID == planting {
			return y.Held[i].At
		}
	}
	return 0
}

// give finds the first place along the bed that is free on a planting's day.
func (y *BedYear) give(i int, until cal.Date) {
	h := &y.Held[i]
	taken := y.taken(h.Date, i)
	at, free := 0.0, false
	for _, t := range append(taken, stretch{1, 1}) {
		if t.from-at >= h.Share-leastShare {
			free = true
			break
		}
		at = max(at, t.to)
	}
	if free {
		h.At = min(at, 1-h.Share)
		return
	}
	held := 0.0
	for _, t := range taken {
		held += t.to - t.from
	}
	h.At = 1 - h.Share
	if held+h.Share <= 1+leastShare {
		return // there is room, though not in one piece
	}
	for k := range i {
		other := &y.Held[k]
		if !other.Shares() && other.HoldsOn(h.Date) && h.At < other.At+other.Share-leastShare && other.At < h.At+h.Share-leastShare {
			w := WrongGround{Planting: h.ID, With: other.ID, From: h.Date, Until: until, Over: min(1, held+h.Share-1)}
			if !other.Stays && other.Clear.P50.IsSet() {
				w.Until = min(until, other.Clear.P50)
			}
			y.Wrong = append(y.Wrong, w)
		}
	}
}

// stretch is a part of a bed's length, 0-1.
type stretch struct{ from, to float64 }

// taken are the parts of the bed that are held on a day, in order and apart, by
// plantings before one.
func (y *BedYear) taken(day cal.Date, before int) []stretch {
	var out []stretch
	for k := range before {
		if h := &y.Held[k]; !h.Shares() && h.HoldsOn(day) {
			out = append(out, stretch{h.At, h.At + h.Share})
		}
	}
	sort.Slice(out, func(i, k int) bool { return out[i].from < out[k].from })
	var apart []stretch
	for _, s := range out {
		if n := len(apart); n > 0 && s.from <= apart[n-1].to+1e-9 {
			apart[n-1].to = max(apart[n-1].to, s.to)
		} else {
			apart = append(apart, s)
		}
	}
	return apart
}

// findFree finds what nothing holds, part by part and time by time.
func (y *BedYear) findFree(from, until cal.Date) {
	turn := cal.Date(usualTurnRound)
	if y.TurnRoundD > 0 {
		turn = cal.Date(y.TurnRoundD)
	}
	open := map[stretch]cal.Date{}
	days := y.turns(from, until)
	for i := 0; i+1 < len(days); i++ {
		now := map[stretch]bool{}
		for _, s := range gaps(y.taken(days[i], len(y.Held))) {
			now[s] = true
			if _, known := open[s]; !known {
				open[s] = days[i]
			}
		}
		for s, since := range open {
			if !now[s] {
				y.free(s, since, days[i], from, turn)
				delete(open, s)
			}
		}
	}
	for s, since := range open {
		y.free(s, since, cal.None, from, turn)
	}
	sort.Slice(y.Free, func(i, k int) bool {
		if y.Free[i].From != y.Free[k].From {
			return y.Free[i].From < y.Free[k].From
		}
		return y.Free[i].At < y.Free[k].At
	})
}

// free tells ground that is free for a time, after the work that clearing leaves.
func (y *BedYear) free(s stretch, since, until, from, turn cal.Date) {
	if since > from && y.clearedOn(since, s) {
		since += turn
	}
	if until.IsSet() && until-since < leastFreeDays {
		return
	}
	y.Free = append(y.Free, FreeGround{At: s.from, Share: s.to - s.from, From: since, Until: until})
}

// clearedOn tells whether a part of a bed was cleared on a day.
func (y *BedYear) clearedOn(day cal.Date, s stretch) bool {
	for i := range y.Held {
		h := &y.Held[i]
		if !h.Shares() && !h.Stays && h.Clear.P50 == day && h.At < s.to && s.from < h.At+h.Share {
			return true
		}
	}
	return false
}

// turns are the days on which something begins or ends, and both ends of the year.
func (y *BedYear) turns(from, until cal.Date) []cal.Date {
	days := []cal.Date{from, until}
	add := func(d cal.Date) {
		if d.IsSet() && d > from && d < until {
			days = append(days, d)
		}
	}
	for i := range y.Held {
		if h := &y.Held[i]; !h.Shares() {
			add(h.Date)
			if !h.Stays {
				add(h.Clear.P50)
			}
		}
	}
	sort.Slice(days, func(i, k int) bool { return days[i] < days[k] })
	return days
}

// gaps is what taken parts leave of a bed.
func gaps(taken []stretch) []stretch {
	var out []stretch
	at := 0.0
	for _, t := range append(taken, stretch{1, 1}) {
		if t.from-at > leastShare {
			out = append(out, stretch{at, t.from})
		}
		at = max(at, t.to)
	}
	return out
}
