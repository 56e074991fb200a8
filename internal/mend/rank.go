package mend

import (
	"math"
	"sort"
)

// How many proposals are told.
const (
	mostTold    = 12
	mostOfAKind = 5 // of one kind, while there are others
	mostOfAUse  = 2 // sowings of one use, in different beds
)

// best keeps of proposals that come to the same thing the best, and of all the best
// few.
func best(list []Proposal) []Proposal {
	sort.SliceStable(list, func(i, k int) bool { return before(&list[i], &list[k]) })
	same, kinds := map[string]int{}, map[Kind]int{}
	var out, more []Proposal
	for i := range list {
		p := &list[i]
		most := 1
		if p.Kind == Sow {
			if at := alike(out, p); at >= 0 {
				out[at].Alike = append(out[at].Alike, p.Planting.Bed)
				continue
			}
			most = mostOfAUse
			at := p.name() + "/" + p.Planting.Bed
			if same[at]++; same[at] > 1 {
				continue
			}
		}
		if same[p.name()]++; same[p.name()] > most {
			continue
		}
		if kinds[p.Kind]++; kinds[p.Kind] > mostOfAKind {
			more = append(more, *p)
			continue
		}
		out = append(out, *p)
	}
	if room := mostTold - len(out); room > 0 {
		out = append(out, more[:min(room, len(more))]...)
	}
	sort.SliceStable(out, func(i, k int) bool { return before(&out[i], &out[k]) })
	return out[:min(len(out), mostTold)]
}

// likeShare is how little the worth of two sowings may differ that come to the same.
// judgement
const likeShare = 0.01

// alike finds the sowing from which another differs by its bed alone; below 0 there is
// none.
func alike(list []Proposal, p *Proposal) int {
	for i := range list {
		o := &list[i]
		same := o.Planting
		same.ID, same.Bed, same.ClearBy = p.Planting.ID, p.Planting.Bed, p.Planting.ClearBy
		if o.Kind == Sow && same == p.Planting && o.Planting.Bed != p.Planting.Bed && (o.Warning == nil) == (p.Warning == nil) &&
			math.Abs(o.GapKg-p.GapKg) <= likeShare*o.GapKg && math.Abs(o.DropKg-p.DropKg) <= likeShare*math.Abs(o.DropKg) {
			return i
		}
	}
	return -1
}

// before orders proposals: what speaks against one puts it last, else by score.
func before(a, b *Proposal) bool {
	if (a.Warning == nil) != (b.Warning == nil) {
		return a.Warning == nil
	}
	return a.score() > b.score()
}

// name is the same for proposals of which only the best is told: days and sizes of
// one sowing, covers over one bed, stores for one crop.
func (p *Proposal) name() string {
	switch p.Kind {
	case Sow:
		return string(p.Kind) + "/" + p.Planting.Crop + "/" + p.Planting.Use
	case Cover:
		return string(p.Kind) + "/" + p.Spell.Bed
	}
	return string(p.Kind) + "/" + p.Planting.ID
}

// tell fills in what only those that are told need.
func (w *weighing) tell(list []Proposal) ([]Proposal, error) {
	for i := range list {
		p := &list[i]
		if p.Kind != Sow {
			continue
		}
		if err := w.adviser.Tell(p.Candidate, w.spaceOf(&p.Planting)); err != nil {
			return nil, err
		}
	}
	return list, nil
}
