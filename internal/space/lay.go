package space

import (
	"sort"

	"garner/internal/cal"
	"garner/internal/plan"
)

// strip is a piece of a bed with the days from which it is free.
type strip struct {
	Piece
	cleared cal.Date // the day nothing stands on it any more; None: not in this table
	ready   cal.Date // the day it can be sown again; None: not in this table
}

// layout is a bed while holds are laid on it, in the order of their days. All
// that lies on it went in before, so ground that is free on a day stays free.
type layout struct {
	bed    *Bed
	strips []strip
	laid   []int // holds with their place, as indexes
}

// long is the day from which an empty bed is free: before all others.
const long = cal.None + 1

// lay finds a place along the bed for every hold.
func (b *Bed) lay() {
	sort.SliceStable(b.Holds, func(i, k int) bool { return b.before(&b.Holds[i], &b.Holds[k]) })
	l := layout{bed: b, strips: []strip{{Piece{0, 1}, long, long}}}
	for i := 0; i < len(b.Holds); {
		n := i + 1
		for n < len(b.Holds) && b.Holds[n].Planting == b.Holds[i].Planting {
			n++
		}
		l.place(i, n)
		i = n
	}
	for i := range b.Holds {
		h := &b.Holds[i]
		h.Guest = h.leans() && b.meets(h)
	}
}

// meets tells whether a planting stands at the same time as the one it is under or
// between, in the middle year.
func (b *Bed) meets(h *Hold) bool {
	for i := range b.Holds {
		o := &b.Holds[i]
		if o.Planting == h.To && !past(o.Clear.P50, h.From) && !past(h.Clear.P50, o.From) {
			return true
		}
	}
	return false
}

// before orders holds by the day they go in; hosts before their guests; parts of a
// planting together, the one that stays first.
func (b *Bed) before(h, o *Hold) bool {
	if h.From != o.From {
		return h.From < o.From
	}
	if h.leans() != o.leans() {
		return o.leans()
	}
	if h.Planting != o.Planting {
		return h.Planting < o.Planting
	}
	return !h.Lost && o.Lost
}

// leans tells whether a planting is told to stand under or between another.
func (h *Hold) leans() bool {
	return h.To != "" && (h.Relation == plan.Under || h.Relation == plan.Between)
}

// place lays the parts of one planting, the holds from i to n, onto the bed.
func (l *layout) place(i, n int) {
	h := &l.bed.Holds[i]
	share := 0.0
	for k := i; k < n; k++ {
		share += l.bed.Holds[k].Share
	}
	share = min(share, 1)
	got, over := l.fill(h, share, l.beside(h, share))
	for k := i; k < n; k++ {
		p := &l.bed.Holds[k]
		p.Over = over
		p.Pieces, got = split(got, p.Share)
		if len(p.Pieces) > 0 {
			p.At = p.Pieces[0].At
		}
		l.claim(p)
		l.laid = append(l.laid, k)
	}
}

// beside gives a guest its place within its host's ground, clear of the host's
// other guests where there is room.
func (l *layout) beside(h *Hold, share float64) []Piece {
	if !h.leans() {
		return nil
	}
	var host, guests []Piece
	for _, k := range l.laid {
		o := &l.bed.Holds[k]
		switch {
		case !o.holdsOn(h.From):
		case o.Planting == h.To:
			host = append(host, o.Pieces...)
		case o.leans() && o.To == h.To:
			guests = append(guests, o.Pieces...)
		}
	}
	if host = joined(host); len(host) == 0 {
		return nil
	}
	got := pick(without(host, joined(guests)), share, nil)
	if short := share - total(got); short > speck {
		got = joined(append(got, pick(without(host, got), short, nil)...))
	}
	return got
}

// fill gives a planting what it still lacks: ground that is free, first its own
// guests' and that of what it follows, and when that is not enough the ground that
// is free soonest.
func (l *layout) fill(h *Hold, share float64, got []Piece) (all []Piece, over bool) {
	short := share - total(got)
	if short <= speck {
		return got, false
	}
	liked := l.guests(h)
	free := joined(append(l.free(h.From), liked...))
	if len(liked) == 0 {
		liked = l.former(h)
		free = joined(append(free, liked...))
	}
	got = joined(append(got, pick(without(free, got), short, liked)...))
	for _, s := range l.soonest() {
		if short = share - total(got); short <= speck {
			break
		}
		left := without([]Piece{s.Piece}, got)
		over = over || (len(left) > 0 && !past(s.cleared, h.From))
		got = joined(append(got, pickParts(left, short, nil)...))
	}
	return got, over
}

// free is the ground that can be sown on a day.
func (l *layout) free(d cal.Date) []Piece {
	var out []Piece
	for _, s := range l.strips {
		if past(s.ready, d) {
			out = append(out, s.Piece)
		}
	}
	return joined(out)
}

// guests is the ground of the plantings that went in before their host and wait
// for it.
func (l *layout) guests(h *Hold) []Piece {
	var out []Piece
	for _, k := range l.laid {
		if o := &l.bed.Holds[k]; o.leans() && o.To == h.Planting && o.holdsOn(h.From) {
			out = append(out, o.Pieces...)
		}
	}
	return joined(out)
}

// former is the ground of the planting that this one follows, where nothing stands
// any more; its turn-round need not be over.
func (l *layout) former(h *Hold) []Piece {
	if h.Relation != plan.After {
		return nil
	}
	var bare, its []Piece
	for _, s := range l.strips {
		if past(s.cleared, h.From) {
			bare = append(bare, s.Piece)
		}
	}
	for _, k := range l.laid {
		if o := &l.bed.Holds[k]; o.Planting == h.To {
			its = append(its, o.Pieces...)
		}
	}
	return within(joined(its), joined(bare))
}

// soonest are the strips in the order in which they can be sown.
func (l *layout) soonest() []strip {
	out := append([]strip(nil), l.strips...)
	sort.SliceStable(out, func(i, k int) bool { return sooner(out[i].ready, out[k].ready) })
	return out
}

// claim notes on the strips that a hold lies on them.
func (l *layout) claim(h *Hold) {
	cleared, ready := h.Clear.P50, l.bed.ready(h.Clear.P50)
	var out []strip
	for _, s := range l.strips {
		for _, p := range without([]Piece{s.Piece}, h.Pieces) {
			out = append(out, strip{p, s.cleared, s.ready})
		}
		for _, p := range within([]Piece{s.Piece}, h.Pieces) {
			out = append(out, strip{p, later(s.cleared, cleared), later(s.ready, ready)})
		}
	}
	sort.Slice(out, func(i, k int) bool { return out[i].At < out[k].At })
	l.strips = out
}

// ready is the day from which ground can be sown that was cleared on a day.
func (b *Bed) ready(cleared cal.Date) cal.Date {
	if !cleared.IsSet() {
		return cal.None
	}
	return cleared + cal.Date(b.TurnRoundD)
}

// split cuts a share off the front of pieces.
func split(pieces []Piece, share float64) (front, rest []Piece) {
	for i, p := range pieces {
		if share <= speck {
			return front, append(rest, pieces[i:]...)
		}
		if p.Share > share+speck {
			front = append(front, Piece{p.At, share})
			rest = append(rest, Piece{p.At + share, p.Share - share})
			share = 0
			continue
		}
		front = append(front, p)
		share -= p.Share
	}
	return front, rest
}
