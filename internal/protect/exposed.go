package protect

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/place"
)

// Exposed tells when a planting of a bed lies open to a pest.
type Exposed struct {
	From, To cal.Date           // its time in the ground
	Open     []Span             // when no cover keeps the pest out
	Shut     []place.CoverSpell // those that keep it out, in order
	GapMM    float64            // widest gap that keeps it out [mm]; 0: no cover is known to
	Wintered bool               // it may have wintered in the ground: no cover helps
}

// Span is a run of days, the last of them before To.
type Span struct{ From, To cal.Date }

// Exposures tells of all plantings of a bed, by id, for one pest. A pest that is not
// known is kept out by nothing. The error is of the package's own data.
func Exposures(b Bed, pest string) (map[string]Exposed, error) {
	f, err := known()
	if err != nil {
		return nil, err
	}
	var p *Pest
	if at := slices.IndexFunc(f.pests, func(p Pest) bool { return p.ID == pest }); at >= 0 {
		p = &f.pests[at]
	}
	times := b.times()
	out := make(map[string]Exposed, len(times))
	for i := range times {
		t := &times[i]
		e := Exposed{From: t.from, To: t.to}
		if p != nil {
			e.GapMM = p.GapMM
			e.Wintered = p.Winters && hosted(p, t, times, b.South)
			for _, s := range b.over(t) {
				if mm, keeps := s.Barrier(); keeps && mm <= p.GapMM+1e-9 {
					e.Shut = append(e.Shut, s)
				}
			}
		}
		e.Open = t.without(e.Shut)
		out[t.id] = e
	}
	return out, nil
}

// without is a stay less the time of covers, which are in order.
func (t *stay) without(covers []place.CoverSpell) []Span {
	var open []Span
	from := t.from
	for _, s := range covers {
		if s.On > from {
			open = append(open, Span{from, min(s.On, t.to)})
		}
		if !s.Off.IsSet() {
			return open
		}
		from = max(from, s.Off)
	}
	if from < t.to {
		open = append(open, Span{from, t.to})
	}
	return open
}
