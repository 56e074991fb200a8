package main

import (
	"bufio"
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"

	"garner/internal/programme"
)

// solver is an open solver that is run as a command of its own.
type solver struct {
	name string
	// version is the command that tells its version, and the words before it.
	version []string
	before  string
	// command solves the file problem.mps within so many seconds and writes
	// solution.txt.
	command func(seconds int) []string
	// follow reads a line of what it says on the way.
	follow func(line string, w *watch)
}

// grace is how long a solver may take beyond its cap to come to its end.
const grace = 60 * time.Second

// solve runs the solver on a problem in a folder that holds problem.mps.
func (s *solver) solve(folder string, p *programme.Problem, l *programme.Linear, seconds int) (Run, error) {
	command := s.command(seconds)
	run := Run{By: s.name, Version: s.toldVersion(), Asked: shown(command)}
	solution := filepath.Join(folder, "solution.txt")
	if err := os.RemoveAll(solution); err != nil {
		return run, err
	}
	if err := s.start(folder, command, time.Duration(seconds)*time.Second+grace, &run); err != nil {
		run.Trouble = "ended with " + err.Error()
	}
	return run, judge(&run, solution, p, l)
}

// start runs the command to its end and follows what it says.
func (s *solver) start(folder string, command []string, most time.Duration, run *Run) error {
	ctx, cancel := context.WithTimeout(context.Background(), most)
	defer cancel()
	c := exec.CommandContext(ctx, command[0], command[1:]...)
	c.Dir = folder
	said, err := c.StdoutPipe()
	if err != nil {
		return err
	}
	w := &watch{begin: time.Now(), run: run}
	if err := c.Start(); err != nil {
		return err
	}
	lines := bufio.NewScanner(said)
	lines.Buffer(nil, 1<<20)
	for lines.Scan() {
		s.follow(lines.Text(), w)
	}
	if err := lines.Err(); err != nil {
		cancel() // it may be waiting to be read
	}
	err = c.Wait()
	run.Seconds = w.seconds()
	if ctx.Err() != nil {
		return ctx.Err()
	}
	return err
}

// judge reads the plan that a solver wrote and computes what it costs.
func judge(run *Run, solution string, p *programme.Problem, l *programme.Linear) error {
	f, err := os.Open(solution)
	if os.IsNotExist(err) {
		run.Closed = false
		if run.Trouble == "" {
			run.Trouble = "wrote no solution"
		}
		return nil
	}
	if err != nil {
		return err
	}
	defer f.Close()
	units, stated, err := programme.ReadSolution(f, p, l)
	if err != nil {
		run.Closed = false
		if run.Trouble == "" {
			run.Trouble = "found no plan"
		}
		return nil
	}
	return count(run, units, stated, p)
}

// count computes what a plan costs and what it overruns.
func count(run *Run, units programme.Solution, stated *float64, p *programme.Problem) error {
	standing, err := p.Of(units)
	if err != nil {
		return err
	}
	own := standing.Objective()
	run.Objective, run.Stated, run.Broken = &own, stated, len(standing.Broken())
	if run.Closed && stated != nil && (run.Bound == nil || *run.Bound < *stated) {
		run.Bound = stated
	}
	if len(run.Trace) == 0 { // found in one go at the end
		run.Trace = []Point{{run.Seconds, own}}
	}
	return nil
}

// toldVersion asks the solver; empty when it does not tell.
func (s *solver) toldVersion() string {
	said, err := exec.Command(s.version[0], s.version[1:]...).Output()
	if err != nil {
		return ""
	}
	_, after, found := strings.Cut(string(said), s.before)
	if fields := strings.Fields(after); found && len(fields) > 0 {
		return fields[0]
	}
	return ""
}

// shown is a command without the folders of this machine.
func shown(command []string) string {
	var words []string
	for _, word := range command {
		words = append(words, filepath.Base(word))
	}
	return strings.Join(words, " ")
}

// missing tells which solvers are not installed.
func missing(solvers []solver) error {
	for _, s := range solvers {
		if s.toldVersion() == "" {
			return fmt.Errorf("%s does not answer: run make solvers, which installs it", s.name)
		}
	}
	return nil
}
