package desk

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/journal"
	"garner/internal/larder"
	"garner/internal/record"
	"garner/internal/words"
)

// StoreCount is what was weighed in a store.
type StoreCount struct {
	Store string
	Batch string // one batch of it; empty: all that lies in the store
	On    cal.Date
	Kg    float64
	Sure  bool // however much more than was put in
}

// Count records what was weighed in a store: it corrects the batch, or all
// batches of the store.
func (o *Office) Count(by Author, c StoreCount) (*KeptEntry, error) {
	return o.write(by, func() (journal.Entry, error) {
		h, err := o.Holding()
		if err != nil {
			return journal.Entry{}, err
		}
		now, err := today(h)
		if err != nil {
			return journal.Entry{}, err
		}
		names, err := o.naming()
		if err != nil {
			return journal.Entry{}, err
		}
		if !slices.ContainsFunc(h.Stores, func(s larder.Store) bool { return s.ID == c.Store }) {
			return journal.Entry{}, noRow("stores", c.Store)
		}
		if faults := countFaults(h, c, now); len(faults) > 0 {
			return journal.Entry{}, faults
		}
		w := lossWork{office: o, holding: h, names: names, taken: map[string]map[string]bool{}}
		cells := map[string]string{"date": c.On.String(), "what": string(record.Counted), "store": c.Store, "batch": c.Batch,
			"value": numberCell(c.Kg), "unit": "kg"}
		if err := w.add("records", cells); err != nil {
			return journal.Entry{}, err
		}
		return w.entry(countSaid(names, c))
	})
}

// A count is far above what was put in when it is so many times as much, and more than
// the least by which it matters [kg]. Judgement: a slip of the point is ten times.
const (
	farAbove   = 1.5
	farAboveKg = 1.0
)

// countFaults finds what cannot be of a count, and asks once about one that is far above
// what was put in: it is told at "sure", and taken when the count says so.
func countFaults(h *holding.Holding, c StoreCount, now cal.Date) (faults fault.List) {
	wrong := func(field, key string, args words.Args) {
		faults = append(faults, fault.New(fault.Invalid, key, args).In(fault.Place{Column: field}))
	}
	switch {
	case !c.On.IsSet():
		wrong("date", "desk.lost_no_day", nil)
	case c.On > now:
		wrong("date", "desk.lost_to_come", words.Args{"today": now})
	}
	if !(c.Kg >= 0) {
		wrong("kg", "desk.lost_less_than_none", nil)
	}
	there := slices.IndexFunc(h.Batches, func(b larder.Batch) bool {
		return b.Store == c.Store && (c.Batch == "" || b.ID == c.Batch)
	})
	switch {
	case there < 0 && c.Batch != "":
		wrong("batch", "desk.count_no_batch", nil)
	case there < 0:
		wrong("batch", "desk.count_empty", nil)
	case c.Batch == "" && c.On.IsSet() && c.On < firstStored(h, c.Store):
		wrong("date", "desk.count_before_any", words.Args{"stored": firstStored(h, c.Store)})
	case c.Batch != "" && c.On.IsSet() && c.On < h.Batches[there].Stored:
		wrong("date", "desk.count_before", words.Args{"stored": h.Batches[there].Stored})
	}
	if put := putIn(h, c); put > 0 && !c.Sure && c.Kg > farAbove*put && c.Kg > put+farAboveKg {
		wrong("sure", "desk.count_far_above", words.Args{"kg": c.Kg, "put": put})
	}
	return faults
}

// putIn is what was put into what is counted until that day [kg].
func putIn(h *holding.Holding, c StoreCount) float64 {
	kg := 0.0
	for _, b := range h.Batches {
		if b.Store == c.Store && (c.Batch == "" || b.ID == c.Batch) && !(c.On.IsSet() && b.Stored > c.On) {
			kg += b.Kg
		}
	}
	return kg
}

// firstStored is the day on which the first of a store's batches was put in; the store
// has one.
func firstStored(h *holding.Holding, store string) cal.Date {
	first := cal.None
	for _, b := range h.Batches {
		if b.Store == store && (!first.IsSet() || b.Stored < first) {
			first = b.Stored
		}
	}
	return first
}

func countSaid(n naming, c StoreCount) words.Phrase {
	args := words.Args{"store": n.name("stores", c.Store), "kg": c.Kg}
	at := slices.IndexFunc(n.rows["batches"], func(r KeptRow) bool { return r.ID == c.Batch })
	if c.Batch == "" || at < 0 {
		return words.P("desk.edit_counted_store", args)
	}
	args["what"] = n.row("batches", n.rows["batches"][at].Row)
	return words.P("desk.edit_counted_batch", args)
}
