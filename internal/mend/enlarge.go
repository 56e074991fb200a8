package mend

import (
	"math"

	"garner/internal/cal"
	"garner/internal/outlook"
	"garner/internal/plan"
	"garner/internal/space"
)

// larger are sowings to come that feed the row, on more ground: as much as lies
// free beside them, and half of it.
func (w *weighing) larger() []Proposal {
	var out []Proposal
	plantings, uses := w.feeding()
	for i, p := range plantings {
		bed, h := w.toCome(&p)
		if h == nil {
			continue
		}
		room := w.beside(bed, h)
		for _, share := range []float64{1, 0.5} {
			more := p
			more.AreaM2 = rounded(p.AreaM2 + share*room)
			if more.AreaM2-p.AreaM2 < leastM2 {
				break
			}
			made := Proposal{Kind: Enlarge, Edit: outlook.Edit{Set: []plan.Planting{more}}, Planting: more, Was: p}
			made.Takes = seedOf(uses[i], &p, more.AreaM2-p.AreaM2)
			out = append(out, made)
		}
	}
	return out
}

// beside is the ground that lies free beside a sowing for as long as it stands [m2].
// What follows another in place waits for no turn-round, and is not waited for.
func (w *weighing) beside(bed *space.Bed, h *space.Hold) float64 {
	from, until := h.From, w.goneBy(bed, h)
	if h.Relation == plan.After {
		from += cal.Date(bed.TurnRoundD)
		until = max(from+1, until-cal.Date(bed.TurnRoundD))
	}
	return bed.RoomM2(from, until)
}

// toCome is the hold of a planting that is still to come and has ground of its
// own; nil for any other.
func (w *weighing) toCome(p *plan.Planting) (*space.Bed, *space.Hold) {
	bed := w.adviser.Ground.Bed(p.Bed)
	if bed == nil || p.Date <= w.today {
		return nil, nil
	}
	h := bed.Hold(p.ID)
	if h == nil || h.Fixed || h.Guest || h.Perennial {
		return nil, nil
	}
	return bed, h
}

// goneBy is the day on which a planting's ground is turned round after it, at the
// latest the table's end.
func (w *weighing) goneBy(bed *space.Bed, h *space.Hold) cal.Date {
	end := w.adviser.Table.End()
	if !h.Clear.P50.IsSet() {
		return end
	}
	return min(end, h.Clear.P50+cal.Date(bed.TurnRoundD))
}

// rounded cuts an area to what a form takes, so that what is accepted is what was
// weighed [m2].
func rounded(m2 float64) float64 { return math.Floor(m2*100+1e-6) / 100 }
