// Solverbench holds the drafts against exact solvers: it gives each problem of the
// benchmark to GLPK, CBC and HiGHS and to the product's own search, for the same
// time, keeps what they made of it, and writes the page docs/solvers.md. What has a
// result is not run again, so that it can be broken off at any time. Run it by make
// solvers, which installs the solvers.
package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

func main() {
	var b bench
	var again, only string
	var trial bool
	flag.StringVar(&b.folder, "results", "docs/solvers", "folder of the results")
	flag.StringVar(&b.page, "page", "docs/solvers.md", "page to write")
	flag.StringVar(&b.highs, "highs", "cmd/solverbench/highs", "folder in which HiGHS is installed")
	flag.StringVar(&again, "again", "", "contestants to run again, by the beginning of their names: garner, CBC")
	flag.StringVar(&only, "only", "", "problems to run, by the beginning of their names")
	flag.BoolVar(&trial, "trial", false, "one tiny problem instead of the benchmark, to bin/solvers")
	flag.Parse()
	b.again = func(by string) bool { return again != "" && strings.HasPrefix(by, again) }
	if trial {
		b.challenges, b.folder, b.page = []challenge{tiny()}, filepath.Join("bin", "solvers"), filepath.Join("bin", "solvers.md")
	}
	if !trial {
		var err error
		if b.challenges, err = challenges(); err != nil {
			fail(err)
		}
	}
	b.runs = func(name string) bool { return strings.HasPrefix(name, only) }
	if err := b.run(); err != nil {
		fail(err)
	}
}

func fail(err error) {
	fmt.Fprintln(os.Stderr, "solverbench:", err)
	os.Exit(1)
}

// bench is one run of the tool.
type bench struct {
	folder, page, highs string
	challenges          []challenge
	again               func(by string) bool
	runs                func(problem string) bool
}

func (b *bench) run() error {
	highs, err := filepath.Abs(b.highs)
	if err != nil {
		return err
	}
	exact := solvers(highs)
	if err := missing(exact); err != nil {
		return err
	}
	var results []Result
	current := map[string]bool{}
	for _, c := range b.challenges {
		r, err := b.problem(c, exact)
		if err != nil {
			return fmt.Errorf("%s: %w", c.Name, err)
		}
		current[r.path(b.folder)] = true
		if len(r.Runs) > 0 {
			results = append(results, r)
		}
		if err := os.WriteFile(b.page, []byte(page(results)), 0o644); err != nil {
			return err
		}
	}
	return b.stale(current)
}

// stale tells of results that are of no problem of the benchmark any more.
func (b *bench) stale(current map[string]bool) error {
	names, err := filepath.Glob(filepath.Join(b.folder, "*.json"))
	for _, name := range names {
		if !current[name] {
			fmt.Printf("%s is of a problem that is no longer in the benchmark\n", name)
		}
	}
	return err
}

// problem runs whoever has no result of a problem yet, and keeps each result as
// soon as it is there.
func (b *bench) problem(c challenge, exact []solver) (Result, error) {
	w, err := writeOut(c)
	if err != nil {
		return Result{}, err
	}
	r, err := w.blank().kept(b.folder)
	if err != nil || !b.runs(c.Name) {
		return r, err
	}
	folder, err := os.MkdirTemp("", "solverbench")
	if err != nil {
		return r, err
	}
	defer os.RemoveAll(folder)
	if err := os.WriteFile(filepath.Join(folder, "problem.mps"), w.mps, 0o644); err != nil {
		return r, err
	}
	for _, s := range exact {
		if err := b.contestant(&r, s.name, func() (Run, error) { return s.solve(folder, w.problem, w.linear, c.Seconds) }); err != nil {
			return r, err
		}
	}
	for _, o := range owns {
		if err := b.contestant(&r, o.name, func() (Run, error) { return o.solve(w.problem, c.Seconds) }); err != nil {
			return r, err
		}
	}
	return r, nil
}

func (b *bench) contestant(r *Result, by string, solve func() (Run, error)) error {
	if r.of(by) != nil && !b.again(by) {
		return nil
	}
	run, err := solve()
	if err != nil {
		return fmt.Errorf("%s: %w", by, err)
	}
	r.put(run)
	fmt.Printf("%s: %s %s\n", r.Name, by, outcome(&run))
	return r.keep(b.folder)
}
