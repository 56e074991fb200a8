package desk

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/record"
	"garner/internal/space"
)

// dust is a share of a bed that is nothing but rounding.
const dust = 1e-9

// released cuts the ground of a gap where what was lost on it begins and ends.
func (w *bedWorking) released(s *space.Bed, g *space.Gap) []FreeStretch {
	at := []float64{g.At, g.At + g.Share}
	for i := range s.Holds {
		if h := &s.Holds[i]; w.endsLost(h) {
			for _, p := range h.Pieces {
				at = append(at, p.At, p.At+p.Share)
			}
		}
	}
	slices.Sort(at)
	var out []FreeStretch
	for i := range at[1:] {
		p := BedPiece{At: max(at[i], g.At)}
		if p.Share = min(at[i+1], g.At+g.Share) - p.At; p.Share < dust {
			continue
		}
		lost := w.lostBefore(s, g, p)
		if last := len(out) - 1; last >= 0 && slices.Equal(out[last].Lost, lost) {
			out[last].Share += p.Share
			continue
		}
		out = append(out, FreeStretch{BedPiece: p, From: g.From.P50, Until: g.Until, Lost: lost})
	}
	return out
}

// lostBefore names what was recorded as lost on a piece of a gap, when nothing
// stood there after it.
func (w *bedWorking) lostBefore(s *space.Bed, g *space.Gap, piece BedPiece) []string {
	var out []string
	last, middle := cal.None, piece.At+piece.Share/2
	for i := range s.Holds {
		h := &s.Holds[i]
		if h.From >= g.From.P50 || h.Clear.P50 < last || !lies(h, middle) {
			continue
		}
		if h.Clear.P50 > last {
			last, out = h.Clear.P50, nil
		}
		if name := w.cropName(h.Crop); w.endsLost(h) && !slices.Contains(out, name) {
			out = append(out, name)
		}
	}
	return out
}

// lies tells whether a hold lies on a place along its bed.
func lies(h *space.Hold, at float64) bool {
	return slices.ContainsFunc(h.Pieces, func(p space.Piece) bool { return p.At <= at && at < p.At+p.Share })
}

// endsLost tells whether a hold ends because what stood on it was lost.
func (w *bedWorking) endsLost(h *space.Hold) bool {
	p := w.plantings[h.Planting]
	return slices.ContainsFunc(lossesOf(w.a.holding, w.a.setting.Book, &p), func(l record.Loss) bool {
		return !l.Moved && l.On == h.Clear.P50
	})
}
