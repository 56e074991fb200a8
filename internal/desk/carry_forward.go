package desk

import (
	"garner/internal/cal"
	"garner/internal/carry"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/plan"
	"garner/internal/space"
	"garner/internal/words"
)

// CarryOptions say what is left out of what is carried to the next year, and which
// beds are told, by planting of this year.
type CarryOptions struct {
	Leave map[string]bool
	Into  map[string]string
}

// CarryView is next year, made from this one. Nothing of it is written.
type CarryView struct {
	Holding string
	Today   cal.Date
	*carry.Result
	Base  plan.Plan // the plan in force, over which it would be a draft
	Draft plan.Plan
	Lead  []words.Phrase // how much is carried, in sentences
	Lines []CarryLine
	Wrong []CarryTrouble
	Out   []CarryLeft // left out, as told
}

// CarryLine is a sowing of next year in names.
type CarryLine struct {
	carry.Carried
	Name, BedName, FromBedName string
}

// CarryTrouble is what clashes or went wrong, in words.
type CarryTrouble struct {
	carry.Trouble
	Says   words.Phrase
	Beds   []string // names of the other beds, in the order of Others
	Sowing bool     // it is about a sowing, which can be left out
}

// CarryLeft is a planting of this year that is left out.
type CarryLeft struct{ Planting, Name string }

// CarryForward makes next year from this one.
func CarryForward(h *holding.Holding, o CarryOptions) (*CarryView, error) {
	s, err := settingOf(h, OutlookOptions{Seed: pageSeed})
	if err != nil {
		return nil, err
	}
	t, err := outlook.Compute(s, memory())
	if err != nil {
		return nil, err
	}
	g, err := space.Of(t, h, s.Book, s.Today)
	if err != nil {
		return nil, err
	}
	return carryView(&asked{holding: h, setting: s}, g, o)
}

// CarryView makes next year from this one, for a page.
func (o *Office) CarryView(options CarryOptions) (*CarryView, error) {
	a, g, err := o.askSpace(nil)
	if err != nil {
		return nil, err
	}
	return carryView(a, g, options)
}

func carryView(a *asked, g *space.Ground, o CarryOptions) (*CarryView, error) {
	h := a.holding
	base, err := planInForce(h)
	if err != nil {
		return nil, err
	}
	plantings, faults := plan.Resolve(h.Plans, h.Plantings, h.Changes, h.Plan)
	if len(faults) > 0 {
		return nil, faults
	}
	if err := known(h, plantings, o); err != nil {
		return nil, err
	}
	s := carry.Setting{Book: a.setting.Book, Sites: h.Sites, Beds: h.Beds, Covers: h.Covers, Plantings: plantings, Records: h.Records, Today: a.setting.Today,
		Draft: "next", Taken: plantingIDs(h), Over: goneOn(g), Leave: o.Leave, Into: o.Into}
	r, err := carry.Of(s)
	if err != nil {
		return nil, err
	}
	v := &CarryView{Holding: h.Name, Today: a.setting.Today, Result: r, Base: base, Draft: draftOver(h, r.Next)}
	for i := range r.Sowings {
		r.Sowings[i].Plan = v.Draft.ID
	}
	v.name(newNamer(a))
	return v, nil
}

// known refuses plantings and beds that are not there.
func known(h *holding.Holding, plantings []plan.Planting, o CarryOptions) error {
	there, beds := map[string]bool{}, map[string]bool{}
	for i := range plantings {
		there[plantings[i].ID] = true
	}
	for _, b := range h.Beds {
		beds[b.ID] = true
	}
	for id := range o.Leave {
		if !there[id] {
			return noRow("plantings", id)
		}
	}
	for id, bed := range o.Into {
		if !there[id] {
			return noRow("plantings", id)
		}
		if !beds[bed] {
			return fault.New(fault.NotFound, "desk.bed_unknown", words.Args{"given": bed})
		}
	}
	return nil
}

func planInForce(h *holding.Holding) (plan.Plan, error) {
	for _, p := range h.Plans {
		if p.ID == h.Plan && h.Plan != "" {
			return p, nil
		}
	}
	return plan.Plan{}, fault.New(fault.NotFound, "desk.no_plan", nil)
}

// draftOver is a new draft over the plan in force, named for a year.
func draftOver(h *holding.Holding, year string) plan.Plan {
	taken := map[string]bool{}
	names := map[string]bool{}
	for _, p := range h.Plans {
		taken[p.ID], names[p.Name] = true, true
	}
	return plan.Plan{ID: plain(slug(year), taken), Name: plain(year, names), Base: h.Plan}
}

// plantingIDs are the ids of all plantings, those that drafts add with them.
func plantingIDs(h *holding.Holding) map[string]bool {
	taken := map[string]bool{}
	for i := range h.Plantings {
		taken[h.Plantings[i].ID] = true
	}
	for _, c := range h.Changes {
		taken[c.Planting] = true
	}
	return taken
}

// goneOn tells when a planting is gone in the middle year, the last part of it.
func goneOn(g *space.Ground) func(string) cal.Date {
	gone := map[string]cal.Date{}
	for i := range g.Beds {
		for _, hold := range g.Beds[i].Holds {
			if at, ok := gone[hold.Planting]; !ok || hold.Clear.P50 > at {
				gone[hold.Planting] = hold.Clear.P50
			}
		}
	}
	return func(id string) cal.Date {
		if at, ok := gone[id]; ok {
			return at
		}
		return cal.None
	}
}
