package draft

import (
	"cmp"
	"slices"

	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/plan"
	"garner/internal/programme"
)

// Row is one planting of a draft with the sowing it comes from.
type Row struct {
	Planting plan.Planting
	Sowing   int             // of the problem
	Units    int             // of its ground
	Again    bool            // its family stands on some of this ground twice within the draft
	Instead  []plan.Planting // what the present plan has there at that time
}

// unit is one unit of a class of ground while it is laid out.
type unit struct {
	bed  string
	free int // first week in which it is free
	had  map[string]bool
}

// claim is one unit's worth of a sowing that wants ground.
type claim struct{ sowing, first, last int }

// Lay turns a solution into plantings in beds, in the order of beds and of dates. A
// solution that takes more than there is is refused with all that it breaks.
func (d *Draft) Lay(units programme.Solution) ([]Row, error) {
	s, err := d.Problem.Of(units)
	if err != nil {
		return nil, err
	}
	if broken := s.Broken(); len(broken) > 0 {
		var faults fault.List
		for _, b := range broken {
			faults = append(faults, &fault.Error{Kind: fault.Invalid, Phrase: b})
		}
		return nil, faults
	}
	var rows []Row
	for class := range d.Classes {
		rows = append(rows, d.layClass(class, units)...)
	}
	order := map[string]int{}
	for i := range d.setting.Holding.Beds {
		order[d.setting.Holding.Beds[i].ID] = i
	}
	slices.SortStableFunc(rows, func(a, b Row) int {
		return cmp.Or(cmp.Compare(order[a.Planting.Bed], order[b.Planting.Bed]), cmp.Compare(a.Planting.Date, b.Planting.Date), cmp.Compare(a.Sowing, b.Sowing))
	})
	taken := plan.Taken(d.setting.Holding.Plantings, d.setting.Holding.Changes)
	for i := range rows {
		p := &rows[i].Planting
		p.ID = taken.Free(p.Crop, p.Date)
		taken[p.ID] = true
		rows[i].Instead = d.instead(p, d.Columns[rows[i].Sowing].Clear)
	}
	return rows, nil
}

// layClass gives every unit of every sowing of a class its ground, in the order of
// first weeks. As no week asks for more units than there are, one is always free.
func (d *Draft) layClass(class int, taken programme.Solution) []Row {
	var ground []unit
	for _, p := range d.Classes[class].Pieces {
		for range p.Units {
			ground = append(ground, unit{bed: p.Bed, had: map[string]bool{}})
		}
	}
	type share struct {
		sowing int
		bed    string
	}
	at := map[share]int{}
	var rows []Row
	last := share{sowing: -1}
	for _, c := range d.claims(class, taken) {
		family := d.Columns[c.sowing].Use.Family
		if last.sowing != c.sowing {
			last.bed = ""
		}
		u := choose(ground, c.first, family, last.bed)
		last = share{c.sowing, u.bed}
		i, known := at[last]
		if !known {
			i = len(rows)
			at[last] = i
			rows = append(rows, Row{Planting: d.planting(c.sowing, u.bed), Sowing: c.sowing})
		}
		rows[i].Units++
		rows[i].Planting.AreaM2 = float64(rows[i].Units) * d.Classes[class].UnitM2
		rows[i].Again = rows[i].Again || d.comesBack(c.sowing) && u.had[family]
		u.free, u.had[family] = c.last+1, true
	}
	return rows
}

func (d *Draft) claims(class int, taken programme.Solution) []claim {
	var out []claim
	for j, n := range taken {
		if s := &d.Problem.Sowings[j]; s.Ground == class {
			for range n {
				out = append(out, claim{j, s.First, s.Last})
			}
		}
	}
	slices.SortStableFunc(out, func(a, b claim) int { return cmp.Compare(a.first, b.first) })
	return out
}

// choose takes the free unit that suits best: one that had none of the family, in the
// bed in which the sowing lies already, and that lay idle least.
func choose(ground []unit, week int, family, bed string) *unit {
	best := -1
	for i := range ground {
		if ground[i].free > week {
			continue
		}
		if best < 0 || suits(&ground[i], &ground[best], family, bed) {
			best = i
		}
	}
	return &ground[best]
}

func suits(a, b *unit, family, bed string) bool {
	if a.had[family] != b.had[family] {
		return !a.had[family]
	}
	if (a.bed == bed) != (b.bed == bed) {
		return a.bed == bed
	}
	return a.free > b.free
}

// comesBack tells whether a sowing's family should not come back for a year or more.
func (d *Draft) comesBack(sowing int) bool { return d.Columns[sowing].Use.RotationYears >= 1 }

// planting is a sowing as a row of the plan, without its area.
func (d *Draft) planting(sowing int, bed string) plan.Planting {
	c := &d.Columns[sowing]
	p := plan.New("", d.setting.Holding.Plan)
	p.Bed, p.Crop, p.Use, p.Method, p.Date, p.Store = bed, c.Crop.ID, c.Use.Name, c.Method, c.Date, c.Store
	if c.Clear < d.monday(d.Problem.Weeks) {
		p.ClearBy = c.Clear
	}
	return p
}

// instead are the plantings of the present plan that a draft's planting takes the
// place of: those in its bed at its time that are not kept.
func (d *Draft) instead(p *plan.Planting, until cal.Date) []plan.Planting {
	var out []plan.Planting
	for i := range d.present {
		o := &d.present[i]
		stays := slices.ContainsFunc(d.Kept, func(k plan.Planting) bool { return k.ID == o.ID })
		if o.Bed == p.Bed && !stays && o.Date < until && (!o.ClearBy.IsSet() || o.ClearBy > p.Date) {
			out = append(out, *o)
		}
	}
	return out
}

// With is the holding with the draft's rows in the place of all that was open.
func (d *Draft) With(rows []Row) *holding.Holding {
	all := slices.Clone(d.Kept)
	for i := range rows {
		all = append(all, rows[i].Planting)
	}
	return only(d.setting.Holding, all)
}
