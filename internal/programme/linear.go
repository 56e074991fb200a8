package programme

import (
	"fmt"
	"sort"
)

// Linear is a problem written out as a mixed-integer linear programme: lowest cost
// over columns of zero or more, subject to rows.
//
// Each class of lots (of a demand and a future, with the same first and last week)
// flows along arcs to the weeks it is good in. There are no constants that switch
// rows on and off: ground is held by whole units, and the weeks in which ground is
// shared make an interval matrix, so that the relaxation is as tight as its flows.
type Linear struct {
	Rows    []Row
	Columns []Column
}

// Sense says how a row's sum stands to its right-hand side.
type Sense byte

// The senses.
const (
	AtMost  Sense = 'L'
	Equally Sense = 'E'
)

// Row is one constraint. Names are unique among rows and not longer than eight
// characters.
type Row struct {
	Name  string
	Sense Sense
	Right float64
}

// Column is one variable, of zero or more and at most Upper.
type Column struct {
	Name    string
	Cost    float64
	Upper   float64
	Integer bool
	Entries []Entry // by rising row
}

// Entry is a column's factor in a row.
type Entry struct {
	Row   int
	Value float64
}

// Linear writes the problem out. The columns of the sowings come first, in order,
// so that column j is sowing j.
func (p *Problem) Linear() *Linear {
	w := &writer{p: p, out: &Linear{}, share: 1 / float64(len(p.Futures))}
	for j := range p.Sowings {
		s := &p.Sowings[j]
		w.column('S', s.Cost, float64(min(s.Most, p.Grounds[s.Ground].Units)), true)
	}
	for g := range p.Grounds {
		w.ground(g)
	}
	w.resources()
	for l := range p.Limits {
		row := w.row('M', AtMost, p.Limits[l].Most)
		for _, t := range p.Limits[l].Terms {
			w.entry(t.Sowing, row, t.Weight)
		}
	}
	for d := range p.Demands {
		for k := range p.Futures {
			w.demand(d, k)
		}
	}
	w.sort()
	return w.out
}

// writer collects rows and columns.
type writer struct {
	p     *Problem
	out   *Linear
	share float64 // weight of one future
}

func (w *writer) row(letter byte, sense Sense, right float64) int {
	w.out.Rows = append(w.out.Rows, Row{fmt.Sprintf("%c%07d", letter, len(w.out.Rows)), sense, right})
	return len(w.out.Rows) - 1
}

func (w *writer) column(letter byte, cost, upper float64, integer bool) int {
	w.out.Columns = append(w.out.Columns, Column{Name: fmt.Sprintf("%c%07d", letter, len(w.out.Columns)), Cost: cost, Upper: upper, Integer: integer})
	return len(w.out.Columns) - 1
}

func (w *writer) entry(column, row int, value float64) {
	if value != 0 {
		c := &w.out.Columns[column]
		c.Entries = append(c.Entries, Entry{row, value})
	}
}

// ground writes the weeks in which some sowing begins: in any other week the
// sowings that hold ground are among those of the week before.
func (w *writer) ground(g int) {
	begins := make([]bool, w.p.Weeks)
	for j := range w.p.Sowings {
		if s := &w.p.Sowings[j]; s.Ground == g {
			begins[s.First] = true
		}
	}
	for week, begun := range begins {
		if !begun {
			continue
		}
		row := w.row('G', AtMost, float64(w.p.Grounds[g].Units))
		for j := range w.p.Sowings {
			if s := &w.p.Sowings[j]; s.Ground == g && s.First <= week && week <= s.Last {
				w.entry(j, row, 1)
			}
		}
	}
}

func (w *writer) resources() {
	type place struct{ resource, week int }
	rows := map[place]int{}
	for j := range w.p.Sowings {
		sums := map[place]float64{}
		var order []place
		for _, u := range w.p.Sowings[j].Uses {
			at := place{u.Resource, u.Week}
			if _, known := sums[at]; !known {
				order = append(order, at)
			}
			sums[at] += u.Amount
		}
		for _, at := range order {
			if _, known := rows[at]; !known {
				rows[at] = w.row('R', AtMost, w.p.Resources[at.resource].PerWeek[at.week])
			}
			w.entry(j, rows[at], sums[at])
		}
	}
}

// class is lots of a demand and a future that are good in the same weeks.
type class struct{ first, last int }

// demand writes the flows of one demand under one future.
func (w *writer) demand(d, k int) {
	demand := &w.p.Demands[d]
	weeks := make([]int, w.p.Weeks)
	for u := range weeks {
		weeks[u] = w.want(demand, u)
	}
	rows, order := map[class]int{}, []class(nil)
	of := func(l *Lot) int {
		c := class{l.First, l.Last}
		row, known := rows[c]
		if !known {
			sense := Equally
			if c.last == w.p.Weeks {
				sense = AtMost
			}
			row = w.row('T', sense, 0)
			rows[c] = row
			order = append(order, c)
		}
		return row
	}
	if k < len(demand.Fixed) {
		for i := range demand.Fixed[k] {
			w.out.Rows[of(&demand.Fixed[k][i])].Right += demand.Fixed[k][i].Kg
		}
	}
	for j := range w.p.Sowings {
		if w.p.Sowings[j].Demand == d {
			w.give(j, k, of)
		}
	}
	for _, c := range order {
		w.flow(c, rows[c], weeks, w.share*demand.OverCost)
	}
}

// give writes what a sowing brings to its classes of lots.
func (w *writer) give(j, k int, of func(*Lot) int) {
	sums := map[int]float64{}
	for i := range w.p.Sowings[j].Lots[k] {
		l := &w.p.Sowings[j].Lots[k][i]
		sums[of(l)] += l.Kg
	}
	for row, kg := range sums {
		w.entry(j, row, -kg)
	}
}

// want writes a week's row: fed and lacking make up what is wanted. It returns -1
// when nothing is.
func (w *writer) want(d *Demand, week int) int {
	sum := 0.0
	for i := range d.Levels {
		sum += d.Levels[i].PerWeek[week]
	}
	if sum == 0 {
		return -1
	}
	row := w.row('W', Equally, sum)
	for i := range d.Levels {
		if kg := d.Levels[i].PerWeek[week]; kg > 0 {
			w.entry(w.column('N', w.share*d.Levels[i].Cost, kg, false), row, 1)
		}
	}
	return row
}

// flow writes the arcs of a class of lots, and what goes over of it.
func (w *writer) flow(c class, row int, weeks []int, overCost float64) {
	for u := c.first; u <= min(c.last, w.p.Weeks-1); u++ {
		if weeks[u] >= 0 {
			arc := w.column('F', 0, Unbounded, false)
			w.entry(arc, row, 1)
			w.entry(arc, weeks[u], 1)
		}
	}
	if c.last < w.p.Weeks {
		w.entry(w.column('O', overCost, Unbounded, false), row, 1)
	}
}

// Unbounded is the upper bound of a column that has none.
const Unbounded = 1e30

func (w *writer) sort() {
	for i := range w.out.Columns {
		e := w.out.Columns[i].Entries
		sort.Slice(e, func(a, b int) bool { return e[a].Row < e[b].Row })
	}
}
