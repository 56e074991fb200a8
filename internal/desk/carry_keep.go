package desk

import (
	"slices"

	"garner/internal/exchange"
	"garner/internal/holding"
	"garner/internal/journal"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/words"
)

// KeepCarried writes next year as a draft over the plan in force, with its covers,
// in one entry. It returns the draft as well.
func (o *Office) KeepCarried(by Author, options CarryOptions) (*KeptEntry, plan.Plan, error) {
	v, err := o.CarryView(options)
	if err != nil {
		return nil, plan.Plan{}, err
	}
	e, err := o.write(by, func() (journal.Entry, error) {
		if v, err = o.CarryView(options); err != nil || len(v.Sowings) == 0 {
			return journal.Entry{}, err
		}
		n, err := o.naming()
		if err != nil {
			return journal.Entry{}, err
		}
		changes := append(added(n, "plans", v.rows()), added(n, "changes", v.rows())...)
		what := words.P("desk.edit_carried", words.Args{"year": v.Named, "draft": v.Draft.Name, "n": len(v.Sowings)})
		return journal.Entry{What: what, Changes: append(changes, added(n, "covers", v.rows())...)}, nil
	})
	return e, v.Draft, err
}

// rows are the rows that next year comes to, by table.
func (v *CarryView) rows() map[string][][]string {
	return exchange.Rows(&holding.Holding{Plans: []plan.Plan{v.Draft}, Changes: v.Steps(), Covers: slices.Clone[[]place.CoverSpell](v.Covers)})
}

// Steps are the steps of the draft: each adds a sowing.
func (v *CarryView) Steps() []plan.Change {
	var steps []plan.Change
	taken := map[string]bool{}
	for i := range v.Sowings {
		c := addedBy(plantingCells(&v.Sowings[i].Planting))
		c.ID, c.Plan, c.Order = numbered(v.Draft.ID, taken), v.Draft.ID, i+1
		taken[c.ID] = true
		steps = append(steps, c)
	}
	return steps
}

// added puts new rows behind those of a table. An id that is taken gives way to one
// that is free.
func added(n naming, table string, rows map[string][][]string) []journal.Change {
	taken, last := map[string]bool{}, 0.0
	for _, r := range n.rows[table] {
		taken[r.ID], last = true, r.Place
	}
	var out []journal.Change
	for i, row := range rows[table] {
		row[0] = plain(row[0], taken)
		taken[row[0]] = true
		out = append(out, journal.Change{Table: table, ID: row[0], After: row, Place: last + 1 + float64(i)})
	}
	return out
}
