package main

import (
	"fmt"
	"math"
	"strings"
)

// page is docs/solvers.md.
func page(results []Result) string {
	var b strings.Builder
	b.WriteString(`# The draft beside exact solvers

Written by ` + "`make solvers`" + `, which runs only what has no result yet; the results are in ` + "`docs/solvers`" + `,
one file for each problem, named by the hash of the problem. It is no part of the tests.

Each contestant gets the same problem, the same machine and the same time, on one
processor. The solvers read the problem as MPS and run with their own defaults (HiGHS: no
gap allowed). Every plan, whoever made it, is priced by the product; by how much a
solver's own figure differs from that is told as a share of it. A bound is what no plan can
go below. A problem is closed when a solver says that its plan is best.

`)
	for _, m := range machines(results) {
		b.WriteString("Processor: " + m + ".\n")
	}
	b.WriteString("\n## Side by side\n\n")
	side(&b, results)
	b.WriteString("\n## What was promised\n\n")
	promises(&b, results)
	b.WriteString("\n## All runs\n\n")
	runs(&b, results)
	return b.String()
}

// machines are the processors that results were made on.
func machines(results []Result) []string {
	var out []string
	seen := map[string]bool{}
	for _, r := range results {
		if !seen[r.Machine] {
			seen[r.Machine] = true
			out = append(out, r.Machine)
		}
	}
	return out
}

var contestants = []string{"GLPK", "CBC", "HiGHS", "garner", "garner in 10 s"}

func side(b *strings.Builder, results []Result) {
	b.WriteString("| problem | cap | " + strings.Join(contestants, " | ") + " | best bound |\n| --- | --- |" + strings.Repeat(" --- |", len(contestants)+1) + "\n")
	for _, r := range results {
		fmt.Fprintf(b, "| %s | %d s |", r.Name, r.Cap)
		for _, by := range contestants {
			fmt.Fprintf(b, " %s |", outcome(r.of(by)))
		}
		fmt.Fprintf(b, " %s |\n", figure(r.bound()))
	}
}

// outcome is a run in a cell: the cost of its plan, and when it was closed.
func outcome(run *Run) string {
	switch {
	case run == nil:
		return "not run"
	case run.Objective == nil:
		return "no plan"
	case run.Broken > 0:
		return figure(run.Objective) + ", overruns"
	case run.Closed:
		return fmt.Sprintf("%s, closed in %.1f s", figure(run.Objective), run.Seconds)
	}
	return figure(run.Objective)
}

// bound is the best of all bounds; nil when there is none.
func (r *Result) bound() *float64 {
	var best *float64
	for i := range r.Runs {
		if x := r.Runs[i].Bound; x != nil && r.Runs[i].Broken == 0 && (best == nil || *x > *best) {
			best = x
		}
	}
	return best
}

// exact is the best plan of the solvers, and whether one of them closed the problem;
// nil when none has a plan.
func (r *Result) exact() (best *float64, closed bool) {
	for i := range r.Runs {
		run := &r.Runs[i]
		if strings.HasPrefix(run.By, "garner") || run.Objective == nil || run.Broken > 0 {
			continue
		}
		closed = closed || run.Closed
		if best == nil || *run.Objective < *best {
			best = run.Objective
		}
	}
	return best, closed
}

func promises(b *strings.Builder, results []Result) {
	b.WriteString("| problem | best of the solvers | promised | garner against it | kept | in 10 s | kept | first plan | within 1 s |\n| --- | --- | --- | --- | --- | --- | --- | --- | --- |\n")
	for i := range results {
		r := &results[i]
		best, closed := r.exact()
		promised := "better"
		if closed {
			promised = "within 1 %"
		}
		whole, short := r.of("garner"), r.of("garner in 10 s")
		fmt.Fprintf(b, "| %s | %s | %s | %s | %s | %s | %s | %s | %s |\n", r.Name, figure(best), promised, against(whole, best), yes(kept(whole, best, closed)),
			against(short, best), yes(kept(short, best, closed)), firstPlan(whole), yes(soon(whole)))
	}
	if most, there := differ(results); there {
		fmt.Fprintf(b, "\nThe product and the solvers differ on the cost of the same plan by %.0e of it at most (promised: 1e-06).\n", most)
	}
}

// differ is the most that a solver's figure for its plan is off the product's.
func differ(results []Result) (most float64, there bool) {
	for i := range results {
		for k := range results[i].Runs {
			run := &results[i].Runs[k]
			if run.Objective != nil && run.Stated != nil && run.Broken == 0 {
				most, there = math.Max(most, math.Abs(beyond(*run.Stated, *run.Objective))), true
			}
		}
	}
	return most, there
}

// soon tells whether the first plan was there within a second.
func soon(run *Run) bool {
	return run != nil && len(run.Trace) > 0 && run.Trace[0].Seconds <= 1
}

// against is by how much a plan costs more than the best of the solvers.
func against(run *Run, best *float64) string {
	if run == nil || run.Objective == nil || best == nil {
		return ""
	}
	return fmt.Sprintf("%+.2f %%", 100*beyond(*run.Objective, *best))
}

// kept tells whether a plan is as good as was promised.
func kept(run *Run, best *float64, closed bool) bool {
	switch {
	case run == nil || run.Objective == nil || run.Broken > 0:
		return false
	case best == nil:
		return true
	case closed:
		return beyond(*run.Objective, *best) <= 0.01
	}
	return *run.Objective < *best
}

// beyond is how much more one cost is than another, as a share of the other.
func beyond(cost, other float64) float64 { return (cost - other) / math.Max(math.Abs(other), 1e-9) }

func yes(x bool) string {
	if x {
		return "yes"
	}
	return "no"
}

func runs(b *strings.Builder, results []Result) {
	for i := range results {
		r := &results[i]
		fmt.Fprintf(b, "### %s\n\n%d weeks, %d of the table's futures, %d rows, %d columns, %d of them in whole units. Made in %.1f s, supply profiles and all. Problem %s.\n\n", r.Name, r.Weeks, len(r.Futures), r.Rows, r.Columns, r.WholeUnits, r.BuildS, r.Hash[:16])
		b.WriteString("| by | asked | plan | bound | gap | first plan | time | differs | |\n| --- | --- | --- | --- | --- | --- | --- | --- | --- |\n")
		for k := range r.Runs {
			run := &r.Runs[k]
			fmt.Fprintf(b, "| %s | `%s` | %s | %s | %s | %s | %.1f s | %s | %s |\n", strings.TrimSpace(run.By+" "+run.Version), run.Asked, figure(run.Objective), figure(run.Bound),
				gap(run), firstPlan(run), run.Seconds, differs(run), note(run))
		}
		b.WriteString("\n")
	}
}

func gap(run *Run) string {
	if run.Objective == nil || run.Bound == nil {
		return ""
	}
	return fmt.Sprintf("%.2f %%", 100*math.Max(0, beyond(*run.Objective, *run.Bound)))
}

func firstPlan(run *Run) string {
	if run == nil || len(run.Trace) == 0 {
		return ""
	}
	return fmt.Sprintf("%.2f s", run.Trace[0].Seconds)
}

func differs(run *Run) string {
	if run.Objective == nil || run.Stated == nil {
		return ""
	}
	return fmt.Sprintf("%.0e", math.Abs(beyond(*run.Stated, *run.Objective)))
}

func note(run *Run) string {
	var notes []string
	if run.Closed {
		notes = append(notes, "closed")
	}
	if run.Broken > 0 {
		notes = append(notes, fmt.Sprintf("overruns %d rows", run.Broken))
	}
	if run.Trouble != "" {
		notes = append(notes, run.Trouble)
	}
	return strings.Join(notes, "; ")
}

func figure(x *float64) string {
	if x == nil {
		return "none"
	}
	return fmt.Sprintf("%.3f", *x)
}
