package programme

import (
	"bufio"
	"bytes"
	"io"
	"math"
	"strconv"
	"strings"

	"garner/internal/fault"
	"garner/internal/words"
)

// ReadSolution reads what a solver wrote of a problem's written-out programme: the
// units of each sowing, and the objective that the solver says they have, nil when
// it says none. It reads
//
//   - what cbc writes with its command "solution FILE",
//   - what glpsol writes with --write FILE, and its report, -o FILE,
//   - what HiGHS writes with --solution_file FILE, in its raw style.
//
// A sowing that is not told has no units. Units have to be whole to within
// WholeSlack. The flows are read past: the product feeds the table itself. That the
// units keep within what there is, Standing.Broken tells.
//
// The error is a fault.List of what is wrong line by line, of at most MostFaults.
func ReadSolution(from io.Reader, p *Problem, l *Linear) (Solution, *float64, error) {
	r := newReading(from, p, l)
	switch first := r.firstLine(); {
	case first == "Model status":
		r.highs()
	case strings.HasPrefix(first, "Problem:"):
		r.glpkReport()
	case strings.HasPrefix(first, "c ") || strings.HasPrefix(first, "s "):
		r.glpkWritten()
	case strings.Contains(first, cbcObjective):
		r.cbc()
	case r.lines.Err() == nil:
		r.wrong("programme.solution_unknown", nil)
	}
	if err := r.lines.Err(); err != nil {
		r.cause = err
		r.wrong("programme.solution_unreadable", nil)
	}
	if len(r.faults) > 0 {
		return nil, nil, r.faults
	}
	return r.units, r.objective, nil
}

// WholeSlack is how far from a whole number a solver's units may be; solvers take
// for whole what is within 1e-5 or less of it.
const WholeSlack = 1e-5

// MostFaults is how many faults are told of one solution.
const MostFaults = 20

// longestLine is more than any line a solver writes [bytes].
const longestLine = 1 << 16

// reading is a solution being read.
type reading struct {
	lines     *bufio.Scanner
	line      int    // number of the line at hand
	at        string // the line at hand, without space around it
	ended     bool   // no line is left
	columns   map[string]int
	rows      map[string]bool
	problem   *Problem
	programme *Linear

	told      []bool // by column
	units     Solution
	objective *float64
	faults    fault.List
	cause     error
}

func newReading(from io.Reader, p *Problem, l *Linear) *reading {
	r := &reading{lines: bufio.NewScanner(from), columns: make(map[string]int, len(l.Columns)), rows: make(map[string]bool, len(l.Rows)),
		problem: p, programme: l, told: make([]bool, len(l.Columns)), units: make(Solution, len(p.Sowings))}
	r.lines.Buffer(nil, longestLine)
	for i := range l.Columns {
		r.columns[l.Columns[i].Name] = i
	}
	for i := range l.Rows {
		r.rows[l.Rows[i].Name] = true
	}
	return r
}

// next goes to the next line; false at the end, and when enough is wrong.
func (r *reading) next() bool {
	if len(r.faults) >= MostFaults || !r.lines.Scan() {
		r.ended = true
		return false
	}
	r.line++
	r.at = string(bytes.TrimSpace(r.lines.Bytes()))
	return true
}

// firstLine is the first line that is not blank.
func (r *reading) firstLine() string {
	for r.next() {
		if r.at != "" {
			return r.at
		}
	}
	return ""
}

// wrong tells a fault of the line at hand.
func (r *reading) wrong(key string, args words.Args) {
	f := fault.New(fault.Invalid, key, args).In(fault.Place{Row: r.line})
	f.Err = r.cause
	r.faults = append(r.faults, f)
}

// malformed tells that the line at hand has not the form it should have.
func (r *reading) malformed(form string) {
	r.wrong("programme.solution_line", words.Args{"line": shortened(r.at), "form": form})
}

// short tells that the text breaks off before its end.
func (r *reading) short(end string) {
	if r.lines.Err() == nil && len(r.faults) < MostFaults {
		r.wrong("programme.solution_short", words.Args{"end": end})
	}
}

// none tells that there is no plan in the solution.
func (r *reading) none(status string) {
	r.wrong("programme.solution_none", words.Args{"status": shortened(status)})
}

// count holds the number of columns a solution says it has to the problem's.
func (r *reading) count(text string) bool {
	if n, err := strconv.Atoi(text); err != nil || n != len(r.programme.Columns) {
		r.wrong("programme.solution_columns", words.Args{"given": shortened(text), "columns": len(r.programme.Columns)})
		return false
	}
	return true
}

// tell notes the objective that the solver says.
func (r *reading) tell(text string) {
	if x, ok := r.number(text); ok {
		r.objective = &x
	}
}

func (r *reading) number(text string) (float64, bool) {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil || math.IsNaN(x) || math.IsInf(x, 0) {
		r.wrong("programme.solution_number", words.Args{"value": shortened(text)})
		return 0, false
	}
	return x, true
}

// takeNamed takes the value of a column, or passes over that of a row.
func (r *reading) takeNamed(name, value string) {
	column, known := r.columns[name]
	switch {
	case known:
		r.take(column, name, value)
	case !r.rows[name]:
		r.wrong("programme.solution_name", words.Args{"name": shortened(name)})
	}
}

// takeNumbered takes the value of a column that is told by its number, from 1.
func (r *reading) takeNumbered(number, value string) {
	n, err := strconv.Atoi(number)
	if err != nil || n < 1 || n > len(r.programme.Columns) {
		r.wrong("programme.solution_number_of_column", words.Args{"given": shortened(number), "columns": len(r.programme.Columns)})
		return
	}
	r.take(n-1, number, value)
}

func (r *reading) take(column int, name, value string) {
	if r.told[column] {
		r.wrong("programme.solution_twice", words.Args{"name": name})
		return
	}
	r.told[column] = true
	x, ok := r.number(value)
	if !ok || column >= len(r.units) {
		return
	}
	whole := math.Round(x)
	if math.Abs(x-whole) > WholeSlack || whole < 0 || whole > math.MaxInt32 {
		r.wrong("programme.solution_whole", words.Args{"sowing": r.problem.Sowings[column].ID, "value": shortened(value)})
		return
	}
	r.units[column] = int(whole)
}

// complete tells a column that was not told.
func (r *reading) complete() {
	for i, told := range r.told {
		if !told && len(r.faults) == 0 {
			r.wrong("programme.solution_missing", words.Args{"name": r.programme.Columns[i].Name})
		}
	}
}

// shortened keeps a message short whatever stood in the file.
func shortened(s string) string {
	const most = 60
	s = strings.ToValidUTF8(s, "?")
	if letters := []rune(s); len(letters) > most {
		return string(letters[:most]) + "…"
	}
	return s
}
