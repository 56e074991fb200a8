package search

import (
	"math"
	"sync/atomic"
	"testing"

	"pgregory.net/rapid"

	"garner/internal/programme"
)

// small problems have few enough solutions to try them all.
func small(t *rapid.T) *programme.Problem {
	seed := rapid.Uint64().Draw(t, "seed")
	p := invented(seed, size{grounds: 1 + int(seed%2), units: 2, demands: 2, weeks: 14, futures: 2})
	kept := p.Sowings[:0]
	for j := range p.Sowings {
		if (uint64(j)*2654435761+seed)%uint64(1+len(p.Sowings)/7) == 0 && len(kept) < 7 {
			kept = append(kept, p.Sowings[j])
		}
	}
	p.Sowings = kept
	if len(kept) > 1 {
		p.Limits = []programme.Limit{{ID: "kin", Terms: []programme.Term{{Sowing: 0, Weight: 1}, {Sowing: 1, Weight: 1}}, Most: 2}}
	}
	return p
}

// best tries every solution.
func best(s *programme.Standing, j int) float64 {
	if j == len(s.Problem.Sowings) {
		return s.Objective()
	}
	least := best(s, j+1)
	for n := 1; s.Room(j) > 0; n++ {
		s.Add(j, 1)
		least = math.Min(least, best(s, j+1))
		if s.Room(j) == 0 {
			s.Add(j, -n)
			break
		}
	}
	return least
}

// TestFindsTheBestOfSmallProblems holds the search to all solutions of small
// problems, and the bound below the best of them.
func TestFindsTheBestOfSmallProblems(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := small(t)
		want := best(p.NewStanding(), 0)
		found := Run(p.NewStanding(), Asked{Seed: 3, Steps: 4000})
		if math.Abs(found.Objective-want) > 1e-6 {
			t.Fatalf("found %v, the best is %v", found.Objective, want)
		}
		if found.Bound > want+1e-6 {
			t.Fatalf("the bound %v is above the best %v", found.Bound, want)
		}
	})
}

func TestASolutionKeepsWithinWhatThereIs(t *testing.T) {
	p := invented(1, size{5, 4, 12, 78, 3})
	found := Run(p.NewStanding(), Asked{Seed: 1, Steps: 30_000})
	s, err := p.Of(found.Units)
	if err != nil {
		t.Fatal(err)
	}
	if broken := s.Broken(); len(broken) > 0 {
		t.Errorf("overrun: %v", broken)
	}
	if none := p.NewStanding().Objective(); s.Objective() >= none || found.Bound > s.Objective() || found.Bound < 0.8*s.Objective() {
		t.Errorf("%.1f without sowings, %.1f found, bound %.1f", none, s.Objective(), found.Bound)
	}
	if got := s.Objective(); got != found.Objective {
		t.Errorf("worth %v, said %v", got, found.Objective)
	}
}

// The same seed and steps give the same solution; more steps none that is worse than
// the greedy one; a search that is stopped gives the best so far.
func TestSearchIsRepeatable(t *testing.T) {
	p := invented(2, size{4, 3, 8, 60, 2})
	from := p.NewStanding()
	one, two := Run(from, Asked{Seed: 5, Steps: 8000}), Run(from, Asked{Seed: 5, Steps: 8000})
	if one.Objective != two.Objective || one.Bound != two.Bound {
		t.Errorf("%+v and %+v", one, two)
	}
	for j := range one.Units {
		if one.Units[j] != two.Units[j] {
			t.Fatalf("sowing %d: %d and %d", j, one.Units[j], two.Units[j])
		}
	}
	if from.Objective() != p.NewStanding().Objective() {
		t.Error("the standing searched from was changed")
	}
	var asked atomic.Int64
	stopped := Run(from, Asked{Seed: 5, Stop: func() bool { return asked.Add(1) > 5 }})
	if len(stopped.Units) != len(p.Sowings) || stopped.Objective > from.Objective() {
		t.Errorf("stopped at %v", stopped.Objective)
	}
}

// What is told of a search never gets worse.
func TestProgressFalls(t *testing.T) {
	p := invented(3, size{4, 3, 8, 60, 2})
	last, told := math.Inf(1), 0
	Run(p.NewStanding(), Asked{Seed: 1, Steps: 40_000, Told: func(now Progress) {
		told++
		if now.Objective > last {
			t.Errorf("%v after %v", now.Objective, last)
		}
		last = now.Objective
	}})
	if told < 3 {
		t.Errorf("told %d times", told)
	}
}

// A problem without sowings, ground or demands is answered.
func TestSearchOfNothing(t *testing.T) {
	p := &programme.Problem{Weeks: 3, Futures: []int{0}}
	if found := Run(p.NewStanding(), Asked{Steps: 100}); found.Objective != 0 || len(found.Units) != 0 {
		t.Errorf("%+v", found)
	}
}
