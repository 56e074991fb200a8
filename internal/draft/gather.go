package draft

import (
	"cmp"
	"slices"

	"garner/internal/labour"
	"garner/internal/programme"
)

// rowTrouble is what a row of its own is a trouble, beside the work of its ground [the
// objective's unit].
func rowTrouble() float64 { return labour.Row() * hourCost }

// nearWeeks is how far in time a row may take over what another would have grown
// [weeks]. judgement: three weeks later is much the same to the table.
const nearWeeks = 3

// Gathered is a solution with what gathering it did.
type Gathered struct {
	Units      programme.Solution
	Objective  float64 // of the units; the trouble of rows is not in it
	Rows       int     // of the plan they are laid into
	RowsBefore int
	Cost       float64 // by how much the objective is dearer for fewer rows

	Spared     int     // covers that are not laid, see spare
	SparedCost float64 // by how much the objective is dearer for it; it may be cheaper
}

// Gather makes fewer rows of a solution: it takes out all of a row and lets rows that
// are there grow in its place, those of the same use within nearWeeks in any bed, and
// any on the ground that is left, as long as that is dearer by less than the trouble of
// the rows it saves. Rows that cost least to spare go first. The units stay those of a
// solution that can be had when they are so to begin with. It ends early when stop says
// so; nil: never.
func (d *Draft) Gather(units programme.Solution, stop func() bool) (Gathered, error) {
	s, err := d.Problem.Of(units)
	if err != nil {
		return Gathered{}, err
	}
	g := d.newGathering(s)
	rows := len(d.rowsOf(s.Units))
	before := s.Objective()
	g.fewer(rows, stop)
	between := s.Objective()
	spared := g.spare()
	out := Gathered{Units: slices.Clone(s.Units), Rows: len(d.rowsOf(s.Units)), RowsBefore: rows,
		Cost: between - before, Spared: spared, SparedCost: s.Objective() - between}
	out.Objective, err = d.Problem.Objective(out.Units)
	return out, err
}

// fewer spares rows, one after another, until none more is worth sparing, and tells how
// many.
func (g *gathering) fewer(rows int, stop func() bool) int {
	over := func() bool { return stop != nil && stop() }
	saved := 0
	for more := true; more && !over(); {
		more = false
		take := func(n int) { saved, more = saved+n, more || n > 0 }
		for _, row := range g.cheapest(over) {
			take(g.without(row, rows-saved))
		}
		for row := range g.units {
			if !over() {
				take(g.exchange(row, rows-saved))
			}
		}
	}
	return saved
}

// gathering is a solution while it is gathered. What a plan tells of a sowing in the
// beds of its class is a row here; of a class of several beds it may be several rows in
// the plan, which are counted when it is laid.
type gathering struct {
	draft  *Draft
	s      *programme.Standing
	rowOf  []int            // by sowing
	units  []int            // by row
	rows   [][]int          // its sowings, by row
	like   map[string][]int // sowings by their use
	ground [][]int          // sowings by class of ground
	moved  []Part           // since the last keep or undo
}

func (d *Draft) newGathering(s *programme.Standing) *gathering {
	g := &gathering{draft: d, s: s, rowOf: make([]int, len(d.Columns)), like: map[string][]int{}, ground: make([][]int, len(d.Classes))}
	known := map[joint]int{}
	for j := range d.Columns {
		class := d.Problem.Sowings[j].Ground
		beds := ""
		for _, p := range d.Classes[class].Pieces {
			if p.Bed != beds {
				beds += p.Bed
			}
		}
		key := d.joint(j, beds)
		at, there := known[key]
		if !there {
			at = len(g.rows)
			known[key] = at
			g.rows, g.units = append(g.rows, nil), append(g.units, 0)
		}
		g.rowOf[j], g.rows[at], g.units[at] = at, append(g.rows[at], j), g.units[at]+s.Units[j]
		use := useName(&d.Columns[j])
		g.like[use] = append(g.like[use], j)
		g.ground[class] = append(g.ground[class], j)
	}
	return g
}

func useName(c *Column) string { return c.Crop.ID + "/" + c.Use.Name }

// cheapest are the rows that may be spared for less than the trouble of a row, those
// that cost least first.
func (g *gathering) cheapest(over func() bool) []int {
	type priced struct {
		row  int
		rise float64
	}
	var all []priced
	for row, n := range g.units {
		if n == 0 || over() {
			continue
		}
		if rise := g.try(g.partsOf(row), false); rise < rowTrouble() {
			all = append(all, priced{row, rise})
		}
		g.undo()
	}
	slices.SortStableFunc(all, func(a, b priced) int { return cmp.Compare(a.rise, b.rise) })
	out := make([]int, len(all))
	for i := range all {
		out[i] = all[i].row
	}
	return out
}

// without spares a row when that is worth it, and tells how many rows fewer there are
// then of those that there were; 0 when it is not.
func (g *gathering) without(row, before int) int {
	parts := g.partsOf(row)
	if len(parts) == 0 {
		return 0
	}
	rise := g.try(parts, false)
	if rise < rowTrouble() {
		if saved := before - len(g.draft.rowsOf(g.s.Units)); saved > 0 && rise < float64(saved)*rowTrouble() {
			g.keep()
			return saved
		}
	}
	g.undo()
	return 0
}

// partsOf are the units that a row takes.
func (g *gathering) partsOf(row int) []Part {
	var out []Part
	for _, j := range g.rows[row] {
		if n := g.s.Units[j]; n > 0 {
			out = append(out, Part{j, n})
		}
	}
	return out
}

// try takes units out and lets rows that are there grow as long as that makes it
// cheaper, for trial. It returns by how much the objective rises; uncovered says that
// what is to stand under a cover does not grow.
func (g *gathering) try(parts []Part, uncovered bool) float64 {
	for _, p := range parts {
		g.shift(p.Sowing, -p.Units)
	}
	return g.grown(parts, uncovered)
}

// grown lets rows that are there grow where units are out.
func (g *gathering) grown(parts []Part, uncovered bool) float64 {
	rise := g.s.Settle()
	grow := g.instead(parts, uncovered)
	for {
		best, at := -programme.Slack, -1
		for _, j := range grow {
			if g.s.Room(j) == 0 {
				continue
			}
			if price := g.s.Price(programme.Change{Sowing: j, Units: 1}); price < best {
				best, at = price, j
			}
		}
		if at < 0 {
			return rise
		}
		g.shift(at, 1)
		rise = g.s.Settle()
	}
}

// instead are the sowings of rows that are there which may grow in the place of units
// that are out: of the same use at about the same time, or on the same ground.
func (g *gathering) instead(parts []Part, uncovered bool) []int {
	var out []int
	seen := map[int]bool{}
	add := func(j int) {
		if g.units[g.rowOf[j]] > 0 && !seen[j] && !(uncovered && g.draft.Columns[j].Under.Kind != "") {
			seen[j] = true
			out = append(out, j)
		}
	}
	for _, p := range parts {
		for _, j := range g.like[useName(&g.draft.Columns[p.Sowing])] {
			if g.near(p.Sowing, j) {
				add(j)
			}
		}
		for _, j := range g.ground[g.draft.Problem.Sowings[p.Sowing].Ground] {
			if g.overlap(p.Sowing, j) {
				add(j)
			}
		}
	}
	return out
}

func (g *gathering) shift(j, units int) {
	g.s.Shift(j, units)
	g.units[g.rowOf[j]] += units
	g.moved = append(g.moved, Part{j, units})
}

func (g *gathering) keep() {
	g.s.Keep()
	g.moved = g.moved[:0]
}

func (g *gathering) undo() {
	g.s.Undo()
	for _, m := range g.moved {
		g.units[g.rowOf[m.Sowing]] -= m.Units
	}
	g.moved = g.moved[:0]
}
