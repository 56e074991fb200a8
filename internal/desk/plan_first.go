package desk

import (
	"slices"

	"garner/internal/exchange"
	"garner/internal/holding"
	"garner/internal/journal"
	"garner/internal/plan"
)

// standing is the holding as it stands, with its version. One that has no plan in force
// yet, as files may have it, is shown over an empty plan, which is written with the
// first thing that is put into it.
func (o *Office) standing() (*holding.Holding, int64, error) {
	h, version, err := o.keeper.Holding()
	if err != nil {
		return h, version, err
	}
	h = o.withFetched(h)
	if h.Plan != "" {
		return h, version, nil
	}
	own := *h
	first := firstPlan(h)
	own.Plan, own.Plans = first.ID, append(slices.Clone(h.Plans), first)
	return &own, version, nil
}

// firstPlan is the empty plan of a holding that has none in force.
func firstPlan(h *holding.Holding) plan.Plan {
	taken := map[string]bool{}
	for _, p := range h.Plans {
		taken[p.ID] = true
	}
	return plan.Plan{ID: plain(mainPlan, taken), Name: inWords("desk.start_plan")}
}

// withPlan puts the first plan before changes that lean on it, and in force.
func (o *Office) withPlan(changes []journal.Change) ([]journal.Change, error) {
	h, _, err := o.keeper.Holding()
	if err != nil || h == nil || h.Plan != "" {
		return changes, nil // nothing is kept yet, or there is a plan
	}
	first := firstPlan(h)
	if !leansOn(changes, first.ID) || makes(changes, first.ID) {
		return changes, nil
	}
	stands, err := o.keeper.Rows("plans")
	if err != nil {
		return nil, err
	}
	made, _ := startOf("plans", stands, first.ID)
	made.After = exchange.Rows(&holding.Holding{Plans: []plan.Plan{first}})["plans"][0]
	rows, err := o.keeper.Rows("holding")
	if err != nil {
		return nil, err
	}
	force, _ := startOf("holding", rows, h.ID)
	force.After = slices.Clone(force.Before)
	force.After[slices.Index(exchange.Columns("holding"), "plan")] = first.ID
	for i := range changes {
		if changes[i].Table == "plans" && changes[i].Before == nil {
			changes[i].Place++ // after the first
		}
	}
	return append([]journal.Change{made, force}, changes...), nil
}

// makes tells whether a plan is among the rows that are written: a removed one that is
// taken back comes with what belongs to it.
func makes(changes []journal.Change, id string) bool {
	return slices.ContainsFunc(changes, func(c journal.Change) bool { return c.Table == "plans" && c.ID == id && c.After != nil })
}

// leansOn tells whether rows that are written belong to a plan, or stand over it.
func leansOn(changes []journal.Change, id string) bool {
	for i := range changes {
		c := &changes[i]
		column := map[string]string{"plantings": "plan", "changes": "plan", "plans": "base"}[c.Table]
		if at := slices.Index(exchange.Columns(c.Table), column); at >= 0 && at < len(c.After) && c.After[at] == id {
			return true
		}
	}
	return false
}
