package mend

import (
	"sort"

	"garner/internal/advise"
	"garner/internal/cal"
	"garner/internal/outlook"
	"garner/internal/plan"
)

// Which ground is looked at for a sowing.
const (
	leastM2    = 0.25 // [m2]. judgement
	leastDays  = 21   // that it must be free before the gap is over [d]: no crop of the book is ready sooner
	mostSpaces = 24   // the largest; ground beyond is much the same again
)

// sowings are what could be sown or planted onto any ground that is free before
// the gap is over.
func (w *weighing) sowings() ([]Proposal, error) {
	spaces := w.spaces()
	aim := advise.Aim{Vegetables: w.row.feeds, First: w.gap.First, Last: w.gap.Last, Kg: w.gap.ShortKg}
	candidates, err := w.adviser.Toward(aim, spaces)
	if err != nil {
		return nil, err
	}
	w.looked += len(candidates)
	var out []Proposal
	for i := range candidates {
		p := w.sowing(&candidates[i])
		if p == nil {
			continue
		}
		if n := len(out); n > 0 && out[n-1].sameButSize(p) {
			if p.GapKg >= worthAmple*out[n-1].GapKg {
				out[n-1] = *p
			}
			continue
		}
		out = append(out, *p)
	}
	return out, nil
}

// worthAmple is how many times as much a sowing must mend on three times the
// ground, to be told in place of the smaller. judgement
const worthAmple = 1.5

// sameButSize tells whether two sowings differ by their ground alone.
func (p *Proposal) sameButSize(o *Proposal) bool {
	a, b := p.Planting, o.Planting
	a.AreaM2 = b.AreaM2
	return a == b
}

// sowing is a candidate as a proposal; nil when it is not worth a word.
func (w *weighing) sowing(c *advise.Candidate) *Proposal {
	p := Proposal{Kind: Sow, Edit: outlook.Edit{Set: []plan.Planting{c.Planting}}, Planting: c.Planting, Candidate: c,
		Odds: c.Odds, Warning: c.Clash}
	p.Takes.SeedG, p.Takes.Plants = c.SeedG, c.Plants
	p.ground(c.HeldD)
	p.work()
	if !w.judge(&p, &outlook.Weight{DropKg: c.DropKg, Drops: c.Drops}) {
		return nil
	}
	return &p
}

// spaces are the pieces of free ground that a sowing could mend the gap from.
func (w *weighing) spaces() []advise.Space {
	var out []advise.Space
	for i := range w.adviser.Ground.Beds {
		for _, g := range w.adviser.Ground.Beds[i].Gaps(w.today, w.gap.Last-leastDays) {
			s := advise.Space{Bed: g.Bed, From: max(g.From.P50, w.today), Until: g.Until, AreaM2: rounded(g.AreaM2)}
			if g.Open {
				s.Until = cal.None
			}
			if s.AreaM2 >= leastM2 && g.Until-s.From >= leastDays {
				out = append(out, s)
			}
		}
	}
	sort.SliceStable(out, func(i, k int) bool { return w.m2Days(&out[i]) > w.m2Days(&out[k]) })
	return out[:min(len(out), mostSpaces)]
}

// m2Days is how much ground a space has for how long before the gap is over.
func (w *weighing) m2Days(s *advise.Space) float64 {
	until := w.gap.Last
	if s.Until.IsSet() {
		until = min(until, s.Until)
	}
	return s.AreaM2 * float64(until-s.From)
}

// spaceOf is the space in which a candidate stands.
func (w *weighing) spaceOf(p *plan.Planting) advise.Space {
	return advise.Space{Bed: p.Bed, From: p.Date, Until: p.ClearBy, AreaM2: p.AreaM2}
}
