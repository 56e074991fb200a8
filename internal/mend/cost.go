package mend

import (
	"garner/internal/advise"
	"garner/internal/crop"
	"garner/internal/labour"
	"garner/internal/outlook"
	"garner/internal/plan"
)

// daysPerYear turns days of ground into years.
const daysPerYear = 365.25

// seedOf is the seed or plants for more of a sowing [m2].
func seedOf(u *crop.Use, p *plan.Planting, areaM2 float64) (t Takes) {
	method := p.Method
	if method == "" && len(u.Methods) > 0 {
		method = plan.Method(u.Methods[0])
	}
	t.SeedG, t.Plants = advise.Need(u, method, areaM2)
	return t
}

// weeksHeld fills in the odds of a planting that is changed, and the ground it holds
// beside what it holds already.
func (w *weighing) weeksHeld(p *Proposal, f *outlook.Fate) {
	if p.Kind == Cover || p.Kind == Store || len(f.Years) == 0 {
		return
	}
	if u := w.useOf(&p.Planting); u != nil {
		p.Odds = w.adviser.Usable(f, u, &p.Planting)
	}
	p.ground(w.adviser.Held(f, &p.Planting))
	for i := range w.adviser.Table.Plantings {
		if was := &w.adviser.Table.Plantings[i]; was.Planting == p.Was.ID {
			p.Takes.M2Weeks -= w.adviser.Held(was, &p.Was) / 7 * p.Was.AreaM2
		}
	}
	p.work()
}

// ground fills in the ground that a planting holds for so many days.
func (p *Proposal) ground(days float64) { p.Takes.M2Weeks = days / 7 * p.Planting.AreaM2 }

// work fills in the hours that ground takes.
func (p *Proposal) work() { p.Takes.WorkH = labour.Garden() * p.Takes.M2Weeks * 7 / daysPerYear }
