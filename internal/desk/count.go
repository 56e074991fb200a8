package desk

import (
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

// CountBatch corrects a batch by a count of it, or takes it out when none is left,
// and records what its store then holds. It is one entry. A batch that is no longer
// of the version counted gives a *Conflict.
func (o *Office) CountBatch(by Author, c Count) (*KeptEntry, error) {
	return o.write(by, func() (journal.Entry, error) {
		n, err := o.naming()
		if err != nil {
			return journal.Entry{}, err
		}
		row, err := o.removable(n, "batches", c.Batch, c.Base)
		if err != nil {
			return journal.Entry{}, err
		}
		changes, err := o.recounted(n, c)
		if err != nil {
			return journal.Entry{}, err
		}
		counted, err := o.counted(c, cellsOf(exchange.Columns("batches"), row.Row)["store"], n.rows["batches"])
		if err != nil {
			return journal.Entry{}, err
		}
		said := words.P("desk.edit_counted", words.Args{"what": n.row("batches", row.Row), "kg": c.Kg})
		return journal.Entry{What: said, Changes: append(changes, *counted)}, nil
	})
}

// recounted is what a count does to the batch; nothing when it is as it was.
func (o *Office) recounted(n naming, c Count) ([]journal.Change, error) {
	if c.Kg == 0 {
		r := removal{rows: n.rows, gone: map[rowKey]bool{}}
		r.take(rowKey{"batches", c.Batch})
		return r.changes(), nil
	}
	change, err := o.saving("batches", exchange.Columns("batches"), c.Batch, map[string]string{"kg": numberCell(c.Kg)}, c.Base)
	if err != nil || change == nil {
		return nil, err
	}
	return []journal.Change{*change}, nil
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
