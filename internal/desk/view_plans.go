package desk

import "garner/internal/plan"

// PlansView is the plans and drafts of a holding.
type PlansView struct {
	InForce string // id; empty: none
	Plans   []PlanLine
}

// PlanLine is one plan.
type PlanLine struct {
	plan.Plan
	BaseName string
	Sowings  int // plantings it comes to, those of the plans beneath it with them
}

// PlansView returns the plans in the order of the holding.
func (o *Office) PlansView() (*PlansView, error) {
	h, err := o.Holding()
	if err != nil {
		return nil, err
	}
	v := &PlansView{InForce: h.Plan}
	names := map[string]string{}
	for _, p := range h.Plans {
		names[p.ID] = p.Name
	}
	for _, p := range h.Plans {
		resolved, faults := plan.Resolve(h.Plans, h.Plantings, h.Changes, p.ID)
		if len(faults) > 0 {
			return nil, faults
		}
		v.Plans = append(v.Plans, PlanLine{p, names[p.Base], len(resolved)})
	}
	return v, nil
}
