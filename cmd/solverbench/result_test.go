package main

import (
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"garner/internal/programme"
)

func TestChallengesAreTwelve(t *testing.T) {
	all, err := challenges()
	if err != nil {
		t.Fatal(err)
	}
	names, sizes := map[string]bool{}, map[int]int{}
	for _, c := range all {
		names[c.Name] = true
		sizes[c.Beds]++
		if c.Seconds != map[int]int{10: 60, 30: 120, 80: 300}[c.Beds] {
			t.Errorf("%s is given %d s", c.Name, c.Seconds)
		}
	}
	if len(names) != 12 || sizes[10] != 4 || sizes[30] != 4 || sizes[80] != 4 {
		t.Errorf("there are %d, by beds %v", len(names), sizes)
	}
}

// TestAResultIsNotRunAgain: what was kept is taken up by the same problem, and by
// no other.
func TestAResultIsNotRunAgain(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "solvers")
	w, err := writeOut(tiny())
	if err != nil {
		t.Fatal(err)
	}
	cost := 12.5
	r := w.blank()
	r.put(Run{By: "CBC", Objective: &cost, Trace: []Point{{0.5, 13}, {1, 12.5}}})
	if err := r.keep(folder); err != nil {
		t.Fatal(err)
	}
	again, err := w.blank().kept(folder)
	if err != nil || !reflect.DeepEqual(again, r) {
		t.Errorf("kept %+v, took up %+v, %v", r, again, err)
	}
	b := &bench{folder: folder, again: func(by string) bool { return by == "GLPK" }}
	for by, runs := range map[string]bool{"CBC": false, "GLPK": true, "HiGHS": true} {
		ran := false
		if err := b.contestant(&again, by, func() (Run, error) { ran = true; return Run{By: by}, nil }); err != nil || ran != runs {
			t.Errorf("%s ran: %v, want %v; %v", by, ran, runs, err)
		}
	}
	other := tiny()
	other.build = func() (*programme.Problem, error) { return invented(1, 2, 4, 30, 2), nil }
	v, err := writeOut(other)
	if err != nil {
		t.Fatal(err)
	}
	if r, err := v.blank().kept(folder); err != nil || len(r.Runs) > 0 {
		t.Errorf("another problem takes up %+v, %v", r, err)
	}
	longer := w
	longer.Seconds = 20
	if r, err := longer.blank().kept(folder); err != nil || len(r.Runs) > 0 {
		t.Errorf("the problem with another cap takes up %+v, %v", r, err)
	}
}

// TestAPlanIsPricedByTheProduct, and what a solver left is told when it is none.
func TestAPlanIsPricedByTheProduct(t *testing.T) {
	p := invented(0, 2, 4, 30, 2)
	l := p.Linear()
	solution := filepath.Join(t.TempDir(), "solution.txt")
	run := Run{Closed: true}
	if err := judge(&run, solution, p, l); err != nil || run.Closed || run.Trouble == "" {
		t.Errorf("without a file: %+v, %v", run, err)
	}
	write := func(text string) {
		if err := os.WriteFile(solution, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	write("Infeasible - objective value 0\n")
	run = Run{Closed: true}
	if err := judge(&run, solution, p, l); err != nil || run.Closed || run.Trouble == "" || run.Objective != nil {
		t.Errorf("without a plan: %+v, %v", run, err)
	}
	write("Optimal - objective value 100\n0 S0000000 1 0\n")
	run = Run{Closed: true}
	units := make(programme.Solution, len(p.Sowings))
	units[0] = 1
	want, err := p.Objective(units)
	if err != nil {
		t.Fatal(err)
	}
	if err := judge(&run, solution, p, l); err != nil || !run.Closed || *run.Objective != want || *run.Stated != 100 || *run.Bound != 100 || len(run.Trace) != 1 {
		t.Errorf("with a plan: %+v, %v", run, err)
	}
	write("Optimal - objective value 100\n0 S0000000 1000 0\n")
	run = Run{}
	if err := judge(&run, solution, p, l); err != nil || run.Broken == 0 {
		t.Errorf("with a plan that overruns: %+v, %v", run, err)
	}
}

func TestPageTellsWhatWasKept(t *testing.T) {
	of := func(x float64) *float64 { return &x }
	result := func(name string, runs ...Run) Result {
		return Result{Name: name, Hash: strings.Repeat("0", 64), Beds: 10, Cap: 60, Machine: "a processor", Runs: runs}
	}
	own := func(by string, cost, first float64) Run {
		return Run{By: by, Objective: of(cost), Stated: of(cost), Trace: []Point{{first, cost}}}
	}
	text := page([]Result{
		result("closed", Run{By: "CBC", Closed: true, Objective: of(100), Stated: of(100.001), Bound: of(100)}, own("garner", 100.9, 0.4), own("garner in 10 s", 101.2, 0.4)),
		result("open", Run{By: "CBC", Objective: of(100), Bound: of(90)}, own("garner", 99, 1.2), own("garner in 10 s", 100, 1)),
		result("overrun", Run{By: "CBC", Closed: true, Objective: of(80), Bound: of(80), Broken: 2}, Run{By: "GLPK", Objective: of(99)}, Run{By: "garner", Objective: of(98), Broken: 1}),
		result("none", Run{By: "GLPK", Trouble: "found no plan"}),
	})
	for _, want := range []string{
		"| closed | 60 s | not run | 100.000, closed in 0.0 s | not run | 100.900 | 101.200 | 100.000 |",
		"| closed | 100.000 | within 1 % | +0.90 % | yes | +1.20 % | no | 0.40 s | yes |",
		"| open | 100.000 | better | -1.00 % | yes | +0.00 % | no | 1.20 s | no |",
		"| overrun | 99.000 | better | -1.01 % | no |  | no |  | no |",
		"| none | none | better |  | no |  | no |  | no |",
		"| none | 60 s | no plan | not run | not run | not run | not run | none |",
		"differ on the cost of the same plan by 1e-05 of it at most",
		"Processor: a processor.\n\n",
		"overruns 2 rows",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("the page does not say %q", want)
		}
	}
	if t.Failed() {
		t.Log(text)
	}
}
