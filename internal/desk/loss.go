package desk

import (
	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/journal"
	"garner/internal/record"
	"garner/internal/words"
)

// Lost says what went of a planting.
type Lost struct {
	Planting string
	On       cal.Date
	Share    float64 // of what still stands, 0-1; 0: told in Plants
	Plants   float64 // of those that were set out
	Why      string  // a cause by its id; empty: not told
}

// Failing says what went of a planting, and what was saved of it.
type Failing struct {
	Lost
	PickedKg   float64 // picked with it
	Store      string  // where that lies; empty: eaten
	KeptPlants float64 // cuttings or plants kept, with which a hole can be filled
}

// MarkLost records that a planting, or a share of it, died: from that day it
// holds that ground no more. A disease that stays in the ground is noted for the
// bed. It is one entry.
func (o *Office) MarkLost(by Author, l Lost) (*KeptEntry, error) {
	return o.write(by, func() (journal.Entry, error) {
		w, err := o.losing(l)
		if err != nil {
			return journal.Entry{}, err
		}
		if err := w.lose(record.Died, l); err != nil {
			return journal.Entry{}, err
		}
		return w.entry(lostSaid("desk.edit_lost_", w, l))
	})
}

// MarkFailing records that a planting is failing: the share of it that is lost
// goes as when it died, the rest stands on. What was picked goes into a store,
// and plants kept are on hand. It is one entry.
func (o *Office) MarkFailing(by Author, f Failing) (*KeptEntry, error) {
	return o.write(by, func() (journal.Entry, error) {
		w, err := o.losing(f.Lost)
		if err != nil {
			return journal.Entry{}, err
		}
		if faults := w.savedFaults(f); len(faults) > 0 {
			return journal.Entry{}, faults
		}
		if err := w.lose(record.Failing, f.Lost); err != nil {
			return journal.Entry{}, err
		}
		if err := w.save(f); err != nil {
			return journal.Entry{}, err
		}
		return w.entry(lostSaid("desk.edit_failing_", w, f.Lost))
	})
}

// lostSaid says what was lost: all of it, a share, or a number of plants.
func lostSaid(key string, w *lossWork, l Lost) words.Phrase {
	args := words.Args{"what": w.names.row("plantings", w.row)}
	switch {
	case l.Share >= 1:
		return words.P(key+"all", args)
	case l.Share > 0:
		args["share"] = l.Share
		return words.P(key+"share", args)
	}
	args["n"] = l.Plants
	return words.P(key+"plants", args)
}

// lose adds the records of a loss.
func (w *lossWork) lose(what record.What, l Lost) error {
	value, unit := l.Share, record.ShareUnit
	if l.Share <= 0 {
		value, unit = l.Plants, record.PlantsUnit
	}
	cells := map[string]string{"date": l.On.String(), "what": string(what), "planting": l.Planting,
		"value": numberCell(value), "unit": unit, "problem": l.Why}
	if err := w.add("records", cells); err != nil {
		return err
	}
	if cause, _ := causeFor(l.Why); cause.Stays {
		return w.add("records", map[string]string{"date": l.On.String(), "what": string(record.Disease), "planting": l.Planting,
			"bed": w.planting.Bed, "problem": cause.ID})
	}
	return nil
}

// save adds what was picked and kept of a failing planting.
func (w *lossWork) save(f Failing) error {
	if f.PickedKg > 0 {
		picked := map[string]string{"date": f.On.String(), "what": string(record.Picked), "planting": f.Planting,
			"value": numberCell(f.PickedKg), "unit": "kg"}
		if err := w.add("records", picked); err != nil {
			return err
		}
	}
	if f.PickedKg > 0 && f.Store != "" {
		batch := map[string]string{"store": f.Store, "crop": w.planting.Crop, "use": w.planting.Use, "kg": numberCell(f.PickedKg),
			"stored": f.On.String(), "planting": f.Planting}
		if err := w.add("batches", batch); err != nil {
			return err
		}
	}
	if f.KeptPlants <= 0 {
		return nil
	}
	return w.add("onhand", map[string]string{"form": "plants", "crop": w.planting.Crop, "use": w.planting.Use,
		"variety": w.planting.Variety, "amount": numberCell(f.KeptPlants), "unit": "plants", "since": f.On.String()})
}

// savedFaults finds what cannot be among what was saved.
func (w *lossWork) savedFaults(f Failing) (faults fault.List) {
	if f.PickedKg < 0 {
		faults = append(faults, w.wrong("kg", "desk.lost_less_than_none", nil))
	}
	if f.KeptPlants < 0 {
		faults = append(faults, w.wrong("plants_kept", "desk.lost_less_than_none", nil))
	}
	if f.Store != "" && f.PickedKg > 0 && !w.keeps(f.Store) {
		faults = append(faults, w.wrong("store", "desk.lost_not_kept", words.Args{"store": w.names.name("stores", f.Store)}))
	}
	return faults
}
