package desk

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/fault"
	"garner/internal/journal"
	"garner/internal/larder"
	"garner/internal/record"
	"garner/internal/words"
)

// Pick is a pick of a planting, and what of it was laid into a store.
type Pick struct {
	Planting string
	On       cal.Date
	Kg       float64 // picked
	Store    string  // where it went; empty: eaten or given away
	StoredKg float64 // of it, ready to eat; 0: all of it, less what preparing takes by the crop book
	All      bool    // the ground is cleared with it
}

// Pick records a pick and makes it a batch of its store. It is one entry.
func (o *Office) Pick(by Author, p Pick) (*KeptEntry, error) {
	return o.write(by, func() (journal.Entry, error) {
		w, err := o.working(p.Planting)
		if err != nil {
			return journal.Entry{}, err
		}
		if faults := w.pickFaults(p); len(faults) > 0 {
			return journal.Entry{}, faults
		}
		if err := w.pick(p); err != nil {
			return journal.Entry{}, err
		}
		return w.entry(w.pickSaid(p))
	})
}

// pickFaults finds what cannot be of a pick.
func (w *lossWork) pickFaults(p Pick) fault.List {
	faults := w.dayFaults(p.On)
	switch {
	case !(p.Kg > 0):
		faults = append(faults, w.wrong("kg", "desk.pick_nothing", nil))
	case p.StoredKg < 0:
		faults = append(faults, w.wrong("stored_kg", "desk.lost_less_than_none", nil))
	case p.StoredKg > p.Kg:
		faults = append(faults, w.wrong("stored_kg", "desk.pick_stored_more", words.Args{"stored": p.StoredKg, "picked": p.Kg}))
	case p.StoredKg > 0 && p.Store == "":
		faults = append(faults, w.wrong("store", "desk.pick_no_store", nil))
	}
	if p.Store != "" && !w.keeps(p.Store) {
		faults = append(faults, w.wrong("store", "desk.lost_not_kept", words.Args{"store": w.names.name("stores", p.Store)}))
	}
	return faults
}

// pick adds the records of a pick, and its batch.
func (w *lossWork) pick(p Pick) error {
	picked := map[string]string{"date": p.On.String(), "what": string(record.Picked), "planting": p.Planting, "value": numberCell(p.Kg), "unit": "kg"}
	if err := w.add("records", picked); err != nil {
		return err
	}
	if p.All {
		cleared := map[string]string{"date": p.On.String(), "what": string(record.Cleared), "planting": p.Planting, "bed": w.planting.Bed}
		if err := w.add("records", cleared); err != nil {
			return err
		}
	}
	if p.Store == "" {
		return nil
	}
	return w.add("batches", map[string]string{"store": p.Store, "crop": w.planting.Crop, "use": w.planting.Use,
		"kg": numberCell(w.readyKg(p)), "stored": p.On.String(), "planting": p.Planting})
}

// readyKg is what lies in the store of a pick, ready to eat.
func (w *lossWork) readyKg(p Pick) float64 {
	if p.StoredKg > 0 {
		return p.StoredKg
	}
	row, _ := w.way(p.Store)
	return p.Kg * (1 - row.LossShare)
}

// way is how the crop keeps in a store of the holding.
func (w *lossWork) way(store string) (crop.Storage, bool) {
	at := slices.IndexFunc(w.holding.Stores, func(s larder.Store) bool { return s.ID == store })
	if at < 0 {
		return crop.Storage{}, false
	}
	return w.use.Way(w.holding.Stores[at].Method)
}

func (w *lossWork) pickSaid(p Pick) words.Phrase {
	args := words.Args{"what": w.names.row("plantings", w.row), "kg": p.Kg}
	if p.Store == "" {
		return words.P("desk.edit_picked", args)
	}
	args["store"] = w.names.name("stores", p.Store)
	return words.P("desk.edit_picked_to", args)
}
