package space

import (
	"sort"
)

// speck is the share of a bed below which ground counts for nothing: what is left
// of rounding.
const speck = 1e-7

// Piece is a piece of a bed: where it begins along the bed and how much of the
// ground it is, both as shares of the bed [0-1].
type Piece struct{ At, Share float64 }

// end is where the piece ends along the bed.
func (p Piece) end() float64 { return p.At + p.Share }

// covers tells whether a place along the bed lies in the piece.
func (p Piece) covers(at float64) bool { return p.At <= at && at < p.end() }

// total is the ground of pieces that do not overlap.
func total(pieces []Piece) float64 {
	sum := 0.0
	for _, p := range pieces {
		sum += p.Share
	}
	return sum
}

// joined sorts pieces along the bed and joins what touches or overlaps.
func joined(pieces []Piece) []Piece {
	sorted := append([]Piece(nil), pieces...)
	sort.Slice(sorted, func(i, k int) bool { return sorted[i].At < sorted[k].At })
	out := sorted[:0]
	for _, p := range sorted {
		if n := len(out) - 1; n >= 0 && p.At <= out[n].end()+speck {
			out[n].Share = max(out[n].end(), p.end()) - out[n].At
			continue
		}
		if p.Share > speck {
			out = append(out, p)
		}
	}
	return out
}

// without is what is left of pieces when others are taken from them. Both are
// joined.
func without(pieces, taken []Piece) []Piece {
	var out []Piece
	for _, p := range pieces {
		at := p.At
		for _, t := range taken {
			if t.end() <= at || t.At >= p.end() {
				continue
			}
			if t.At-at > speck {
				out = append(out, Piece{at, t.At - at})
			}
			at = max(at, t.end())
		}
		if p.end()-at > speck {
			out = append(out, Piece{at, p.end() - at})
		}
	}
	return out
}

// within is the part of pieces that lies in others. Both are joined.
func within(pieces, others []Piece) []Piece { return without(pieces, without(pieces, others)) }

// pick chooses ground of a share out of the free pieces: one piece if it can,
// beginning where it is liked, or else the smallest that is large enough. When
// none is, it takes what is liked and then the largest pieces. It may come to
// less than asked for.
func pick(free []Piece, share float64, liked []Piece) []Piece {
	if p, ok := pickLiked(free, share, liked); ok {
		return []Piece{p}
	}
	if p, ok := pickSmallest(free, share); ok {
		return []Piece{p}
	}
	return pickParts(free, share, liked)
}

func pickLiked(free []Piece, share float64, liked []Piece) (Piece, bool) {
	for _, l := range liked {
		for _, f := range free {
			if f.Share+speck < share || !f.covers(l.At+l.Share/2) {
				continue
			}
			at := max(f.At, min(l.At, f.end()-share))
			return Piece{at, min(share, f.end()-at)}, true
		}
	}
	return Piece{}, false
}

func pickSmallest(free []Piece, share float64) (Piece, bool) {
	best := -1
	for i, f := range free {
		if f.Share+speck >= share && (best < 0 || f.Share < free[best].Share-speck) {
			best = i
		}
	}
	if best < 0 {
		return Piece{}, false
	}
	return Piece{free[best].At, min(share, free[best].Share)}, true
}

func pickParts(free []Piece, share float64, liked []Piece) []Piece {
	first := within(free, joined(liked))
	rest := without(free, first)
	sort.SliceStable(rest, func(i, k int) bool { return rest[i].Share > rest[k].Share+speck })
	var out []Piece
	for _, f := range append(first, rest...) {
		if share <= speck {
			break
		}
		f.Share = min(f.Share, share)
		share -= f.Share
		out = append(out, f)
	}
	return joined(out)
}

// Meet tells whether pieces of ground lie on each other.
func Meet(a, b []Piece) bool { return len(within(a, b)) > 0 }
