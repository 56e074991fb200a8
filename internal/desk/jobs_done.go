package desk

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/exchange"
	"garner/internal/jobs"
	"garner/internal/journal"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/record"
	"garner/internal/words"
)

// DoneAs is what was done where it differs from what the job proposed; what is 0 or
// empty is as proposed.
type DoneAs struct {
	Kg       float64 // picked, lifted, limed with, or counted in the store
	Litres   float64 // of water, feed, compost or mulch
	Store    string  // where a pick went; empty: of what is lifted the planting's store, else none
	StoredKg float64 // of it, ready to eat
}

// answerAhead are how far ahead a job may lie that is answered: in the list that is
// mostly asked for, and in any [d].
var answerAhead = []cal.Date{15, 120}

// DoneJob keeps what became of a job. What was done and changes the facts of the plan
// (sown, raised, planted, picked, lifted, cleared, covered, counted, watered, fed,
// dressed, mulched) is recorded in the same entry, so that the table follows, and taking
// it back takes back both. A job that is not in the list is answered alone.
func (o *Office) DoneJob(by Author, a record.Answer, as DoneAs) (*KeptEntry, error) {
	now, err := o.Today()
	if err != nil {
		return nil, err
	}
	if !a.Date.IsSet() || a.Date == 0 {
		a.Date = now
	}
	var j *jobs.Job
	if a.Did == record.Done {
		if j, err = o.job(a.Job); err != nil {
			return nil, err
		}
	}
	return o.write(by, func() (journal.Entry, error) {
		w, err := o.doing(j)
		if err != nil {
			return journal.Entry{}, err
		}
		if err := w.add("job_answers", answerCells(a)); err != nil {
			return journal.Entry{}, err
		}
		said := w.names.said(w.changes[0])
		if j == nil {
			return w.entry(said)
		}
		if err := w.did(j, a.Date, as); err != nil {
			return journal.Entry{}, err
		}
		return w.entry(words.P("desk.edit_job_done", words.Args{"title": j.Title, "what": w.names.row("job_answers", w.changes[0].After)}))
	})
}

func answerCells(a record.Answer) map[string]string {
	cells := map[string]string{"date": a.Date.String(), "job": a.Job, "did": string(a.Did), "note": a.Note}
	if a.Did == record.PutOff && a.Until > cal.Date(0) {
		cells["until"] = a.Until.String()
	}
	if a.Minutes > 0 {
		cells["minutes"] = areaCell(a.Minutes)
	}
	return cells
}

// job is a job of the days ahead by its id; nil when it is not among them.
func (o *Office) job(id string) (*jobs.Job, error) {
	w, err := o.weekWork(JobsOptions{}, jobs.MayBeWater(id))
	if err != nil {
		return nil, err
	}
	for _, days := range answerAhead {
		all, err := w.derive(w.setting.Today + days)
		if err != nil {
			return nil, err
		}
		if at := slices.IndexFunc(all, func(j jobs.Job) bool { return j.ID == id }); at >= 0 {
			return &all[at], nil
		}
	}
	return nil, nil
}

// doing readies an entry about a job; nil: about none that is known.
func (o *Office) doing(j *jobs.Job) (*lossWork, error) {
	if j != nil && j.Planting != "" {
		return o.working(j.Planting)
	}
	h, err := o.Holding()
	if err != nil {
		return nil, err
	}
	w := &lossWork{office: o, holding: h, taken: map[string]map[string]bool{}}
	w.names, err = o.naming()
	return w, err
}

// did adds the records of a job that was done on a day.
func (w *lossWork) did(j *jobs.Job, on cal.Date, as DoneAs) error {
	switch j.Kind {
	case jobs.Sow, jobs.Set, jobs.PlantOut, jobs.SowGreen:
		return w.wrote(record.Planted, j, on, 0, "")
	case jobs.SowIndoors:
		return w.wrote(record.Raised, j, on, 0, "")
	case jobs.PrickOut:
		return w.wrote(record.Pricked, j, on, 0, "")
	case jobs.Replant:
		return w.replanted(j, on)
	case jobs.Pick, jobs.Lift:
		return w.picked(j, on, as)
	case jobs.Clear, jobs.CutGreen:
		return w.wrote(record.Cleared, j, on, 0, "")
	case jobs.Cover, jobs.Net, jobs.Uncover:
		return w.covered(j, on)
	case jobs.Count:
		if as.Kg > 0 { // nobody knows what lies there but who counted it
			return w.wrote(record.Counted, j, on, as.Kg, "kg")
		}
	case jobs.Lime:
		return w.wrote(record.Limed, j, on, toldOr(as.Kg, j.Amount.Kg), "kg")
	default:
		if what, ok := poured[j.Kind]; ok {
			return w.wrote(what, j, on, toldOr(as.Litres, j.Amount.Litres), "L")
		}
	}
	return nil
}

// poured are the kinds of work whose records tell litres.
var poured = map[jobs.Kind]record.What{jobs.Water: record.Watered, jobs.Feed: record.Fed, jobs.Compost: record.Composted,
	jobs.Mulch: record.Mulched}

// TellsKg tells whether what was done may be told in kilograms.
func (l *JobLine) TellsKg() bool {
	return l.TellsStore() || l.Kind == jobs.Lime || l.Kind == jobs.Count
}

// TellsLitres tells whether what was done may be told in litres.
func (l *JobLine) TellsLitres() bool {
	_, ok := poured[l.Kind]
	return ok
}

// TellsStore tells whether what was done may have gone into a store.
func (l *JobLine) TellsStore() bool { return l.Kind == jobs.Pick || l.Kind == jobs.Lift }

// toldOr is the first of two amounts that is told.
func toldOr(told, proposed float64) float64 {
	if told > 0 {
		return told
	}
	return proposed
}

// wrote adds a record of a job, with its amount where there is one.
func (w *lossWork) wrote(what record.What, j *jobs.Job, on cal.Date, value float64, unit string) error {
	cells := map[string]string{"date": on.String(), "what": string(what), "planting": j.Planting, "bed": j.Stop.Bed}
	if what == record.Counted {
		cells["store"] = j.Store
	}
	if value > 0 {
		cells["value"], cells["unit"] = numberCell(value), unit
	}
	return w.add("records", cells)
}

// replanted records that a planting was lifted and stands elsewhere.
func (w *lossWork) replanted(j *jobs.Job, on cal.Date) error {
	source := w.planting.To
	gone := slices.ContainsFunc(w.holding.Records, func(r record.Record) bool { return r.Planting == source && r.What == record.Moved })
	if w.planting.Relation == plan.Moved && source != "" && !gone {
		if err := w.add("records", map[string]string{"date": on.String(), "what": string(record.Moved), "planting": source}); err != nil {
			return err
		}
	}
	return w.wrote(record.Planted, j, on, 0, "")
}

// picked records a pick, or the lifting of a planting with its batch.
func (w *lossWork) picked(j *jobs.Job, on cal.Date, as DoneAs) error {
	p := Pick{Planting: j.Planting, On: on, Kg: toldOr(as.Kg, j.Amount.Kg), Store: as.Store, StoredKg: as.StoredKg, All: j.Kind == jobs.Lift}
	if p.All && p.Store == "" && w.keeps(j.Store) {
		p.Store = j.Store
	}
	if faults := w.pickFaults(p); len(faults) > 0 {
		return faults
	}
	return w.pick(p)
}

// covered records that a cover went on or came off; of one that the plan has the spell
// begins or ends on the day on which it really did.
func (w *lossWork) covered(j *jobs.Job, on cal.Date) error {
	if err := w.wrote(record.Covered, j, on, 0, ""); err != nil || j.Cover == "" {
		return err
	}
	column := "on"
	if j.Kind == jobs.Uncover {
		column = "off"
	}
	rows, columns := w.names.rows["covers"], exchange.Columns("covers")
	at := slices.IndexFunc(rows, func(r KeptRow) bool { return r.ID == j.Cover })
	if at < 0 || !w.spellFits(j.Cover, column, on) {
		return nil
	}
	after := slices.Clone(rows[at].Row)
	after[slices.Index(columns, column)] = on.String()
	if !slices.Equal(after, rows[at].Row) {
		w.changes = append(w.changes, journal.Change{Table: "covers", ID: j.Cover, Before: rows[at].Row, After: after, Place: rows[at].Place})
	}
	return nil
}

// spellFits tells whether a spell that begins or ends on a day is one still, and clear of
// the others over its bed.
func (w *lossWork) spellFits(id, column string, on cal.Date) bool {
	at := slices.IndexFunc(w.holding.Covers, func(c place.CoverSpell) bool { return c.ID == id })
	if at < 0 {
		return false
	}
	s := w.holding.Covers[at]
	if column == "on" {
		s.On = on
	} else {
		s.Off = on
	}
	if s.Off.IsSet() && s.On >= s.Off {
		return false
	}
	return !slices.ContainsFunc(w.holding.Covers, func(o place.CoverSpell) bool {
		return o.ID != id && o.Bed == s.Bed && (!s.Off.IsSet() || o.On < s.Off) && (!o.Off.IsSet() || s.On < o.Off)
	})
}
