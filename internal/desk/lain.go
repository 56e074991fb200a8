package desk

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/journal"
	"garner/internal/larder"
	"garner/internal/words"
)

// Lain is food that lies in a store already, of which no pick is known.
type Lain struct {
	Store, Crop, Use string   // no use: the first that keeps there
	Amount           float64  // kg, or pieces
	Pieces           bool     // the amount is of pieces of the crop's usual size at the table
	Since            cal.Date // roughly: it tells how long it still keeps
}

// LayIn keeps what lies in a store already, as a batch of no planting. It is one entry.
func (o *Office) LayIn(by Author, l Lain) (*KeptEntry, error) {
	return o.write(by, func() (journal.Entry, error) {
		w := lossWork{office: o, taken: map[string]map[string]bool{}}
		var err error
		if w.holding, err = o.Holding(); err != nil {
			return journal.Entry{}, err
		}
		if w.book, err = bookOf(w.holding); err != nil {
			return journal.Entry{}, err
		}
		if w.today, err = today(w.holding); err != nil {
			return journal.Entry{}, err
		}
		if w.names, err = o.naming(); err != nil {
			return journal.Entry{}, err
		}
		if faults := w.lainFaults(l); len(faults) > 0 {
			return journal.Entry{}, faults
		}
		if err := w.add("batches", map[string]string{"store": l.Store, "crop": w.crop.ID, "use": w.use.Name, "kg": numberCell(l.kg(w.use)),
			"stored": l.Since.String()}); err != nil {
			return journal.Entry{}, err
		}
		return w.entry(words.P("desk.edit_lain", words.Args{"kg": l.kg(w.use), "what": w.use.Label, "store": w.names.name("stores", l.Store), "since": l.Since}))
	})
}

// kg is what an amount weighs.
func (l *Lain) kg(u *crop.Use) float64 {
	if l.Pieces {
		return l.Amount * u.TableG / 1000
	}
	return l.Amount
}

// lainFaults finds everything that cannot be of what lies in a store, and takes crop
// and use from the book.
func (w *lossWork) lainFaults(l Lain) (faults fault.List) {
	tell := func(field, key string, args words.Args) { faults = append(faults, w.wrong(field, key, args)) }
	at := slices.IndexFunc(w.holding.Stores, func(s larder.Store) bool { return s.ID == l.Store })
	var err error
	if w.crop, w.use, err = useOf(w.book, l.Crop, l.Use); err == nil && l.Use == "" && at >= 0 {
		for _, u := range w.crop.Uses {
			if _, keeps := u.Way(w.holding.Stores[at].Method); keeps && u.Feeds() {
				w.use = u
				break
			}
		}
	}
	if err != nil || !w.use.Feeds() {
		w.use = nil
		tell("grown", "desk.lain_what", nil)
	}
	switch {
	case !(l.Amount > 0):
		tell("kg", "desk.lain_nothing", nil)
	case l.Pieces && w.use != nil && w.use.TableG == 0:
		tell("kg", "desk.lain_no_pieces", words.Args{"what": w.use.Label})
	case w.use != nil && !(l.kg(w.use) <= mostLainKg):
		tell("kg", "desk.lain_too_much", words.Args{"kg": l.kg(w.use), "most": mostLainKg})
	}
	switch {
	case !l.Since.IsSet():
		tell("stored", "desk.lost_no_day", nil)
	case l.Since > w.today:
		tell("stored", "desk.lain_to_come", words.Args{"today": w.today})
	}
	switch {
	case at < 0:
		tell("store", "desk.lain_where", nil)
	case w.use != nil:
		if e := keepsNot(w.holding, w.use, &w.holding.Stores[at]); e != nil {
			faults = append(faults, e)
		}
	}
	return faults
}

// mostLainKg is the most that a batch may weigh, as its table says [kg].
const mostLainKg = 1e6

// keepsNot says that a use does not keep in a store, with the ways in which it does and
// the stores of the holding that are of one; nil when it keeps there.
func keepsNot(h *holding.Holding, u *crop.Use, s *larder.Store) *fault.Error {
	if _, keeps := u.Way(s.Method); keeps {
		return nil
	}
	method := func(m string) words.Phrase { return words.P("desk.value_stores.method."+m, nil) }
	args := words.Args{"what": u.Label, "method": method(s.Method)}
	key := "desk.lain_keeps_so"
	var ways []words.Phrase
	var stores []string
	for _, row := range u.Storage {
		ways = append(ways, method(row.Method))
	}
	for i := range h.Stores {
		if _, keeps := u.Way(h.Stores[i].Method); keeps {
			stores = append(stores, h.Stores[i].Name)
		}
	}
	args["ways"], args["stores"] = ways, stores
	if len(stores) > 0 {
		key = "desk.lain_keeps_there"
	}
	return fault.New(fault.Conflict, key, args).In(fault.Place{Column: "store"})
}
