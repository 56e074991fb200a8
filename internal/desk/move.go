package desk

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/exchange"
	"garner/internal/fault"
	"garner/internal/journal"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/record"
	"garner/internal/words"
)

// Move says where a planting was lifted to.
type Move struct {
	Planting string
	On       cal.Date
	Bed      string
	AreaM2   float64 // ground it takes there
}

// Move lifts a planting and sets it in another bed: its ground is free from that
// day, and a planting that is it stands in the other bed. It is one entry.
func (o *Office) Move(by Author, m Move) (*KeptEntry, error) {
	return o.write(by, func() (journal.Entry, error) {
		w, err := o.working(m.Planting)
		if err != nil {
			return journal.Entry{}, err
		}
		if faults := w.moveFaults(m); len(faults) > 0 {
			return journal.Entry{}, faults
		}
		moved := map[string]string{"date": m.On.String(), "what": string(record.Moved), "planting": m.Planting}
		if err := w.add("records", moved); err != nil {
			return journal.Entry{}, err
		}
		if err := w.add("plantings", w.set(m)); err != nil {
			return journal.Entry{}, err
		}
		what := words.P("desk.edit_moved_bed", words.Args{"what": w.names.row("plantings", w.row), "bed": w.names.name("beds", m.Bed)})
		return w.entry(what)
	})
}

// set is the planting as it stands in the other bed.
func (w *lossWork) set(m Move) map[string]string {
	cells := cellsOf(exchange.Columns("plantings"), w.row)
	for _, name := range []string{"id", "date_within_d", "area_within", "strip_on", "strip_share", "stock"} {
		delete(cells, name)
	}
	cells["plan"], cells["bed"], cells["date"], cells["area_m2"] = w.holding.Plan, m.Bed, m.On.String(), numberCell(m.AreaM2)
	cells["relation"], cells["to"] = string(plan.Moved), m.Planting
	if w.planting.ClearBy.IsSet() && w.planting.ClearBy <= m.On {
		delete(cells, "clear_by")
	}
	if w.use.Allows(string(plan.Plant)) {
		cells["method"] = string(plan.Plant)
	}
	return cells
}

// moveFaults finds what cannot be about a move.
func (w *lossWork) moveFaults(m Move) fault.List {
	faults := w.dayFaults(m.On)
	if len(faults) == 0 && m.On == w.began() {
		faults = append(faults, w.wrong("date", "desk.move_same_day", nil))
	}
	at := slices.IndexFunc(w.holding.Beds, func(b place.Bed) bool { return b.ID == m.Bed })
	switch {
	case at < 0:
		return append(faults, w.wrong("bed", "desk.move_no_bed", nil))
	case m.Bed == w.planting.Bed:
		return append(faults, w.wrong("bed", "desk.move_same_bed", nil))
	case m.AreaM2 <= 0:
		return append(faults, w.wrong("area_m2", "desk.move_no_area", nil))
	}
	if b := w.holding.Beds[at]; m.AreaM2 > b.AreaM2()+0.01 {
		faults = append(faults, w.wrong("area_m2", "desk.move_too_large", words.Args{"bed": b.Name, "area": b.AreaM2()}))
	}
	return faults
}

// movesBadly tells whether a crop is only ever sown where it grows, so that it
// comes to harm when it is lifted.
func (w *lossWork) movesBadly() bool {
	return w.use.Allows(string(plan.Seed)) && !w.use.Allows(string(plan.Plant)) && !w.use.Allows(string(plan.Crown))
}
