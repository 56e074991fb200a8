package space

import (
	"slices"
	"sort"

	"garner/internal/cal"
	"garner/internal/plan"
)

// Wrong is in which way plantings do not fit. The list is closed and documented.
type Wrong string

// The ways not to fit.
const (
	OverFull  Wrong = "over full"  // plantings hold more ground than the bed has
	TooEarly  Wrong = "too early"  // a planting goes in before the former one is cleared
	NoPartner Wrong = "no partner" // what a planting stands under or between is not there
	TooLarge  Wrong = "too large"  // one planting is larger than its bed
)

// Overlap is a time in which plantings of a bed do not fit.
type Overlap struct {
	Wrong     Wrong
	Bed       string
	From      cal.Date // first day
	Until     cal.Date // day after the last, in the middle year
	Over      float64  // by how much the shares pass one, as a share of the bed
	OverM2    float64  // the same [m2]
	Odds      float64  // share of futures in which it comes to that, 0-1
	Planting  string   // the one to move: the last to go in
	Plantings []string // all of them, in order of their days
	Mend      cal.Date // day from which Planting finds room: in the middle year; where it has that already, in nine of ten; None: not soon
}

const (
	// full is the share above one from which a bed is over full: more than
	// rounding of areas told to the tenth of a square metre.
	full = 1e-6
	// toldOdds is the share of futures from which a former planting's ground not
	// being clear is told: one year in ten.
	toldOdds = 0.1
	// shortWait is how long two plantings may hold the same ground for the later
	// one to be called too early [d]; beyond, the bed is over full.
	shortWait = 28 // judgement
)

// Overlaps are what does not fit in the bed from its today on, in order of time. Of
// what goes in after the table its end is not known, and so nothing is told.
func (b *Bed) Overlaps() []Overlap {
	var out []Overlap
	for i := range b.Holds {
		h := &b.Holds[i]
		if h.Lost || past(h.Clear.P50, b.today) || h.From >= b.until {
			continue
		}
		if o, wrong := b.lonely(h); wrong {
			out = append(out, o)
		}
		for _, find := range []func(*Hold) (Overlap, bool){b.large, b.crowded, b.early} {
			if o, wrong := find(h); wrong {
				out = append(out, o)
				break // the worst of them says it
			}
		}
	}
	sort.SliceStable(out, func(i, k int) bool { return out[i].From < out[k].From })
	return out
}

// lonely finds a planting under or between another that is not there in its time.
func (b *Bed) lonely(h *Hold) (Overlap, bool) {
	if !h.leans() || h.Guest {
		return Overlap{}, false
	}
	apart := 0
	for f := range b.futures {
		if !b.meetsIn(f, h) {
			apart++
		}
	}
	o := b.overlap(NoPartner, h)
	o.Plantings = []string{h.To, h.Planting}
	o.Odds = float64(apart) / float64(b.futures)
	return o, true
}

// meetsIn tells whether a planting stands at the same time as its host in one
// future.
func (b *Bed) meetsIn(f int, h *Hold) bool {
	for i := range b.Holds {
		o := &b.Holds[i]
		if o.Planting == h.To && !past(o.goneIn(f), h.From) && !past(h.goneIn(f), o.From) {
			return true
		}
	}
	return false
}

// large finds a planting that is larger than its bed.
func (b *Bed) large(h *Hold) (Overlap, bool) {
	if h.Share <= 1+full {
		return Overlap{}, false
	}
	o := b.overlap(TooLarge, h)
	o.Plantings, o.Odds = []string{h.Planting}, 1
	o.exceeds(h.Share-1, b)
	return o, true
}

// crowded finds a planting that has no room on the day it goes in.
func (b *Bed) crowded(h *Hold) (Overlap, bool) {
	holds := b.upTo(h, (*Hold).holdsOn)
	held, others := b.held(h.From, holds), b.beside(h, holds)
	if held <= 1+full || len(others) == 0 || b.needs(h, h.From, holds) <= speck {
		return Overlap{}, false
	}
	o := b.overlap(OverFull, h)
	o.Until = b.eased(h)
	if past(o.Until, b.today) {
		return Overlap{}, false
	}
	o.Plantings = append(others, h.Planting)
	o.Odds, _ = b.odds(h)
	o.exceeds(held-1, b)
	o.Mend = b.mend(h)
	if o.Until-o.From <= shortWait && o.Until < earlier(h.Clear.P50, b.until) {
		o.Wrong = TooEarly
	}
	return o, true
}

// early finds a planting that has room in the middle year and none in others,
// because what stood before it is not cleared.
func (b *Bed) early(h *Hold) (Overlap, bool) {
	if h.From <= b.today {
		return Overlap{}, false
	}
	odds, former := b.odds(h)
	if follows := b.notCleared(h); follows > odds {
		odds, former = follows, []string{h.To}
	}
	if odds < toldOdds || len(former) == 0 {
		return Overlap{}, false
	}
	o := b.overlap(TooEarly, h)
	o.Plantings, o.Odds = append(former, h.Planting), odds
	o.Until = h.From
	for _, id := range former {
		if f := b.Hold(id); f != nil {
			o.Until = later(o.Until, earlier(f.Clear.P90, b.until))
		}
	}
	if o.Until <= h.From+longestDelay && o.Until < b.until {
		o.Mend = o.Until
	}
	return o, true
}

// notCleared is the share of futures in which what a planting follows still stands
// on the day it goes in.
func (b *Bed) notCleared(h *Hold) float64 {
	former := b.Hold(h.To)
	if h.Relation != plan.After || former == nil || former.From >= h.From {
		return 0
	}
	return 1 - former.GoneBy(h.From)
}

// overlap begins the telling of what is wrong with a hold.
func (b *Bed) overlap(w Wrong, h *Hold) Overlap {
	return Overlap{Wrong: w, Bed: b.ID, From: h.From, Until: earlier(h.Clear.P50, b.until), Planting: h.Planting, Mend: cal.None}
}

func (o *Overlap) exceeds(share float64, b *Bed) { o.Over, o.OverM2 = share, share*b.AreaM2 }

// held is the share of the bed that its plantings hold on a day; what stands under
// or between another counts only where it is larger.
func (b *Bed) held(d cal.Date, holds func(*Hold, cal.Date) bool) float64 {
	sum := 0.0
	for i := range b.Holds {
		if h := &b.Holds[i]; holds(h, d) {
			sum += b.needs(h, d, holds)
		}
	}
	return sum
}

// needs is the share of the bed that a hold takes from the others on a day.
func (b *Bed) needs(h *Hold, d cal.Date, holds func(*Hold, cal.Date) bool) float64 {
	if !h.leans() {
		return h.Share
	}
	host := 0.0
	for i := range b.Holds {
		if o := &b.Holds[i]; o.Planting == h.To && holds(o, d) {
			host += o.Share
		}
	}
	return max(0, h.Share-host)
}

// upTo leaves out what goes in after a hold: of plantings of one day the later in
// the list is the one that finds no room.
func (b *Bed) upTo(h *Hold, holds func(*Hold, cal.Date) bool) func(*Hold, cal.Date) bool {
	return func(o *Hold, d cal.Date) bool { return !b.before(h, o) && holds(o, d) }
}

// beside are the plantings that hold ground when another goes in.
func (b *Bed) beside(h *Hold, holds func(*Hold, cal.Date) bool) []string {
	var out []string
	for i := range b.Holds {
		o := &b.Holds[i]
		if o.Planting != h.Planting && holds(o, h.From) && b.needs(o, h.From, holds) > speck && !slices.Contains(out, o.Planting) {
			out = append(out, o.Planting)
		}
	}
	return out
}

// odds is the share of futures in which a planting finds no room on its day, and
// what stands in its way then and not in the middle year.
func (b *Bed) odds(h *Hold) (float64, []string) {
	var former []string
	n := 0
	for f := range b.futures {
		holds := b.upTo(h, func(o *Hold, d cal.Date) bool { return o.holdsIn(f, d) || o == h })
		if b.held(h.From, holds) <= 1+full {
			continue
		}
		n++
		for i := range b.Holds {
			o := &b.Holds[i]
			if o.From < h.From && o.holdsIn(f, h.From) && !o.holdsOn(h.From) && !slices.Contains(former, o.Planting) {
				former = append(former, o.Planting)
			}
		}
	}
	return float64(n) / float64(b.futures), former
}
