package desk

import (
	"strings"

	"garner/internal/cal"
	"garner/internal/compare"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/near"
	"garner/internal/outlook"
	"garner/internal/plan"
	"garner/internal/space"
	"garner/internal/words"
)

// ComparePlans are the ids or names of the two plans, and which tables are wanted.
type ComparePlans struct {
	A, B string
	OutlookOptions
}

// Compare sets two plans of a holding side by side.
func Compare(h *holding.Holding, o ComparePlans) (*CompareView, error) {
	a, b, err := twoPlans(h, o.A, o.B)
	if err != nil {
		return nil, err
	}
	var sides [2]planSide
	for i, p := range []plan.Plan{a, b} {
		if sides[i], err = sideOf(h, p, o.OutlookOptions, memory()); err != nil {
			return nil, err
		}
	}
	return compareView(h, &sides[0], &sides[1])
}

// CompareView sets two plans side by side, by their ids or names.
func (o *Office) CompareView(first, second string) (*CompareView, error) {
	h, version, err := o.standing()
	if err != nil {
		return nil, err
	}
	a, b, err := twoPlans(h, first, second)
	if err != nil {
		return nil, err
	}
	now, err := today(h)
	if err != nil {
		return nil, err
	}
	key := (&asked{version: version, sky: o.fetching.revision.Load(), setting: outlook.Setting{Today: now}}).answer("compare plans")
	key.Text(a.ID)
	key.Text(b.ID)
	if v, known := o.views.compared.get(key.Sum()); known {
		return v, nil
	}
	o.computing.Lock()
	defer o.computing.Unlock()
	var sides [2]planSide
	for i, p := range []plan.Plan{a, b} {
		if sides[i], err = sideOf(h, p, OutlookOptions{Seed: pageSeed}, o.memory); err != nil {
			return nil, err
		}
	}
	v, err := compareView(h, &sides[0], &sides[1])
	if err == nil {
		o.views.compared.keep(key.Sum(), v)
	}
	return v, err
}

// planSide is one plan with all that is computed of it.
type planSide struct {
	plan plan.Plan
	asked
	compare.Side
}

// sideOf computes a holding as if the plan were in force.
func sideOf(h *holding.Holding, p plan.Plan, o OutlookOptions, m *outlook.Memory) (planSide, error) {
	own := *h
	own.Plan = p.ID
	s, err := settingOf(&own, o)
	if err != nil {
		return planSide{}, err
	}
	t, err := outlook.Compute(s, m)
	if err != nil {
		return planSide{}, err
	}
	g, err := space.Of(t, &own, s.Book, s.Today)
	if err != nil {
		return planSide{}, err
	}
	water, err := askedMM(&own, m)
	return planSide{p, asked{holding: &own, setting: s}, compare.Side{Table: t, Ground: g, Stores: h.Stores, AskedMM: water}}, err
}

// twoPlans finds two plans by their ids or names.
func twoPlans(h *holding.Holding, a, b string) (first, second plan.Plan, err error) {
	if first, err = namedPlan(h, a); err != nil {
		return first, second, err
	}
	second, err = namedPlan(h, b)
	return first, second, err
}

// namedPlan finds a plan by its id, else by its name; a name that several plans have
// is refused.
func namedPlan(h *holding.Holding, name string) (plan.Plan, error) {
	var found []plan.Plan
	var names []string
	for _, p := range h.Plans {
		if p.ID == name {
			return p, nil
		}
		if strings.EqualFold(p.ID, name) || strings.EqualFold(p.Name, name) {
			found = append(found, p)
		}
		names = append(names, p.ID, p.Name)
	}
	switch {
	case len(found) == 1:
		return found[0], nil
	case len(found) > 1:
		return plan.Plan{}, fault.New(fault.Conflict, "desk.plan_named_twice", words.Args{"given": name, "ids": []string{found[0].ID, found[1].ID}})
	case len(h.Plans) == 0:
		return plan.Plan{}, fault.New(fault.NotFound, "desk.no_plan", nil)
	}
	if meant := near.Names(name, names, 1); len(meant) > 0 {
		return plan.Plan{}, fault.New(fault.NotFound, "desk.plan_unknown_meant", words.Args{"given": name, "meant": meant[0]})
	}
	return plan.Plan{}, fault.New(fault.NotFound, "desk.plan_unknown", words.Args{"given": name, "plans": planIDs(h)})
}

func planIDs(h *holding.Holding) []string {
	ids := make([]string, len(h.Plans))
	for i, p := range h.Plans {
		ids[i] = p.ID
	}
	return ids
}

// CompareView is two plans side by side.
type CompareView struct {
	Holding     string
	A, B        plan.Plan
	Today, From cal.Date
	Weeks       int
	Seed        uint64
	*compare.Comparison
	RibbonsA map[string]RibbonView // by vegetable
	RibbonsB map[string]RibbonView
	Plurals  map[string]string
	Lead     []words.Phrase // what differs on the whole, in sentences
	Differs  []Difference   // vegetables that differ, the greatest difference first
}

// Difference is what differs of one vegetable, in words.
type Difference struct {
	Vegetable string
	Says      words.Phrase // with its name
	Bare      words.Phrase // without
}

func compareView(h *holding.Holding, a, b *planSide) (*CompareView, error) {
	c, err := compare.Of(a.Side, b.Side)
	if err != nil {
		return nil, err
	}
	v := &CompareView{Holding: h.Name, A: a.plan, B: b.plan, Today: a.setting.Today, From: c.From, Weeks: c.Weeks, Seed: a.Table.Seed, Comparison: c,
		RibbonsA: a.ribbons(), RibbonsB: b.ribbons(), Plurals: map[string]string{}}
	for i := range c.Vegetables {
		name := c.Vegetables[i].Name
		v.Plurals[name] = vegetablePlural(a.setting.Book, name)
	}
	v.tell()
	return v, nil
}

// ribbons are the vegetables of a plan as ribbons, by name.
func (s *planSide) ribbons() map[string]RibbonView {
	out := map[string]RibbonView{}
	for i := range s.Table.Vegetables {
		w := s.Table.Weekly(i, true)
		out[w.Name] = ribbonView(&s.asked, s.Table, i, &w)
	}
	return out
}

// CompareCourse and CompareSum are what is told of each plan.
type (
	CompareCourse = compare.Course
	CompareSum    = compare.Sum
)
