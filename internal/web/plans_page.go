package web

import (
	"net/url"

	"garner/internal/desk"
)

// plansRoutes names the pages of the plans as wholes.
func (s *Server) plansRoutes(mux *router) {
	mux.Handle("GET /plans", s.atHome(plansPage))
	mux.Handle("GET /plans/compare", s.atHome(comparePage))
	mux.Handle("GET /plans/next", s.atHome(carryPage))
	mux.Handle("POST /plans/next", s.atHome(keepCarried))
	mux.Handle("POST /plans/force", s.atHome(putInForce))
}

// plansBody is the page of the plans.
type plansBody struct {
	Lines []planLine
}

// planLine is one plan.
type planLine struct {
	Name, Base string // Base empty: a plan of its own
	InForce    bool
	Sowings    int
	Compare    string // address of it beside the plan in force; empty for that plan itself
	Hidden     []hiddenField
}

// plansPage lists the plans and drafts.
func plansPage(v *visit) error {
	view, err := v.office.PlansView()
	if err != nil {
		return err
	}
	b := plansBody{}
	for _, p := range view.Plans {
		l := planLine{Name: p.Name, Base: p.BaseName, InForce: p.ID == view.InForce, Sowings: p.Sowings}
		if !l.InForce && view.InForce != "" {
			l.Compare = comparePath(view.InForce, p.ID)
		}
		entry, err := v.entry()
		if err != nil {
			return err
		}
		l.Hidden = []hiddenField{{"plan", p.ID}, {"entry", entry}}
		b.Lines = append(b.Lines, l)
	}
	return v.show(page{Name: "plans", Nav: "plans", Body: &b})
}

// comparePath is the page of two plans side by side.
func comparePath(a, b string) string {
	return "/plans/compare?" + url.Values{"a": {a}, "b": {b}}.Encode()
}

// otherPlan is the plan to set beside the one in force when none is named: the last
// one written.
func otherPlan(view *desk.PlansView) string {
	for i := len(view.Plans) - 1; i >= 0; i-- {
		if view.Plans[i].ID != view.InForce {
			return view.Plans[i].ID
		}
	}
	return ""
}
