package desk

import (
	"time"

	"garner/internal/draft"
	"garner/internal/search"
	"garner/internal/words"
)

// gatherShare is the share of a draft's time in which its rows are made fewer.
// judgement: most of them go in the first moments.
const gatherShare = 0.15

// gather makes fewer rows of what the search found, and tells how many and what that
// costs. What is stopped is gathered all the same, for as long as it would have been;
// a search by steps until nothing more is worth it.
func (v *DraftView) gather(d *draft.Draft, found search.Found, o DraftOptions) (search.Found, error) {
	var stop func() bool
	if limit := time.Duration(gatherShare * secondsOf(o) * float64(time.Second)); limit > 0 {
		began := time.Now()
		stop = func() bool { return time.Since(began) >= limit }
	}
	g, err := d.Gather(found.Units, stop)
	if err != nil {
		return found, err
	}
	v.Gathered = &g
	key := "desk.draft_gathered"
	if g.Cost < 0 { // the search was stopped before it saw to it
		key = "desk.draft_gathered_better"
	}
	v.Notes = append(v.Notes, words.P(key, words.Args{"n": g.Rows, "before": g.RowsBefore, "cost": g.Cost, "gain": -g.Cost}))
	if g.Spared > 0 {
		v.Notes = append(v.Notes, words.P("desk.draft_spared", words.Args{"n": g.Spared, "cost": g.SparedCost}))
	}
	found.Units, found.Objective = g.Units, g.Objective
	return found, nil
}
