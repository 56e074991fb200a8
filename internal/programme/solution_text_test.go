package programme

import (
	"bytes"
	"errors"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"garner/internal/fault"
)

// solved are the solutions in testdata; README.md there says how they were made.
var solvedTexts = []string{"cbc-mps.txt", "cbc-lp.txt", "glpk-written-mps.txt", "glpk-written-lp.txt", "glpk-report-mps.txt", "highs-mps.txt", "highs-lp.txt"}

func testdata(t testing.TB, name string) []byte {
	t.Helper()
	raw, err := os.ReadFile(filepath.Join("testdata", name))
	if err != nil {
		t.Fatal(err)
	}
	return raw
}

// TestSolversAgreeWithTheObjective holds what three solvers say that their plans
// cost to what the product says the same plans cost. The solvers give at most ten
// digits or have read at most ten.
func TestSolversAgreeWithTheObjective(t *testing.T) {
	p := example()
	l := p.Linear()
	for _, name := range solvedTexts {
		units, told, err := ReadSolution(bytes.NewReader(testdata(t, name)), p, l)
		if err != nil || told == nil {
			t.Errorf("%s: %v, objective %v", name, err, told)
			continue
		}
		s, err := p.Of(units)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if own := s.Objective(); math.Abs(own-*told) > 1e-6 {
			t.Errorf("%s: the solver says %v, the product %v", name, *told, own)
		}
		if broken := s.Broken(); len(broken) > 0 {
			t.Errorf("%s: %v", name, broken)
		}
	}
}

// TestExampleIsSolvedBest: the plan that all three solvers prove to be best cannot
// be bettered by one unit more, one fewer, or one in the place of another.
func TestExampleIsSolvedBest(t *testing.T) {
	p := example()
	units, _, err := ReadSolution(bytes.NewReader(testdata(t, "cbc-mps.txt")), p, p.Linear())
	if err != nil {
		t.Fatal(err)
	}
	best, err := p.Objective(units)
	if err != nil {
		t.Fatal(err)
	}
	for out := -1; out < len(units); out++ {
		for in := -1; in < len(units); in++ {
			try := slices.Clone(units)
			if out >= 0 {
				try[out]--
			}
			if in >= 0 {
				try[in]++
			}
			s, err := p.Of(try)
			if err != nil || len(s.Broken()) > 0 {
				continue // fewer than none, or more than there is ground for
			}
			if s.Objective() < best-1e-6 {
				t.Errorf("%d out and %d in costs %v, less than %v", out, in, s.Objective(), best)
			}
		}
	}
}

func TestFaultsOfASolution(t *testing.T) {
	const head = "Optimal - objective value 12\n"
	const highs = "Model status\nOptimal\n\n# Primal solution values\n"
	for name, c := range map[string]struct {
		text, key string
		row       int
	}{
		"nothing":                {"", "programme.solution_unknown", 0},
		"blank":                  {"\n\n \n", "programme.solution_unknown", 3},
		"another text":           {"\nbed,crop\n", "programme.solution_unknown", 2},
		"a line without end":     {strings.Repeat("x", longestLine+1), "programme.solution_unreadable", 0},
		"a second line too long": {head + strings.Repeat("x", longestLine+1), "programme.solution_unreadable", 1},
		"cbc infeasible":         {"Infeasible - objective value 0\n", "programme.solution_none", 1},
		"cbc without a plan":     {"Stopped on time (no integer solution - continuous used) - objective value 26.6\n      0 S0000000 0.5 0\n", "programme.solution_none", 1},
		"cbc objective":          {"Optimal - objective value twelve\n", "programme.solution_number", 1},
		"cbc fields":             {head + "0 S0000000 2\n", "programme.solution_line", 2},
		"a name":                 {head + "0 S0009999 2 0\n", "programme.solution_name", 2},
		"a value":                {head + "0 S0000000 two 0\n", "programme.solution_number", 2},
		"not a number":           {head + "0 S0000000 NaN 0\n", "programme.solution_number", 2},
		"endless":                {head + "0 S0000000 1e999 0\n", "programme.solution_number", 2},
		"half a unit":            {head + "0 S0000000 1 0\n1 S0000001 0.5 0\n", "programme.solution_whole", 3},
		"below nought":           {head + "0 S0000000 -1 0\n", "programme.solution_whole", 2},
		"no such number of beds": {head + "0 S0000000 1e12 0\n", "programme.solution_whole", 2},
		"twice":                  {head + "0 S0000000 1 0\n** 0 S0000000 1 0\n", "programme.solution_twice", 3},
		"glpk other problem":     {"c Problem:\ns mip 3 4 o 12\n", "programme.solution_columns", 2},
		"glpk no plan":           {"s mip 145 365 n 0\n", "programme.solution_none", 1},
		"glpk kind":              {"s max 145 365 o 0\n", "programme.solution_line", 1},
		"glpk fields":            {"s mip 145 365 o\n", "programme.solution_line", 1},
		"glpk breaks off":        {"s mip 145 365 o 12\nj 1 2\n", "programme.solution_short", 2},
		"glpk leaves out":        {"s mip 145 365 o 12\nj 1 2\ne o f\n", "programme.solution_missing", 3},
		"glpk column":            {"s mip 145 365 o 12\nj 0 2\n", "programme.solution_number_of_column", 2},
		"glpk line":              {"s mip 145 365 o 12\nk 1 2\n", "programme.solution_line", 2},
		"glpk end alone":         {"c \nc\ne o f\n", "programme.solution_unknown", 1},
		"glpk end":               {"c x\ne o f\n", "programme.solution_line", 2},
		"report other problem":   {"Problem: x\nColumns: 4 (1 integer)\n", "programme.solution_columns", 2},
		"report no plan":         {"Problem: x\nStatus: INTEGER EMPTY\n", "programme.solution_none", 2},
		"report objective":       {"Problem: x\nObjective:  COST\n", "programme.solution_line", 2},
		"report breaks off":      {"Problem: x\nRows: 3\n", "programme.solution_short", 2},
		"report table":           {"Problem: x\n No. Column name Activity\n---\n 1 S0000000 * 2", "programme.solution_short", 4},
		"report leaves out":      {"Problem: x\n No. Column name Activity\n---\n 1 S0000000 * 2 0 3\n\n", "programme.solution_missing", 5},
		"report line":            {"Problem: x\n No. Column name Activity\n---\n 1 S0000000\n\n", "programme.solution_line", 4},
		"highs breaks off":       {"Model status\nOptimal\n", "programme.solution_short", 2},
		"highs no plan":          {"Model status\nInfeasible\n\n# Primal solution values\nNone\n", "programme.solution_none", 5},
		"highs overrun":          {highs + "Infeasible\nObjective 12\n", "programme.solution_none", 5},
		"highs other problem":    {highs + "Feasible\nObjective 12\n# Columns 3\n", "programme.solution_columns", 7},
		"highs objective":        {highs + "Feasible\nObjective\n", "programme.solution_line", 6},
		"highs no columns":       {highs + "Feasible\nObjective 12\n", "programme.solution_short", 6},
		"highs few columns":      {highs + "Feasible\nObjective 12\n# Columns 365\nS0000000 1\n", "programme.solution_short", 8},
		"highs line":             {highs + "Feasible\nObjective 12\n# Columns 365\nS0000000\n", "programme.solution_line", 8},
	} {
		p := example()
		units, told, err := ReadSolution(strings.NewReader(c.text), p, p.Linear())
		var faults fault.List
		if !errors.As(err, &faults) || units != nil || told != nil {
			t.Errorf("%s: %v, read %v, objective %v", name, err, units, told)
			continue
		}
		if f := faults[0]; f.Phrase.Key != c.key || f.At.Row != c.row || f.Kind != fault.Invalid {
			t.Errorf("%s: %v in line %d, want %s in line %d", name, f, f.At.Row, c.key, c.row)
		}
	}
}

// TestManyFaultsAreToldTogether, but not without end.
func TestManyFaultsAreToldTogether(t *testing.T) {
	p := example()
	text := "Optimal - objective value 12\n0 S0000000 0.5 0\n0 S0000001 two 0\n" + strings.Repeat("0 other 1 0\n", 100)
	_, _, err := ReadSolution(strings.NewReader(text), p, p.Linear())
	var faults fault.List
	if !errors.As(err, &faults) || len(faults) != MostFaults {
		t.Fatalf("told %v", err)
	}
	for i, f := range faults {
		if f.At.Row != i+2 {
			t.Errorf("fault %d is told of line %d", i, f.At.Row)
		}
	}
}

// TestNearlyWholeUnitsAreWhole: solvers work with sums that are rounded.
func TestNearlyWholeUnitsAreWhole(t *testing.T) {
	p := example()
	units, told, err := ReadSolution(strings.NewReader("Stopped on time - objective value 12.5\n** 1 S0000001 1.9999999 0\n 2 S0000002 -1e-9 0\n 7 G0000000 1 0\n"), p, p.Linear())
	if err != nil {
		t.Fatal(err)
	}
	if units[1] != 2 || units[2] != 0 || *told != 12.5 {
		t.Errorf("read %v, objective %v", units, *told)
	}
}

// FuzzReadSolution: whatever the text, the reader comes back with a plan of the
// problem or with faults that can be told.
func FuzzReadSolution(f *testing.F) {
	for _, name := range solvedTexts {
		f.Add(testdata(f, name))
	}
	f.Add([]byte("Optimal - objective value 12\n** 0 S0000000 1 0\n"))
	f.Add([]byte("c x\ns bas 145 365 f f 12\nj 1 b 2 0\ne o f\n"))
	f.Add([]byte("Model status\nTime limit reached\n\n# Primal solution values\nFeasible\nObjective 1\n# Columns 365\nS0000000 1\n"))
	p := example()
	l := p.Linear()
	f.Fuzz(func(t *testing.T, text []byte) {
		units, told, err := ReadSolution(bytes.NewReader(text), p, l)
		if err != nil {
			var faults fault.List
			if !errors.As(err, &faults) || len(faults) == 0 || units != nil || told != nil {
				t.Fatalf("%v with %v", err, units)
			}
			return
		}
		s, err := p.Of(units)
		if err != nil {
			t.Fatal(err)
		}
		if cost := s.Objective(); math.IsNaN(cost) || math.IsInf(cost, 0) {
			t.Fatalf("%v costs %v", units, cost)
		}
		s.Broken()
	})
}
