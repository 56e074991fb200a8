package advise

import (
	"sort"

	"garner/internal/outlook"
	"garner/internal/plan"
)

// insteadWays is how many uses are weighed for ground that an edit frees.
const insteadWays = 8

// Instead ranks what could be put into a space that an edit frees, other than a
// vegetable. The worth of a candidate is what it gives on top of the edit: the
// difference of two full tables, both with the edit made. What is told of it but
// its last day, its remarks and its reason is filled in, see Tell.
func (a *Adviser) Instead(of outlook.Edit, vegetable string, s Space) ([]Candidate, error) {
	ways, err := a.screen(a.ways(s, startDays(&s, a.Table.End())))
	if err != nil {
		return nil, err
	}
	var chosen []way
	used := map[string]bool{}
	for i := range ways { // the best first
		w := &ways[i]
		if w.use.Vegetable == vegetable || used[key(w.use)] || a.clashes(w) {
			continue
		}
		used[key(w.use)] = true
		if chosen = append(chosen, *w); len(chosen) == insteadWays {
			break
		}
	}
	edits := []outlook.Edit{of}
	for i := range chosen {
		both := of
		both.Set = append(append([]plan.Planting{}, of.Set...), chosen[i].planting)
		edits = append(edits, both)
	}
	weights, err := a.scales.Weigh(edits)
	if err != nil {
		return nil, err
	}
	return a.onTop(chosen, weights[0].DropKg, weights[1:]), nil
}

// onTop are ways weighed on top of what weighs so much alone, the best first.
func (a *Adviser) onTop(chosen []way, alone float64, weights []outlook.Weight) []Candidate {
	var out []Candidate
	for i := range chosen {
		c := a.candidate(&chosen[i], &weights[i])
		if c.DropKg -= alone; c.DropKg >= leastWorth && c.Odds >= leastOdds {
			out = append(out, c)
		}
	}
	sort.SliceStable(out, func(i, k int) bool { return before(&out[i], &out[k]) })
	return out
}
