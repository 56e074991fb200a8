package main

import (
	"encoding/json"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
)

// solvers are the contestants, each with its own defaults but for the gap, which is
// none. What they say is read line by line as they say it (stdbuf): times are those
// at which a plan was told.
func solvers(highs string) []solver {
	return []solver{
		{
			name: "GLPK", version: []string{"glpsol", "--version"}, before: "LP/MIP Solver ",
			command: func(seconds int) []string {
				return []string{"stdbuf", "-oL", "glpsol", "--mps", "problem.mps", "--tmlim", strconv.Itoa(seconds), "--write", "solution.txt"}
			},
			follow: followGLPK,
		},
		{
			name: "CBC", version: []string{"cbc", "-quit"}, before: "Version: ",
			command: func(seconds int) []string {
				return []string{"stdbuf", "-oL", "cbc", "problem.mps", "timeMode", "elapsed", "seconds", strconv.Itoa(seconds), "solve", "solution", "solution.txt"}
			},
			follow: followCBC,
		},
		{
			name: "HiGHS", version: []string{"node", "--print", "require(" + strconv.Quote(filepath.Join(highs, "node_modules", "highs", "package.json")) + ").version"},
			command: func(seconds int) []string {
				return []string{"node", filepath.Join(highs, "solve.mjs"), "problem.mps", "solution.txt", strconv.Itoa(seconds)}
			},
			follow: followHiGHS,
		},
	}
}

// number is a number as solvers write it.
const number = `([-+]?[0-9][-+.0-9e]*)`

// What GLPK says: lines of the best plan and the bound.
var (
	glpkPlan  = regexp.MustCompile(`^\+ *[0-9]+: (?:mip =|>>>>>) +` + number + ` +>=`)
	glpkBound = regexp.MustCompile(`^\+ *[0-9]+: .*>= +` + number)
)

func followGLPK(line string, w *watch) {
	if strings.Contains(line, "INTEGER OPTIMAL SOLUTION FOUND") {
		w.run.Closed = true
	}
	tell(glpkPlan, line, w.found)
	tell(glpkBound, line, w.bounded)
}

// What CBC says: the relaxation, plans as they are found, and bounds on the way and
// at the end.
var (
	cbcRelaxed = regexp.MustCompile(`^Continuous objective value is ` + number)
	cbcPlan    = regexp.MustCompile(`^Cbc00(?:04|12|16)I Integer solution of ` + number + ` found`)
	cbcBound   = regexp.MustCompile(`best possible ` + number)
	cbcLast    = regexp.MustCompile(`^Lower bound: +` + number)
)

func followCBC(line string, w *watch) {
	if strings.HasPrefix(line, "Result - Optimal solution found") && !strings.Contains(line, "gap") {
		w.run.Closed = true
	}
	tell(cbcPlan, line, w.found)
	tell(cbcRelaxed, line, w.bounded)
	tell(cbcBound, line, w.bounded)
	tell(cbcLast, line, w.bounded)
}

// followHiGHS reads what highs/solve.mjs says.
func followHiGHS(line string, w *watch) {
	var said struct {
		Objective, Bound *float64
		Closed           bool
	}
	if json.Unmarshal([]byte(line), &said) != nil {
		return
	}
	w.run.Closed = w.run.Closed || said.Closed
	if said.Objective != nil {
		w.found(*said.Objective)
	}
	if said.Bound != nil {
		w.bounded(*said.Bound)
	}
}

// tell gives the number in a line to whom it concerns.
func tell(pattern *regexp.Regexp, line string, to func(float64)) {
	if m := pattern.FindStringSubmatch(line); m != nil {
		if x, err := strconv.ParseFloat(m[1], 64); err == nil {
			to(x)
		}
	}
}
