package space

import (
	"sort"

	"garner/internal/cal"
)

// eased is the day from which the bed is no longer over full after a planting went
// in, at the latest the day it is gone itself.
func (b *Bed) eased(h *Hold) cal.Date {
	last := earlier(h.Clear.P50, b.until)
	for _, d := range b.clearings() {
		if d > h.From && d < last && b.held(d, (*Hold).holdsOn) <= 1+full {
			return d
		}
	}
	return last
}

// longestDelay is by how much a planting may be put off for that to be offered
// [d]; later it is another planting.
const longestDelay = 100 // judgement

// mend is the first day from which a planting would find room for the days it
// stands in the middle year, turn-round included; None when there is none soon.
func (b *Bed) mend(h *Hold) cal.Date {
	for _, d := range b.clearings() {
		at := b.ready(d)
		if at > h.From && at <= h.From+longestDelay && at < b.until && b.fits(h, at) {
			return at
		}
	}
	return cal.None
}

// fits tells whether a planting would find room if it went in on another day.
func (b *Bed) fits(h *Hold, at cal.Date) bool {
	gone := b.until
	if h.Clear.P50.IsSet() {
		gone = at + h.Clear.P50 - h.From
	}
	put := func(o *Hold, d cal.Date) bool {
		if o.Planting == h.Planting {
			return o == h && at <= d && d < gone
		}
		return o.holdsOn(d)
	}
	if b.held(at, put) > 1+full {
		return false
	}
	for i := range b.Holds {
		if o := &b.Holds[i]; o.From > at && o.From < gone && b.held(o.From, put) > 1+full {
			return false
		}
	}
	return true
}

// clearings are the days on which something is cleared in the middle year.
func (b *Bed) clearings() []cal.Date {
	var out []cal.Date
	for i := range b.Holds {
		if d := b.Holds[i].Clear.P50; d.IsSet() {
			out = append(out, d)
		}
	}
	sort.Slice(out, func(i, k int) bool { return out[i] < out[k] })
	return out
}
