package desk

import (
	"slices"
	"strconv"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/exchange"
	"garner/internal/fault"
	"garner/internal/growth"
	"garner/internal/holding"
	"garner/internal/journal"
	"garner/internal/plan"
	"garner/internal/record"
	"garner/internal/words"
)

// lossWork is an entry about one planting in the making.
type lossWork struct {
	office   *Office
	holding  *holding.Holding
	book     *crop.Book
	names    naming
	today    cal.Date
	planting plan.Planting
	row      journal.Row // of the planting as in the files
	crop     *crop.Crop
	use      *crop.Use
	losses   []record.Loss // recorded so far
	changes  []journal.Change
	taken    map[string]map[string]bool
}

// working readies an entry about a planting of the plan in force.
func (o *Office) working(id string) (*lossWork, error) {
	w, err := o.about(id)
	if err != nil {
		return nil, err
	}
	w.names, err = o.naming()
	return w, err
}

// about gathers what is known of a planting of the plan in force.
func (o *Office) about(id string) (*lossWork, error) {
	h, err := o.Holding()
	if err != nil {
		return nil, err
	}
	w := &lossWork{office: o, holding: h, taken: map[string]map[string]bool{}}
	if w.book, err = bookOf(h); err != nil {
		return nil, err
	}
	if w.today, err = today(h); err != nil {
		return nil, err
	}
	plantings, _ := plan.Resolve(h.Plans, h.Plantings, h.Changes, h.Plan)
	at := slices.IndexFunc(plantings, func(p plan.Planting) bool { return p.ID == id })
	if at < 0 {
		return nil, fault.New(fault.NotFound, "desk.planting_unknown", words.Args{"planting": id})
	}
	w.planting = plantings[at]
	own := *h
	own.Plantings = plantings[at : at+1]
	w.row = exchange.Rows(&own)["plantings"][0]
	if w.crop, w.use, err = useOf(w.book, w.planting.Crop, w.planting.Use); err != nil {
		return nil, err
	}
	w.losses = record.Losses(h.Records, id, w.planting.AreaM2*w.plantsPerM2())
	return w, nil
}

func (w *lossWork) plantsPerM2() float64 { return spacedPlants(w.use, &w.planting) }

// spacedPlants is how densely a planting stands [1/m2].
func spacedPlants(u *crop.Use, p *plan.Planting) float64 {
	return growth.Spaced(u, p.InRowM, p.BetweenRowM).PlantsPerM2()
}

// began is the day the planting went into the ground.
func (w *lossWork) began() cal.Date {
	for _, r := range w.holding.Records {
		if r.Planting == w.planting.ID && r.What == record.Planted {
			return r.Date
		}
	}
	return w.planting.Date
}

// losing readies an entry about a loss that can be.
func (o *Office) losing(l Lost) (*lossWork, error) {
	w, err := o.working(l.Planting)
	if err != nil {
		return nil, err
	}
	faults := w.dayFaults(l.On)
	if l.Share < 0 || l.Share > 1 || l.Plants < 0 || l.Share == 0 && l.Plants == 0 {
		faults = append(faults, w.wrong("share", "desk.lost_share", nil))
	}
	if _, known := causeFor(l.Why); l.Why != "" && !known {
		faults = append(faults, w.wrong("why", "desk.lost_why", nil))
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return w, nil
}

// dayFaults finds what is wrong with the day on which something became of the
// planting.
func (w *lossWork) dayFaults(on cal.Date) fault.List {
	began := w.began()
	switch {
	case !on.IsSet():
		return fault.List{w.wrong("date", "desk.lost_no_day", nil)}
	case on > w.today:
		return fault.List{w.wrong("date", "desk.lost_to_come", words.Args{"today": w.today})}
	case on < began:
		return fault.List{w.wrong("date", "desk.lost_before", words.Args{"began": began})}
	}
	if gone := w.gone(); gone.IsSet() && gone <= on {
		return fault.List{w.wrong("date", "desk.lost_already", words.Args{"gone": gone})}
	}
	return nil
}

// gone is the day from which nothing of the planting is left, as recorded.
func (w *lossWork) gone() cal.Date {
	gone := record.LostOn(w.losses)
	for _, r := range w.holding.Records {
		if r.Planting == w.planting.ID && r.What == record.Cleared && (!gone.IsSet() || r.Date < gone) {
			gone = r.Date
		}
	}
	return gone
}

// wrong is a fault of a field of the form.
func (w *lossWork) wrong(field, key string, args words.Args) *fault.Error {
	return fault.New(fault.Invalid, key, args).In(fault.Place{Column: field})
}

// keeps tells whether the crop keeps in a store of the holding.
func (w *lossWork) keeps(store string) bool {
	_, keeps := w.way(store)
	return keeps
}

// add puts a new row into the entry, after all that stand in its table.
func (w *lossWork) add(table string, cells map[string]string) error {
	columns := exchange.Columns(table)
	if w.taken[table] == nil {
		taken, err := w.office.takenIDs(table)
		if err != nil {
			return err
		}
		w.taken[table] = taken
	}
	c := journal.Change{Table: table, ID: idFor(table, cells, w.taken[table]), Place: 1}
	w.taken[table][c.ID] = true
	for _, r := range w.names.rows[table] {
		c.Place = max(c.Place, r.Place+1)
	}
	for _, made := range w.changes {
		if made.Table == table {
			c.Place = max(c.Place, made.Place+1)
		}
	}
	given := make(journal.Row, len(columns))
	if err := fillIn(given, columns, cells); err != nil {
		return err
	}
	given[0] = c.ID
	after, faults := exchange.Tidy(table, given)
	if len(faults) > 0 {
		return faults
	}
	c.After = after
	w.changes = append(w.changes, c)
	return nil
}

func (w *lossWork) entry(what words.Phrase) (journal.Entry, error) {
	return journal.Entry{What: what, Changes: w.changes}, nil
}

// numberCell writes a number as the files do, to four digits after the point.
func numberCell(v float64) string {
	s, err := strconv.ParseFloat(strconv.FormatFloat(v, 'f', 4, 64), 64)
	if err != nil {
		return ""
	}
	return strconv.FormatFloat(s, 'f', -1, 64)
}
