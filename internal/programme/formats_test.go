package programme

import (
	"bytes"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"garner/internal/fault"
	"garner/internal/num"
)

// The problem that the solutions in testdata were made for is written there too.
var update = flag.Bool("update", false, "write the programmes in testdata anew; the solutions there then have to be made anew as well")

// example is a small invented problem with everything in it that a problem can
// have: two grounds, hours, a store, a limit, fixed food, levels, two futures.
func example() *Problem {
	r := num.NewStream(num.Key("example"))
	tenth := func(most float64) float64 { return math.Round(r.Float64()*most*10) / 10 }
	const weeks = 12
	p := &Problem{Name: "example", Weeks: weeks, Futures: []int{0, 1},
		Grounds: []Ground{{ID: "bed", UnitM2: 1, Units: 4, Last: weeks - 1}, {ID: "frame", UnitM2: 1, Units: 2, Last: weeks - 1}}}
	level := func(cost, kg float64) Level {
		l := Level{Cost: cost, PerWeek: make([]float64, weeks)}
		for u := 3; u < weeks; u++ {
			l.PerWeek[u] = kg
		}
		return l
	}
	course := func(x float64) []float64 {
		out := make([]float64, weeks)
		for u := range out {
			out[u] = x
		}
		return out
	}
	p.Resources = []Resource{{ID: "hours", Unit: "h", PerWeek: course(1.1)}, {ID: "store", Unit: "kg", PerWeek: course(6.5)}}
	p.Demands = []Demand{
		{ID: "carrot", OverCost: 0.05, Levels: []Level{level(5, 0.7), level(2, 0.4)}, Fixed: [][]Lot{{{First: 2, Last: 5, Kg: 1.3}}, {{First: 2, Last: 4, Kg: 0.9}}}},
		{ID: "lettuce", OverCost: 0.1, Levels: []Level{level(3, 1.1)}},
		{ID: "bean", OverCost: 0.07, Levels: []Level{level(2.5, 0.9)}},
	}
	for j := range 18 {
		first := j % 7
		w := Sowing{ID: fmt.Sprint(p.Demands[j%3].ID, "/", j), Ground: j / 3 % 2, First: first, Last: first + 3 + j%2, Demand: j % 3, Cost: 0.1 + tenth(0.3), Most: 3 - j%4,
			Uses: []Use{{0, first, 0.3}, {0, first, 0.05}, {1, first + 3, 1 + tenth(1)}}}
		for range p.Futures {
			w.Lots = append(w.Lots, []Lot{{First: first + 3, Last: min(weeks, first+4+j%5), Kg: 0.5 + tenth(2)}, {First: first + 4, Last: min(weeks, first+6), Kg: tenth(1.5) / 3}})
		}
		p.Sowings = append(p.Sowings, w)
	}
	p.Limits = []Limit{{ID: "no root after root", Terms: []Term{{0, 1}, {3, 1}, {6, 1.5}}, Most: 2}}
	return p
}

func TestExampleIsSound(t *testing.T) {
	if err := example().Sound(); err != nil {
		t.Fatal(err)
	}
}

// TestProgrammesInTestdata holds the files that the solutions in testdata are of to
// what is written now.
func TestProgrammesInTestdata(t *testing.T) {
	l := example().Linear()
	for name, write := range map[string]func(*bytes.Buffer) error{
		"example.mps": func(b *bytes.Buffer) error { return WriteMPS(b, "example", l) },
		"example.lp":  func(b *bytes.Buffer) error { return WriteLP(b, "example", l) },
	} {
		var b bytes.Buffer
		if err := write(&b); err != nil {
			t.Fatal(err)
		}
		path := filepath.Join("testdata", name)
		if *update {
			if err := os.WriteFile(path, b.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		kept, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(kept, b.Bytes()) {
			t.Errorf("%s is not what is written now", path)
		}
	}
}

func TestMPSComesBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := drawn(t).Linear()
		var b bytes.Buffer
		if err := WriteMPS(&b, "drawn", l); err != nil {
			t.Fatal(err)
		}
		back, err := readMPS(b.String())
		if err != nil {
			t.Fatal(err)
		}
		alike(t, l, back, func(a, b float64) bool { return math.Abs(a-b) <= 1e-10*math.Max(1, math.Abs(a)) })
	})
}

func TestLPComesBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := drawn(t).Linear()
		var b bytes.Buffer
		if err := WriteLP(&b, "drawn", l); err != nil {
			t.Fatal(err)
		}
		for i, line := range strings.Split(b.String(), "\n") {
			if len(line) > 255 {
				t.Fatalf("line %d has %d characters", i+1, len(line))
			}
		}
		back, err := readLP(b.String())
		if err != nil {
			t.Fatal(err)
		}
		alike(t, l, back, func(a, b float64) bool { return a == b })
	})
}

// TestTwelveCharacters holds numbers to the rounding that WriteMPS tells of.
func TestTwelveCharacters(t *testing.T) {
	for x, want := range map[float64]string{0: "0", 1: "1", -0.25: "-.25", 1.0 / 3: ".33333333333", -1.0 / 3: "-.3333333333", 1e20: "1e20", 12345.678: "12345.678", 2.5e-7: "2.5e-7"} {
		if got := twelve(x); got != want {
			t.Errorf("%v is written %s, want %s", x, got, want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.OneOf(rapid.Float64Range(-1, 1), rapid.Float64Range(-1e10, 1e10), rapid.Float64Range(-10, 10)).Draw(t, "x")
		s := twelve(x)
		y, err := strconv.ParseFloat(s, 64)
		if err != nil || len(s) > 12 {
			t.Fatalf("%v is written %q: %v", x, s, err)
		}
		if within := math.Max(1e-10, 1e-9*math.Abs(x)); math.Abs(x) <= 1 && math.Abs(x-y) > 1e-10 || math.Abs(x-y) > within {
			t.Fatalf("%v is written %s", x, s)
		}
	})
}

func TestWritersRefuseWhatTheyCannotSay(t *testing.T) {
	empty := &Linear{}
	long := &Linear{Columns: []Column{{Name: "S00000000"}}}
	endless := &Linear{Columns: []Column{{Name: "S0000000", Cost: math.Inf(1)}}}
	for _, l := range []*Linear{empty, long, endless} {
		want := fault.Internal
		if l == empty {
			want = fault.Invalid
		}
		var b bytes.Buffer
		if err := WriteMPS(&b, "x", l); err == nil || fault.KindOf(err) != want || b.Len() > 0 {
			t.Errorf("MPS: %v, wrote %q", err, b.String())
		}
		if err := WriteLP(&b, "x", l); err == nil || fault.KindOf(err) != want || b.Len() > 0 {
			t.Errorf("LP: %v, wrote %q", err, b.String())
		}
	}
}

// TestAnUpperBoundOfNoughtIsAFixedValue: see bounds.
func TestAnUpperBoundOfNoughtIsAFixedValue(t *testing.T) {
	var b bytes.Buffer
	if err := WriteMPS(&b, "ä ö", &Linear{Columns: []Column{{Name: "S0000000", Integer: true}}}); err != nil {
		t.Fatal(err)
	}
	const want = `NAME          PROBLEM
ROWS
 N  COST
COLUMNS
    M0        'MARKER'                 'INTORG'
    S0000000  COST                 0
    M1        'MARKER'                 'INTEND'
RHS
BOUNDS
 FX BOUND     S0000000             0
ENDATA
`
	if b.String() != want {
		t.Errorf("written\n%s", b.String())
	}
}

// alike holds a programme that was read back to the one that was written.
func alike(t *rapid.T, want, got *Linear, same func(a, b float64) bool) {
	if len(want.Rows) != len(got.Rows) || len(want.Columns) != len(got.Columns) {
		t.Fatalf("%d rows and %d columns came back as %d and %d", len(want.Rows), len(want.Columns), len(got.Rows), len(got.Columns))
	}
	for i, a := range want.Rows {
		if b := got.Rows[i]; a.Name != b.Name || a.Sense != b.Sense || !same(a.Right, b.Right) {
			t.Fatalf("row %v came back as %v", a, b)
		}
	}
	for i := range want.Columns {
		a, b := &want.Columns[i], &got.Columns[i]
		if a.Name != b.Name || a.Integer != b.Integer || !same(a.Cost, b.Cost) || !same(a.Upper, b.Upper) || len(a.Entries) != len(b.Entries) {
			t.Fatalf("column %v came back as %v", a, b)
		}
		for k := range a.Entries {
			if a.Entries[k].Row != b.Entries[k].Row || !same(a.Entries[k].Value, b.Entries[k].Value) {
				t.Fatalf("column %v came back as %v", a, b)
			}
		}
	}
}
