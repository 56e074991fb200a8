package desk

import (
	"garner/internal/cal"
	"garner/internal/num"
	"garner/internal/outlook"
	"garner/internal/record"
	"garner/internal/watering"
)

// JobsView tells what is to be done in the household. Costs are weighed only when they
// are asked for, or hours limit the list.
func (o *Office) JobsView(ask JobsOptions) (*JobsView, error) {
	if ask.Days == 0 {
		ask.Days = aWeekOfJobs
	}
	w, err := o.weekWork(ask, true)
	if err != nil {
		return nil, err
	}
	return w.view()
}

// weekWork gathers what jobs are derived from, with what the beds want where it is asked
// for. Of 0 days asked for they may be derived as far ahead as is liked.
func (o *Office) weekWork(ask JobsOptions, watered bool) (*weekWork, error) {
	a, err := o.ask(nil)
	if err != nil {
		return nil, err
	}
	w := &weekWork{asked: a, ask: ask, memory: o.memory, lastDays: o.views.lastDays}
	if ask.Days > 0 && !ask.weighs() {
		w.table, err = o.tableAhead(a, a.setting.Today+cal.Date(ask.Days))
	} else {
		w.table, err = o.table(a)
	}
	if err != nil {
		return nil, err
	}
	if watered {
		if w.thirst, err = o.thirst(a); err != nil {
			return nil, err
		}
	}
	if ask.weighs() {
		o.computing.Lock()
		defer o.computing.Unlock()
		w.scales, err = outlook.NewScales(a.setting, o.memory)
	}
	return w, err
}

// thirst is what the beds want, worked out once for all that it hangs on: the table, the
// ground and what was watered.
func (o *Office) thirst(a *asked) ([]watering.Bed, error) {
	key := thirstKey(a)
	if known, ok := o.views.thirst.get(key); ok {
		return known, nil
	}
	beds, _, err := watering.Of(a.setting, o.memory, nil)
	if err == nil {
		o.views.thirst.keep(key, beds)
	}
	return beds, err
}

func thirstKey(a *asked) num.Digest {
	d := num.NewDigester("water for the week")
	d.Digest(a.name)
	d.Int(int64(a.setting.Today))
	for i := range a.holding.Beds {
		b := &a.holding.Beds[i]
		for _, text := range []string{b.ID, b.Kind, b.Texture} {
			d.Text(text)
		}
		d.Float(b.LengthM)
		d.Float(b.WidthM)
	}
	for i := range a.holding.Records {
		if r := &a.holding.Records[i]; r.What == record.Watered {
			d.Text(r.Bed)
			d.Text(r.Planting)
			d.Int(int64(r.Date))
			d.Float(r.Value)
		}
	}
	return d.Sum()
}

// AnswerJob keeps what became of a job, done as it was proposed. It is one entry. An
// answer without a day is of today.
func (o *Office) AnswerJob(by Author, a record.Answer) (*KeptEntry, error) {
	return o.DoneJob(by, a, DoneAs{})
}
