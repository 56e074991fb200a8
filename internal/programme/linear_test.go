package programme

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize/convex/lp"
	"pgregory.net/rapid"
)

// TestWrittenOutIsWorthTheSame fixes the units of small invented problems and holds
// the cost of the written-out programme, by the simplex method of a general library
// (gonum), to the product's own objective.
func TestWrittenOutIsWorthTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawn(t)
		s := p.NewStanding()
		for j := range p.Sowings {
			if n := rapid.IntRange(0, 2).Draw(t, "units"); n <= s.Room(j) {
				s.Add(j, n)
			}
		}
		got := solved(t, p.Linear(), s.Units)
		if want := s.Objective(); math.Abs(got-want) > 1e-6*math.Max(1, math.Abs(want)) {
			t.Fatalf("written out %v, own %v", got, want)
		}
	})
}

// solved is the least cost with the sowings fixed.
func solved(t *rapid.T, l *Linear, units Solution) float64 {
	rows, right := map[int]int{}, []float64(nil)
	for i, r := range l.Rows {
		if r.Name[0] == 'T' || r.Name[0] == 'W' {
			rows[i] = len(right)
			right = append(right, r.Right)
		}
	}
	if len(right) == 0 {
		return work(l, units)
	}
	type entry struct {
		row, column int
		value       float64
	}
	var costs []float64
	var entries []entry
	for j := range l.Columns {
		c := &l.Columns[j]
		if j < len(units) {
			for _, e := range c.Entries {
				if at, ok := rows[e.Row]; ok {
					right[at] -= e.Value * float64(units[j])
				}
			}
			continue
		}
		for _, e := range c.Entries {
			entries = append(entries, entry{rows[e.Row], len(costs), e.Value})
		}
		if c.Upper < Unbounded { // c + slack = upper
			entries = append(entries, entry{len(right), len(costs), 1}, entry{len(right), len(costs) + 1, 1})
			right, costs = append(right, c.Upper), append(costs, c.Cost, 0)
			continue
		}
		costs = append(costs, c.Cost)
	}
	for i, at := range rows {
		if l.Rows[i].Sense == AtMost {
			entries = append(entries, entry{at, len(costs), 1})
			costs = append(costs, 0)
		}
	}
	a := mat.NewDense(len(right), len(costs), nil)
	for _, e := range entries {
		a.Set(e.row, e.column, e.value)
	}
	best, _, err := lp.Simplex(costs, a, right, 1e-10, nil)
	if err != nil {
		t.Skip(err) // the library's dense simplex gives up on some singular bases
	}
	return best + work(l, units)
}

func work(l *Linear, units Solution) float64 {
	sum := 0.0
	for j, n := range units {
		sum += float64(n) * l.Columns[j].Cost
	}
	return sum
}

// drawn is a small invented problem.
func drawn(t *rapid.T) *Problem {
	weeks := rapid.IntRange(2, 6).Draw(t, "weeks")
	futures := rapid.IntRange(1, 2).Draw(t, "futures")
	p := &Problem{Weeks: weeks, Grounds: []Ground{{ID: "bed", UnitM2: 1, Units: 3, Last: weeks - 1}}}
	for k := range futures {
		p.Futures = append(p.Futures, k)
	}
	tenths := func(name string, most int) float64 { return float64(rapid.IntRange(1, most).Draw(t, name)) / 10 }
	for range rapid.IntRange(1, 2).Draw(t, "demands") {
		d := Demand{OverCost: tenths("over", 5)}
		for i := range rapid.IntRange(1, 2).Draw(t, "levels") {
			l := Level{Cost: 5 - 2*float64(i), PerWeek: make([]float64, weeks)}
			for u := range l.PerWeek {
				l.PerWeek[u] = tenths("want", 30)
			}
			d.Levels = append(d.Levels, l)
		}
		for range futures {
			d.Fixed = append(d.Fixed, []Lot{{First: 0, Last: rapid.IntRange(0, weeks).Draw(t, "last"), Kg: tenths("kg", 30)}})
		}
		p.Demands = append(p.Demands, d)
	}
	for range rapid.IntRange(1, 4).Draw(t, "sowings") {
		first := rapid.IntRange(0, weeks-1).Draw(t, "first")
		w := Sowing{First: first, Last: rapid.IntRange(first, weeks-1).Draw(t, "last"), Cost: tenths("work", 5), Most: 3,
			Demand: rapid.IntRange(0, len(p.Demands)-1).Draw(t, "demand")}
		for range futures {
			a := rapid.IntRange(first, weeks-1).Draw(t, "a")
			w.Lots = append(w.Lots, []Lot{{First: a, Last: rapid.IntRange(a, weeks).Draw(t, "b"), Kg: tenths("kg", 30)}})
		}
		p.Sowings = append(p.Sowings, w)
	}
	return p
}
