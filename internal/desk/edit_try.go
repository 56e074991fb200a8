package desk

import (
	"slices"

	"garner/internal/exchange"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/journal"
	"garner/internal/plan"
)

// KeepTry makes tried changes part of the plan in force, as one entry. Over a
// draft they become further steps of it.
func (o *Office) KeepTry(by Author, try []plan.Change) error {
	_, err := o.keepTry(by, try)
	return err
}

func (o *Office) keepTry(by Author, try []plan.Change) (*KeptEntry, error) {
	return o.write(by, func() (journal.Entry, error) {
		h, err := o.Holding()
		if err != nil || len(try) == 0 {
			return journal.Entry{}, err
		}
		n, err := o.naming()
		if err != nil {
			return journal.Entry{}, err
		}
		changes, err := keeping(n, h, try)
		return journal.Entry{What: n.saidTried(changes, try), Changes: changes}, err
	})
}

// keeping is what tried changes come to in the tables.
func keeping(n naming, h *holding.Holding, try []plan.Change) ([]journal.Change, error) {
	draft, err := draftInForce(h)
	if err != nil {
		return nil, err
	}
	p := parted(try)
	beside, err := besidePlantings(n, h, &p)
	if err != nil {
		return nil, err
	}
	if draft {
		return append(furtherSteps(n, h, p.plantings), beside...), nil
	}
	changes, err := changedPlantings(n, h, p.plantings)
	return append(changes, beside...), err
}

// besidePlantings is what is tried beside plantings: covers, gaps left and what may
// be bought.
func besidePlantings(n naming, h *holding.Holding, p *parts) ([]journal.Change, error) {
	changes, err := keptCovers(n, tryOver(h, p.plantings), p.covers)
	if err != nil {
		return nil, err
	}
	left, err := keptLeaves(n, h, p.leaves)
	if err != nil {
		return nil, err
	}
	bought, err := keptBuys(n, h, p.buys)
	return slices.Concat(changes, left, bought), err
}

// draftInForce tells whether the plan in force is a draft over another.
func draftInForce(h *holding.Holding) (bool, error) {
	at := slices.IndexFunc(h.Plans, func(p plan.Plan) bool { return p.ID == h.Plan })
	if at < 0 {
		return false, fault.New(fault.NotFound, "desk.no_plan", nil)
	}
	return h.Plans[at].Base != "", nil
}

// tryOver is the holding with changes as a draft over its plan in force.
func tryOver(h *holding.Holding, try []plan.Change) *holding.Holding {
	own := *h
	own.Plans = append(slices.Clone(h.Plans), plan.Plan{ID: "tried", Base: h.Plan})
	own.Changes = slices.Clone(h.Changes)
	for i, c := range try {
		c.Plan, c.Order = "tried", i
		own.Changes = append(own.Changes, c)
	}
	own.Plan = "tried"
	return &own
}

// changedPlantings makes the tried changes in plantings.csv itself.
func changedPlantings(n naming, h *holding.Holding, try []plan.Change) ([]journal.Change, error) {
	own := *h
	own.Plans = []plan.Plan{{ID: h.Plan}, {ID: "tried", Base: h.Plan}}
	own.Changes = slices.Clone(try)
	for i := range own.Changes {
		own.Changes[i].Plan, own.Changes[i].Order = "tried", i
	}
	resolved, faults := plan.Resolve(own.Plans, own.Plantings, own.Changes, "tried")
	if len(faults) > 0 {
		return nil, unplaced(faults)
	}
	for i := range resolved {
		resolved[i].Plan = h.Plan
	}
	own.Plantings = resolved
	after := exchange.Rows(&own)["plantings"]
	var changes []journal.Change
	for _, id := range touchedBy(try) {
		if c := changeOf("plantings", n.rows["plantings"], after, id); c != nil {
			changes = append(changes, *c)
		}
	}
	return changes, nil
}

// unplaced takes the places of a draft's steps off faults: the steps are in no
// file.
func unplaced(faults fault.List) fault.List {
	out := make(fault.List, len(faults))
	for i, e := range faults {
		out[i] = e.In(fault.Place{Column: e.At.Column})
	}
	return out
}

// touchedBy are the plantings of tried changes, each once.
func touchedBy(try []plan.Change) []string {
	var ids []string
	for _, c := range try {
		if !slices.Contains(ids, c.Planting) {
			ids = append(ids, c.Planting)
		}
	}
	return ids
}

// changeOf compares a row as it stands with a row as it should be, nil when they
// are the same.
func changeOf(table string, stands []KeptRow, after [][]string, id string) *journal.Change {
	c := journal.Change{Table: table, ID: id, Place: 1}
	if len(stands) > 0 {
		c.Place = stands[len(stands)-1].Place + 1
	}
	if at := slices.IndexFunc(stands, func(r KeptRow) bool { return r.ID == id }); at >= 0 {
		c.Before, c.Place = stands[at].Row, stands[at].Place
	}
	if at := slices.IndexFunc(after, func(r []string) bool { return r[0] == id }); at >= 0 {
		c.After = after[at]
	}
	if slices.Equal(c.Before, c.After) {
		return nil
	}
	return &c
}

// furtherSteps adds the tried changes to those of the draft in force.
func furtherSteps(n naming, h *holding.Holding, try []plan.Change) []journal.Change {
	order := 0
	for _, c := range h.Changes {
		if c.Plan == h.Plan {
			order = max(order, c.Order)
		}
	}
	rows, place := n.rows["changes"], 0.0
	taken := map[string]bool{}
	for _, r := range rows {
		taken[r.ID], place = true, r.Place
	}
	own := *h
	own.Changes = nil
	for i, c := range try {
		c.ID = numbered(h.Plan, taken)
		c.Plan, c.Order = h.Plan, order+1+i
		taken[c.ID] = true
		own.Changes = append(own.Changes, c)
	}
	var out []journal.Change
	for i, row := range exchange.Rows(&own)["changes"] {
		out = append(out, journal.Change{Table: "changes", ID: row[0], After: row, Place: place + 1 + float64(i)})
	}
	return out
}
