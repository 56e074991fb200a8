package jobs

import (
	"cmp"
	"slices"
)

// Work is what is done in one go: one job, with its further turns, or a round of jobs of
// one kind at several places.
type Work struct {
	Stop Stop    // where it begins; a round of several beds is of the site
	Jobs [][]Job // each with its further turns, in the order of the way
}

// IsRound tells whether it is a round.
func (w *Work) IsRound() bool { return len(w.Jobs) > 1 }

// turn is when it is done at its place: what leads past many places first, then each by
// its kind.
func (w *Work) turn() int {
	if w.IsRound() && w.Stop.Part == AtSite {
		return w.Jobs[0][0].rank - afterAll
	}
	return w.Jobs[0][0].rank
}

// afterAll is beyond the rank of every kind.
const afterAll = 1000

// Works puts jobs, in the order of the way, together to what is done in one go. Work of
// a kind that makes a round is one round at each place indoors, and one round of all beds
// of a site; what is left over stands at its own place. The order of the way is kept, and
// at a place rounds come first.
func Works(all []Job) []Work {
	bySeries := map[string]int{}
	var turns [][]Job
	for _, j := range all {
		at, known := bySeries[j.Series]
		if !known {
			at = len(turns)
			bySeries[j.Series] = at
			turns = append(turns, nil)
		}
		turns[at] = append(turns[at], j)
	}
	type round struct {
		stop Stop
		kind Kind
	}
	rounds := map[round][][]Job{}
	for _, t := range turns {
		if j := &t[0]; j.Round {
			at := round{start(j.Stop), j.Kind}
			rounds[at] = append(rounds[at], t)
		}
	}
	var out []Work
	for _, t := range turns {
		j := &t[0]
		at := round{start(j.Stop), j.Kind}
		switch r := rounds[at]; {
		case !j.Round || len(r) < 2:
			out = append(out, Work{j.Stop, [][]Job{t}})
		case r[0][0].ID == j.ID:
			w := Work{at.stop, r}
			if !slices.ContainsFunc(r, func(o []Job) bool { return o[0].Stop != j.Stop }) {
				w.Stop = j.Stop // all of it is at one place
			}
			out = append(out, w)
		}
	}
	slices.SortStableFunc(out, func(a, b Work) int {
		return cmp.Or(a.Stop.compare(b.Stop), cmp.Compare(a.turn(), b.turn()))
	})
	return out
}

// start is where a round begins that leads past a place.
func start(s Stop) Stop {
	if s.Part != AtBed {
		return s
	}
	return Stop{Site: s.Site, Part: AtSite, site: s.site}
}
