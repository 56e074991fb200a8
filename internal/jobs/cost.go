package jobs

import (
	"garner/internal/cal"
	"garner/internal/outlook"
	"garner/internal/plan"
)

// Weigh works out what it costs to put jobs off by a week: what is short more at the
// whole table, the difference of two full tables. Only jobs whose day the plan sets
// can be weighed: what is sown, raised, set, planted, stripped, lifted or cleared.
func Weigh(s *outlook.Scales, jobs []Job) error {
	return WeighBy(s, jobs, aWeek)
}

// WeighBy is Weigh for another number of days.
func WeighBy(s *outlook.Scales, jobs []Job, days cal.Date) error {
	var edits []outlook.Edit
	var at []int
	for i := range jobs {
		if e, ok := Later(s.Plantings(), &jobs[i], days); ok {
			edits, at = append(edits, e), append(at, i)
		}
	}
	weights, err := s.Weigh(edits)
	if err != nil {
		return err
	}
	for k, i := range at {
		jobs[i].CostKg, jobs[i].Weighed = -weights[k].DropKg, true
	}
	return nil
}

// Later is the plan with a job done so many days later: its planting begins or ends
// later, and what follows on the same ground gives way. False where the plan does not
// set the job's day.
func Later(plantings []plan.Planting, j *Job, days cal.Date) (outlook.Edit, bool) {
	p, ok := find(plantings, j.Planting)
	if !ok {
		return outlook.Edit{}, false
	}
	switch j.Kind {
	case SowIndoors, Sow, Set, PlantOut, Replant:
		return begun(p, p.Date+days), true
	case Strip:
		if j.Rule != "" || !p.StripOn.IsSet() {
			return outlook.Edit{}, false
		}
		p.StripOn += days
		return outlook.Edit{Set: []plan.Planting{p}}, true
	case Lift, Clear:
		if !p.ClearBy.IsSet() {
			return outlook.Edit{}, false
		}
		p.ClearBy += days
		e := outlook.Edit{Set: []plan.Planting{p}}
		for _, after := range plantings {
			if after.Relation == plan.After && after.To == p.ID && after.Date < p.ClearBy {
				pushed := begun(after, p.ClearBy)
				e.Set, e.Remove = append(e.Set, pushed.Set...), append(e.Remove, pushed.Remove...)
			}
		}
		return e, true
	}
	return outlook.Edit{}, false
}

// begun is a planting that begins on another day; one whose ground is wanted before
// then is not put in at all.
func begun(p plan.Planting, on cal.Date) outlook.Edit {
	if p.ClearBy.IsSet() && on >= p.ClearBy {
		return outlook.Edit{Remove: []string{p.ID}}
	}
	p.Date = on
	return outlook.Edit{Set: []plan.Planting{p}}
}

func find(plantings []plan.Planting, id string) (plan.Planting, bool) {
	for _, p := range plantings {
		if p.ID == id && id != "" {
			return p, true
		}
	}
	return plan.Planting{}, false
}
