package outlook

import (
	"sort"

	"garner/internal/cal"
	"garner/internal/larder"
	"garner/internal/season"
)

// Table is the table a year ahead, with every future kept.
type Table struct {
	From       cal.Date // Monday
	Weeks      int
	Years      int
	Seed       uint64
	Vegetables []Vegetable
	Plantings  []Fate
	Stores     []StoreCourse

	beds   []*bedWork
	groups []*groupWork
}

// Vegetable is one vegetable under every future.
type Vegetable struct {
	Name       string
	Importance larder.Importance
	Years      []larder.Course // by future

	sums *sums // of its group
}

// Fate is one planting under every future.
type Fate struct {
	Planting string
	Bed      string
	Crop     string
	Use      string
	First    cal.Date // the date of day index 0 in the outcomes
	Years    []*season.Outcome
}

// StoreCourse is the level of a store under every future.
type StoreCourse struct {
	Store   string
	LevelKg [][]float32 // by future and day of the table [kg]
}

// opened is a course on the days of the table.
func (j *job) opened(c larder.Course) larder.Course {
	if c.Bought != nil {
		c.Bought = j.daysOf(c.Bought)
	}
	return larder.Course{Bought: c.Bought, Want: j.daysOf(c.Want), Fresh: j.daysOf(c.Fresh), Stored: j.daysOf(c.Stored), Short: j.daysOf(c.Short), Over: j.daysOf(c.Over)}
}

// daysOf are the table's days of those that the larder was run for.
func (j *job) daysOf(kg []float32) []float32 { return kg[runUp : runUp+j.Days()] }

// table draws the results together, in the order in which the household named
// its wants, then what is grown and not wanted.
func (j *job) table() *Table {
	t := &Table{From: j.From, Weeks: j.Weeks, Years: j.Years, Seed: j.Seed, beds: j.beds, groups: j.groups}
	for _, g := range j.groups {
		kept := &g.result.sums
		if j.enough > 0 {
			kept = &sums{} // they are of these weeks alone
		}
		for v, name := range g.rows() {
			c := Vegetable{Name: name, Importance: j.importanceOf(g, v), Years: make([]larder.Course, j.Years), sums: kept}
			for f, y := range g.result.years {
				c.Years[f] = j.opened(y.Courses[v])
			}
			t.Vegetables = append(t.Vegetables, c)
		}
		for s := range g.setting.Stores {
			c := StoreCourse{Store: g.setting.Stores[s].ID, LevelKg: make([][]float32, j.Years)}
			for f, y := range g.result.years {
				c.LevelKg[f] = j.daysOf(y.Stores[s].LevelKg)
			}
			t.Stores = append(t.Stores, c)
		}
	}
	j.order(t.Vegetables)
	for _, b := range j.beds {
		for i := range b.plantings {
			t.Plantings = append(t.Plantings, j.fate(b, i))
		}
	}
	return t
}

func (j *job) fate(b *bedWork, i int) Fate {
	f := Fate{Planting: b.plantings[i].ID, Bed: b.id, Crop: b.uses[i].use.Crop, Use: b.uses[i].use.Name,
		First: j.first(), Years: make([]*season.Outcome, j.Years)}
	for y := range b.result.years {
		f.Years[y] = &b.result.years[y][i]
	}
	return f
}

// order sorts vegetables by the first want that names them.
func (j *job) order(vs []Vegetable) {
	rank := map[string]int{}
	for i, w := range j.wants {
		if name := j.rowName(&w); rank[name] == 0 {
			rank[name] = i + 1
		}
	}
	sort.SliceStable(vs, func(a, b int) bool {
		ra, rb := rank[vs[a].Name], rank[vs[b].Name]
		if (ra == 0) != (rb == 0) {
			return ra != 0
		}
		if ra != rb {
			return ra < rb
		}
		return vs[a].Name < vs[b].Name
	})
}
