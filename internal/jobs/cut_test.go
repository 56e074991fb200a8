package jobs_test

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"garner/internal/cal"
	"garner/internal/jobs"
)

// some draws jobs of whole minutes.
func some(t *rapid.T) []jobs.Job {
	n := rapid.IntRange(0, 14).Draw(t, "jobs")
	out := make([]jobs.Job, n)
	for i := range out {
		out[i] = jobs.Job{ID: fmt.Sprint("j", i), Minutes: float64(rapid.IntRange(1, 60).Draw(t, "minutes")),
			Last: cal.Date(rapid.IntRange(0, 9).Draw(t, "last")), SpoilKg: float64(rapid.IntRange(0, 3).Draw(t, "spoils"))}
	}
	return out
}

// What is kept fits, nothing is lost, and what was dropped would not have fitted beside
// what costs more to put off.
func TestCuttingToTheHours(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		all, minutes := some(t), float64(rapid.IntRange(0, 300).Draw(t, "minutes there are"))
		c := jobs.To(all, minutes)
		if c.Minutes > minutes || c.Minutes != jobs.Minutes(c.Jobs) || c.Over != jobs.Minutes(c.Dropped) || len(c.Jobs)+len(c.Dropped) != len(all) {
			t.Fatalf("%g of %g minutes, %d and %d of %d jobs", c.Minutes, minutes, len(c.Jobs), len(c.Dropped), len(all))
		}
		for _, d := range c.Dropped {
			before := 0.0
			for _, k := range c.Jobs {
				if k.SpoilKg > d.SpoilKg || k.SpoilKg == d.SpoilKg && k.Last <= d.Last {
					before += k.Minutes
				}
			}
			if before+d.Minutes <= minutes {
				t.Fatalf("%s was dropped and fits", d.ID)
			}
		}
	})
}

// By hand: an hour goes to what costs the table most, then to what cannot wait.
func TestWhatIsDroppedByHand(t *testing.T) {
	all := []jobs.Job{{ID: "hoe", Minutes: 30, Last: 5}, {ID: "sow", Minutes: 40, Last: 9, CostKg: 2, Weighed: true}, {ID: "thin", Minutes: 20, Last: 3}}
	c := jobs.To(all, 60)
	if len(c.Jobs) != 2 || c.Jobs[0].ID != "sow" || c.Jobs[1].ID != "thin" || c.Dropped[0].ID != "hoe" || c.Over != 30 {
		t.Errorf("%+v", c)
	}
}

// Nobody has a longer stretch than there must be: none of the ways to cut the round in
// two has a shorter longest stretch, and two stretches differ by no more than the
// longest job.
func TestSharingByTheRoute(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		all := some(t)
		shares := jobs.Share(all, 2)
		if len(shares) != 2 || len(shares[0])+len(shares[1]) != len(all) {
			t.Fatalf("%d and %d of %d", len(shares[0]), len(shares[1]), len(all))
		}
		longest, job := max(jobs.Minutes(shares[0]), jobs.Minutes(shares[1])), 0.0
		for k := range all {
			if all[k].ID != append(append([]jobs.Job{}, shares[0]...), shares[1]...)[k].ID {
				t.Fatal("the order of the route is lost")
			}
			if l := max(jobs.Minutes(all[:k]), jobs.Minutes(all[k:])); l < longest {
				t.Fatalf("%g minutes, and it could be %g", longest, l)
			}
			job = max(job, all[k].Minutes)
		}
		if d := jobs.Minutes(shares[0]) - jobs.Minutes(shares[1]); d > job || -d > job {
			t.Fatalf("%g minutes apart, the longest job being %g", d, job)
		}
	})
}

// A child gets what a child can do, anyone grown everything.
func TestWhoCanDoIt(t *testing.T) {
	all := []jobs.Job{{ID: "a", Who: jobs.Child}, {ID: "b", Who: jobs.Newcomer}, {ID: "c", Who: jobs.Grown}}
	for who, want := range map[jobs.Who]int{jobs.Child: 1, jobs.Newcomer: 2, jobs.Grown: 3} {
		if got := jobs.For(all, who); len(got) != want {
			t.Errorf("%s can do %d jobs, want %d", who, len(got), want)
		}
	}
}
