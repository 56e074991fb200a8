package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"time"

	"garner/internal/programme"
)

// Result is what is kept of one problem: one file of its own, named by the hash of
// the problem.
type Result struct {
	Name       string  `json:"name"`
	Hash       string  `json:"hash"` // of the problem as MPS, SHA-256
	Beds       int     `json:"beds"`
	Cap        int     `json:"cap_s"`
	Weeks      int     `json:"weeks"`
	Futures    []int   `json:"futures"` // numbers of the table's futures it holds
	Rows       int     `json:"rows"`
	Columns    int     `json:"columns"`
	WholeUnits int     `json:"whole"`   // columns in whole numbers
	BuildS     float64 `json:"build_s"` // to make the problem, supply profiles and all
	Machine    string  `json:"machine"`
	Runs       []Run   `json:"runs"`
}

// written is a problem as the solvers get it.
type written struct {
	challenge
	problem *programme.Problem
	linear  *programme.Linear
	mps     []byte
	seconds float64 // to make it
}

func writeOut(c challenge) (written, error) {
	begin := time.Now()
	p, err := c.build()
	if err != nil {
		return written{}, err
	}
	seconds := hundredths(time.Since(begin).Seconds())
	if err := p.Sound(); err != nil {
		return written{}, err
	}
	l := p.Linear()
	var b bytes.Buffer
	err = programme.WriteMPS(&b, c.Name, l)
	return written{c, p, l, b.Bytes(), seconds}, err
}

// blank is the result before anyone ran.
func (w written) blank() Result {
	sum := sha256.Sum256(w.mps)
	r := Result{Name: w.Name, Hash: hex.EncodeToString(sum[:]), Beds: w.Beds, Cap: w.Seconds, Weeks: w.problem.Weeks, Futures: w.problem.Futures,
		Rows: len(w.linear.Rows), Columns: len(w.linear.Columns), WholeUnits: len(w.problem.Sowings), BuildS: w.seconds, Machine: machine()}
	return r
}

// path is where the result of a problem is kept in a folder.
func (r Result) path(folder string) string { return filepath.Join(folder, r.Hash[:16]+".json") }

// kept takes up the result that a folder holds of the same problem.
func (r Result) kept(folder string) (Result, error) {
	raw, err := os.ReadFile(r.path(folder))
	if errors.Is(err, fs.ErrNotExist) {
		return r, nil
	}
	if err != nil {
		return r, err
	}
	var old Result
	if err := json.Unmarshal(raw, &old); err != nil {
		return r, err
	}
	if old.Hash == r.Hash && old.Cap == r.Cap {
		r.BuildS, r.Machine, r.Runs = old.BuildS, old.Machine, old.Runs
	}
	return r, nil
}

// keep writes the result as a whole or not at all.
func (r Result) keep(folder string) error {
	raw, err := json.MarshalIndent(r, "", "  ")
	if err != nil {
		return err
	}
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return err
	}
	half := r.path(folder) + ".new"
	if err := os.WriteFile(half, append(raw, '\n'), 0o644); err != nil {
		return err
	}
	return os.Rename(half, r.path(folder))
}

// of is the run of a contestant; nil when it did not run.
func (r *Result) of(by string) *Run {
	for i := range r.Runs {
		if r.Runs[i].By == by {
			return &r.Runs[i]
		}
	}
	return nil
}

// put takes the place of the contestant's run before, if there is one.
func (r *Result) put(run Run) {
	if old := r.of(run.By); old != nil {
		*old = run
		return
	}
	r.Runs = append(r.Runs, run)
}

// machine is the class of this machine: its processor, without any name of its own.
func machine() string {
	raw, err := os.ReadFile("/proc/cpuinfo")
	if err == nil {
		for _, line := range strings.Split(string(raw), "\n") {
			if name, value, found := strings.Cut(line, ":"); found && strings.TrimSpace(name) == "model name" {
				return strings.TrimSpace(value)
			}
		}
	}
	return runtime.GOOS + " on " + runtime.GOARCH
}
