package desk

import (
	"garner/internal/cal"
	"garner/internal/outlook"
	"garner/internal/record"
)

// JobsView tells what is to be done in the household. Costs are weighed only when they
// are asked for, or hours limit the list.
func (o *Office) JobsView(ask JobsOptions) (*JobsView, error) {
	a, err := o.ask(nil)
	if err != nil {
		return nil, err
	}
	t, err := o.table(a)
	if err != nil {
		return nil, err
	}
	var scales *outlook.Scales
	if ask.Costs || ask.Hours > 0 {
		o.computing.Lock()
		defer o.computing.Unlock()
		if scales, err = outlook.NewScales(a.setting, o.memory); err != nil {
			return nil, err
		}
	}
	return jobsView(a, t, scales, ask)
}

// AnswerJob keeps what became of a job. It is one entry. An answer without a day is of
// today.
func (o *Office) AnswerJob(by Author, a record.Answer) (*KeptEntry, error) {
	if !a.Date.IsSet() || a.Date == 0 {
		now, err := o.Today()
		if err != nil {
			return nil, err
		}
		a.Date = now
	}
	cells := map[string]string{"date": a.Date.String(), "job": a.Job, "did": string(a.Did), "note": a.Note}
	if a.Did == record.PutOff && a.Until > cal.Date(0) {
		cells["until"] = a.Until.String()
	}
	if a.Minutes > 0 {
		cells["minutes"] = areaCell(a.Minutes)
	}
	return o.Save(by, "job_answers", "", cells, 0)
}
