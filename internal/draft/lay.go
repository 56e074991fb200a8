package draft

import (
	"cmp"
	"slices"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/plan"
	"garner/internal/programme"
)

// Row is one planting of a draft with the sowings it comes from.
type Row struct {
	Planting plan.Planting
	Parts    []Part          // alike in all that a plan tells, each on ground of another class
	Under    cover.Spell     // the cover it is meant to stand under; no kind: none
	Again    bool            // its family stands on some of this ground twice within the draft
	Instead  []plan.Planting // what the present plan has there at that time
}

// Part is units of a sowing of the problem.
type Part struct{ Sowing, Units int }

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
	rows := d.rowsOf(units)
	order := map[string]int{}
	for i := range d.setting.Holding.Beds {
		order[d.setting.Holding.Beds[i].ID] = i
	}
	slices.SortStableFunc(rows, func(a, b Row) int {
		return cmp.Or(cmp.Compare(order[a.Planting.Bed], order[b.Planting.Bed]), cmp.Compare(a.Planting.Date, b.Planting.Date),
			cmp.Compare(a.Parts[0].Sowing, b.Parts[0].Sowing))
	})
	taken := plan.Taken(d.setting.Holding.Plantings, d.setting.Holding.Changes)
	for i := range rows {
		r := &rows[i]
		r.Planting.ID = taken.Free(r.Planting.Crop, r.Planting.Date)
		taken[r.Planting.ID] = true
		r.Instead = d.instead(&r.Planting, d.Columns[r.Parts[0].Sowing].Clear)
	}
	return rows, nil
}

// rowsOf lays a solution that can be had into beds, class by class.
func (d *Draft) rowsOf(units programme.Solution) []Row {
	l := d.newLaying()
	for class := range d.Classes {
		l.class(class, units)
	}
	return l.rows
}

// comesBack tells whether a sowing's family should not come back for a year or more.
func (d *Draft) comesBack(sowing int) bool { return d.Columns[sowing].Use.RotationYears >= 1 }

// planting is a sowing as a row of the plan, without its area.
func (d *Draft) planting(sowing int, bed string) plan.Planting {
	c := &d.Columns[sowing]
	p := plan.New("", d.setting.Holding.Plan)
	p.Bed, p.Crop, p.Use, p.Method, p.Date, p.Store = bed, c.Crop.ID, c.Use.Name, c.Method, c.Date, c.Store
	if c.OwnStock {
		p.Stock = plan.OwnStock
	}
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

// With is the holding with the draft's rows in the place of all that was open, and
// their covers beside those that lie there.
func (d *Draft) With(rows []Row) *holding.Holding {
	all := slices.Clone(d.Kept)
	for i := range rows {
		all = append(all, rows[i].Planting)
	}
	own := only(d.setting.Holding, all)
	own.Covers = slices.Concat(own.Covers, d.Covers(rows))
	return own
}
