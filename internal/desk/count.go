package desk

import (
	"slices"

	"garner/internal/exchange"
	"garner/internal/fault"
	"garner/internal/journal"
	"garner/internal/record"
	"garner/internal/words"
)

// Count says how much of a batch is left today.
type Count struct {
	Batch string
	Kg    float64
	Base  int64 // the version of the batch that was counted
}

// CountBatch corrects a batch by a count of it, and records what its store then
// holds. It is one entry. A batch that is no longer of the version counted gives a
// *Conflict.
func (o *Office) CountBatch(by Author, c Count) (*KeptEntry, error) {
	return o.write(by, func() (journal.Entry, error) {
		rows, err := o.keeper.Rows("batches")
		if err != nil {
			return journal.Entry{}, err
		}
		columns := exchange.Columns("batches")
		at := slices.IndexFunc(rows, func(r KeptRow) bool { return r.ID == c.Batch })
		if at < 0 {
			return journal.Entry{}, noRow("batches", c.Batch)
		}
		batch, err := o.saving("batches", columns, c.Batch, map[string]string{"kg": numberCell(c.Kg)}, c.Base)
		if err != nil {
			return journal.Entry{}, err
		}
		counted, err := o.counted(c, cellsOf(columns, rows[at].Row)["store"], rows)
		if err != nil {
			return journal.Entry{}, err
		}
		n, err := o.naming()
		if err != nil {
			return journal.Entry{}, err
		}
		said := words.P("desk.edit_counted", words.Args{"what": n.row("batches", rows[at].Row), "kg": c.Kg})
		changes := []journal.Change{*counted}
		if batch != nil {
			changes = []journal.Change{*batch, *counted}
		}
		return journal.Entry{What: said, Changes: changes}, nil
	})
}

// counted is the record of what a store holds by the count of one of its batches.
func (o *Office) counted(c Count, store string, batches []KeptRow) (*journal.Change, error) {
	if c.Kg < 0 {
		return nil, fault.List{fault.New(fault.OutOfRange, "desk.count_below_none", nil).In(fault.Place{Column: "kg"})}
	}
	now, err := o.Today()
	if err != nil {
		return nil, err
	}
	kg, columns := c.Kg, exchange.Columns("batches")
	for _, r := range batches {
		if cells := cellsOf(columns, r.Row); cells["store"] == store && r.ID != c.Batch {
			kg += numberIn(cells["kg"])
		}
	}
	return o.saving("records", exchange.Columns("records"), "", map[string]string{"date": now.String(), "what": string(record.Counted),
		"store": store, "value": numberCell(kg), "unit": "kg"}, 0)
}
