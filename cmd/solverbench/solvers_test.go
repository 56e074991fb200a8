package main

import (
	"strings"
	"testing"
	"time"
)

// What the solvers say while they run, from runs of CBC 2.10.8, GLPK 5.0 and of
// highs/solve.mjs with the npm package highs 1.15.3, on an invented problem.
const (
	saidByCBC = `Problem invented has 4009 rows, 14997 columns and 64517 elements
Continuous objective value is 1015.44 - 0.55 seconds
Cbc0012I Integer solution of 1064.3388 found by DiveCoefficient after 0 iterations and 0 nodes (3.46 seconds)
Cbc0038I Full problem 2190 rows 12094 columns, reduced to 1110 rows 4025 columns
Cbc0012I Integer solution of 1033.5856 found by DiveCoefficient after 10426 iterations and 0 nodes (11.97 seconds)
Cbc0010I After 0 nodes, 1 on tree, 1033.5856 best solution, best possible 1021.9552 (13.13 seconds)
Cbc0005I Partial search - best objective 1033.5856 (best possible 1021.9552), took 14248 iterations and 2 nodes (22.64 seconds)
Result - Stopped on time limit
Objective value:                1033.58560625
Lower bound:                    1021.955
`
	saidByGLPK = `*  7048: obj =   1.015443166e+03 inf =   1.612e-14 (0) 38
OPTIMAL LP SOLUTION FOUND
Integer optimization begins...
+  7048: mip =     not found yet >=              -inf        (1; 0)
+ 24092: mip =     not found yet >=   1.016276837e+03        (102; 0)
+ 24548: >>>>>   1.036527351e+03 >=   1.016276837e+03   2.0% (136; 0)
+ 27445: mip =   1.036527351e+03 >=   1.016392252e+03   1.9% (145; 5)
TIME LIMIT EXCEEDED; SEARCH TERMINATED
`
	saidByHiGHS = `{"objective":1262.6}
{"objective":1062.195995}
{"bound":1022.3596168562258}
{"bound":1022.3596168562258,"closed":false}
`
)

func TestSolversAreFollowed(t *testing.T) {
	for name, c := range map[string]struct {
		said   string
		follow func(string, *watch)
		trace  []float64
		bound  float64
		closed bool
	}{
		"CBC":          {saidByCBC, followCBC, []float64{1064.3388, 1033.5856}, 1021.9552, false},
		"GLPK":         {saidByGLPK, followGLPK, []float64{1036.527351}, 1016.392252, false},
		"HiGHS":        {saidByHiGHS, followHiGHS, []float64{1262.6, 1062.195995}, 1022.3596168562258, false},
		"CBC closed":   {saidByCBC + "Result - Optimal solution found\n", followCBC, []float64{1064.3388, 1033.5856}, 1021.9552, true},
		"GLPK closed":  {saidByGLPK + "+ 30000: mip =   1.036527351e+03 >=     tree is empty   0.0% (0; 155)\nINTEGER OPTIMAL SOLUTION FOUND\n", followGLPK, []float64{1036.527351}, 1016.392252, true},
		"HiGHS closed": {saidByHiGHS + `{"bound":1062,"closed":true}`, followHiGHS, []float64{1262.6, 1062.195995}, 1062, true},
		"HiGHS other":  {"Running HiGHS\n", followHiGHS, nil, 0, false},
	} {
		w := &watch{begin: time.Now(), run: &Run{}}
		for _, line := range strings.Split(c.said, "\n") {
			c.follow(line, w)
		}
		if w.run.Closed != c.closed || len(w.run.Trace) != len(c.trace) || w.run.Bound == nil && c.bound != 0 || w.run.Bound != nil && *w.run.Bound != c.bound {
			t.Errorf("%s: %+v", name, w.run)
			continue
		}
		for i, p := range w.run.Trace {
			if p.Objective != c.trace[i] {
				t.Errorf("%s: plan %d costs %v, want %v", name, i, p.Objective, c.trace[i])
			}
		}
	}
}

func TestCommandsAreShownWithoutFolders(t *testing.T) {
	for _, s := range solvers("/somewhere/of/this/machine") {
		if asked := shown(s.command(60)); strings.Contains(asked, "/") || !strings.Contains(asked, "60") {
			t.Errorf("%s is shown as %q", s.name, asked)
		}
	}
}
