package desk

import (
	"math"
	"slices"

	"garner/internal/cal"
	"garner/internal/jobs"
	"garner/internal/outlook"
	"garner/internal/words"
)

// PutOffCost is what it costs to put a job off until a day: what is short more at the
// whole table, or of a pick what goes past its best in a week.
type PutOffCost struct {
	Job   string
	Until cal.Date
	Says  words.Phrase
}

// mostLater is how much later a job can be weighed [d].
const mostLater = 120

// PutOffCost weighs one job of the list that was asked for; nil where it is not there.
func (o *Office) PutOffCost(ask JobsOptions, id string, until cal.Date) (*PutOffCost, error) {
	w, err := o.WeekView(ask)
	if err != nil {
		return nil, err
	}
	all := append(w.Lines(), w.Dropped...)
	at := slices.IndexFunc(all, func(l JobLine) bool { return l.ID == id })
	if at < 0 {
		return nil, nil
	}
	j := all[at].Job
	c := &PutOffCost{Job: id, Until: until}
	later := until - j.Due(w.Today)
	if later <= 0 || later > mostLater {
		c.Says = words.P("desk.put_off_days", words.Args{"from": j.Due(w.Today) + 1, "to": j.Due(w.Today) + mostLater})
		return c, nil
	}
	if err := o.weighOne(&j, until); err != nil {
		return nil, err
	}
	c.Says = putOffSays(&j, until)
	return c, nil
}

// weighOne weighs a job that is done on a later day.
func (o *Office) weighOne(j *jobs.Job, until cal.Date) error {
	j.Weighed, j.CostKg = false, 0
	one := []jobs.Job{*j}
	a, err := o.askKnown()
	if err != nil {
		return err
	}
	o.computing.Lock()
	defer o.computing.Unlock()
	scales, err := outlook.NewScales(a.setting, o.memory)
	if err != nil {
		return err
	}
	err = jobs.WeighBy(scales, one, until-j.Due(a.setting.Today))
	*j = one[0]
	return err
}

func putOffSays(j *jobs.Job, until cal.Date) words.Phrase {
	args := words.Args{"kg": math.Abs(j.CostKg), "until": until, "spoils": j.SpoilKg}
	switch {
	case !j.Weighed && j.SpoilKg >= worthTelling:
		return words.P("desk.put_off_spoils", args)
	case !j.Weighed && until > j.Last:
		return words.P("desk.put_off_past", words.Args{"last": j.Last})
	case !j.Weighed:
		return words.P("desk.put_off_unweighed", nil)
	case j.CostKg >= worthTelling:
		return words.P("desk.put_off_costs", args)
	case j.CostKg <= -worthTelling:
		return words.P("desk.put_off_gains", args)
	}
	return words.P("desk.put_off_free", args)
}
