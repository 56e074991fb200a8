package desk

import (
	"reflect"
	"slices"

	"garner/internal/exchange"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/journal"
	"garner/internal/plan"
	"garner/internal/words"
)

// KeepDraft writes the year that was drafted behind the pages as a draft over the
// plan in force, with the covers it lays, in one entry. It is refused when there is none, or when the plan is
// no longer the one that it was drafted for.
func (o *Office) KeepDraft(by Author, name string) (*KeptEntry, plan.Plan, error) {
	o.drafting.mu.Lock()
	run := o.drafting.last
	o.drafting.mu.Unlock()
	if run == nil {
		return nil, plan.Plan{}, fault.New(fault.NotFound, "desk.draft_none", nil)
	}
	v := run.state().View
	if v == nil || len(v.Broken) > 0 {
		return nil, plan.Plan{}, fault.New(fault.NotFound, "desk.draft_none", nil)
	}
	var made plan.Plan
	e, err := o.write(by, func() (journal.Entry, error) {
		h, err := o.Holding()
		if err != nil {
			return journal.Entry{}, err
		}
		if _, err := planInForce(h); err != nil {
			return journal.Entry{}, err
		}
		now, faults := plan.Resolve(h.Plans, h.Plantings, h.Changes, h.Plan)
		if len(faults) > 0 {
			return journal.Entry{}, faults
		}
		if h.Plan != run.plan || !reflect.DeepEqual(now, v.present) || len(v.Covers) > 0 && !slices.Equal(h.Covers, v.lie) {
			return journal.Entry{}, fault.New(fault.Conflict, "desk.draft_moved", nil)
		}
		n, err := o.naming()
		if err != nil {
			return journal.Entry{}, err
		}
		made = draftOver(h, name)
		rows := exchange.Rows(&holding.Holding{Plans: []plan.Plan{made}, Changes: v.steps(made.ID, plantingIDs(h)), Covers: v.Covers})
		what := words.P("desk.edit_drafted", words.Args{"draft": made.Name, "n": len(v.Rows)})
		return journal.Entry{What: what, Changes: slices.Concat(added(n, "plans", rows), added(n, "changes", rows), added(n, "covers", rows))}, nil
	})
	if err == nil && made.ID != "" {
		run.mu.Lock()
		defer run.mu.Unlock()
		run.kept = made.ID
	}
	return e, made, err
}

// steps are what makes the drafted year of the plan as it stands: what stays and
// belonged to something that goes stands alone, what is open goes, and what was
// drafted comes.
func (v *DraftView) steps(draft string, taken map[string]bool) []plan.Change {
	stays := map[string]*plan.Planting{}
	for i := range v.kept {
		stays[v.kept[i].ID] = &v.kept[i]
	}
	var alone, gone, steps []plan.Change
	for i := range v.present {
		p := &v.present[i]
		switch kept := stays[p.ID]; {
		case kept == nil:
			gone = append(gone, plan.Change{Action: "remove", Planting: p.ID})
		case kept.Relation != p.Relation:
			alone = append(alone, plan.Change{Action: "set", Planting: p.ID, Field: "relation", Value: string(kept.Relation)},
				plan.Change{Action: "set", Planting: p.ID, Field: "to", Value: kept.To})
		}
	}
	steps = append(alone, gone...)
	for i := range v.Rows {
		c := addedBy(v.Rows[i].Cells)
		c.Planting = plain(c.Planting, taken)
		taken[c.Planting] = true
		steps = append(steps, c)
	}
	ids := map[string]bool{}
	for i := range steps {
		c := &steps[i]
		c.ID, c.Plan, c.Order = numbered(draft, ids), draft, i+1
		ids[c.ID] = true
	}
	return steps
}
