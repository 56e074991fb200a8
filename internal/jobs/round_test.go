package jobs_test

import (
	"testing"

	"garner/internal/cal"
	"garner/internal/demotest"
	"garner/internal/jobs"
)

// busy is the demo on another day of its year, with nothing recorded since.
func busy(t *testing.T, month, day, days int) (jobs.Question, []jobs.Job) {
	t.Helper()
	h := demotest.Holding(t, "")
	h.Today = cal.Of(2027, month, day)
	q := question(t, h, days)
	return q, derived(t, q)
}

// Work of one kind at several beds of a site is one round; every job stands in one work,
// and no two works at one stop are of one kind that makes rounds.
func TestARoundIsOneLine(t *testing.T) {
	_, all := busy(t, 7, 5, 7)
	type place struct {
		stop jobs.Stop
		kind jobs.Kind
	}
	seen, jobsSeen, hoed := map[place]bool{}, map[string]bool{}, 0
	for _, w := range jobs.Works(all) {
		first := &w.Jobs[0][0]
		if first.Round {
			at := place{w.Stop, first.Kind}
			if seen[at] {
				t.Errorf("%s is told twice at %+v", first.Kind, w.Stop)
			}
			seen[at] = true
		}
		for _, turns := range w.Jobs {
			for i := range turns {
				j := &turns[i]
				if jobsSeen[j.ID] || j.Kind != first.Kind || j.Series != turns[0].Series {
					t.Errorf("%s stands with %s", j.ID, first.ID)
				}
				jobsSeen[j.ID] = true
			}
		}
		if first.Kind == "hoe" {
			hoed++
		}
	}
	if len(jobsSeen) != len(all) {
		t.Errorf("%d of %d jobs", len(jobsSeen), len(all))
	}
	if hoed != 2 {
		t.Errorf("hoeing is told %d times for two sites", hoed)
	}
}

// What nobody ticked is asked after by its work, and is no longer in the list; what comes
// again, and what was put off, is.
func TestWhatNobodyTickedIsAskedAfter(t *testing.T) {
	q, all := busy(t, 5, 5, 7)
	now, past := jobs.Ask(all, q.Today)
	n, starts := len(now), 0
	for _, p := range past {
		n += len(p.Jobs)
		for _, j := range p.Jobs {
			if j.Best >= q.Today-7 || j.Best < p.First || j.Best > p.Last {
				t.Errorf("%s of %s is asked after", j.ID, j.Best)
			}
		}
		if p.Work == "starts" {
			starts = len(p.Jobs)
		}
	}
	if n != len(all) || starts < 5 {
		t.Errorf("%d of %d jobs, %d sowings and plantings", n, len(all), starts)
	}
	for _, j := range now {
		if j.Turn == 0 && !j.Season && j.Best < q.Today-7 && (j.Kind == jobs.Sow || j.Kind == jobs.PlantOut || j.Kind == "thin") {
			t.Errorf("%s of %s stands in the list", j.ID, j.Best)
		}
	}
}

// What a job prepares ends it: nothing is raised for a day that is past, thinned once it is
// picked, or hardened off when it stands outside.
func TestNoJobForWhatIsPast(t *testing.T) {
	for month := 2; month <= 11; month++ {
		q, all := busy(t, month, 5, 7)
		planned := map[string]cal.Date{}
		for _, p := range q.Plantings {
			planned[p.ID] = p.Date
		}
		picked := map[string]cal.Date{}
		for _, j := range all {
			if d, known := picked[j.Planting]; j.Kind == jobs.Pick && (!known || j.Best < d) {
				picked[j.Planting] = j.Best
			}
		}
		for _, j := range all {
			d := planned[j.Planting]
			switch j.Kind {
			case jobs.SowIndoors:
				if d <= q.Today {
					t.Errorf("on %s %s is raised for %s", q.Today, j.Planting, d)
				}
			case "harden-off":
				if j.Last > d-3 {
					t.Errorf("%s until %s, planted on %s", j.ID, j.Last, d)
				}
			case "thin":
				if at, known := picked[j.Planting]; known && at <= q.Today {
					t.Errorf("on %s %s is told, picked from %s", q.Today, j.ID, at)
				}
			}
		}
	}
}

// No week of the year has a job of nothing: an amount by weight is a helping at least.
func TestNoAmountOfNothing(t *testing.T) {
	for week := range 26 {
		h := demotest.Holding(t, "")
		h.Today = cal.Of(2027, 1, 4) + cal.Date(14*week)
		for _, j := range derived(t, question(t, h, 14)) {
			if (j.Kind == jobs.Pick || j.Kind == jobs.Lift || j.Kind == "cure" || j.Kind == "tie-up") && j.Amount.Kg < 0.1 {
				t.Errorf("on %s %s of %g kg", h.Today, j.ID, j.Amount.Kg)
			}
			if (j.Kind == jobs.Water || j.Kind == jobs.Feed) && j.Amount.Litres < 0.5 {
				t.Errorf("on %s %s of %g L", h.Today, j.ID, j.Amount.Litres)
			}
		}
	}
}
