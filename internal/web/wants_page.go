package web

import (
	"math"
	"slices"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/holding"
	"garner/internal/larder"
	"garner/internal/words"
)

// visitForm is a span with guests, or with some away.
var visitForm = rowForm{
	table: "visits", nav: "wants", after: to("/wants"),
	fields: []fieldForm{{name: "from"}, {name: "to"}, {name: "eaters"}, {name: "note", wide: true}},
}

// wantsRoutes names the pages of what hangs on the wants.
func (s *Server) wantsRoutes(mux *router) {
	s.mountRows(mux, &leftForm)
	s.mountRows(mux, &purchaseForm)
	s.mountRows(mux, &visitForm)
	s.mountRows(mux, &groupForm)
	s.mountRows(mux, &memberForm)
}

// wantWords say how much of a vegetable is wanted when, how much is held to it,
// and what of it may be bought.
func wantWords(w *larder.Want) words.Phrase {
	amount := words.P("web.want_kg", words.Args{"kg": w.KgPerWeek})
	if w.PortionsPerEater > 0 {
		amount = words.P("web.want_portions", words.Args{"n": w.PortionsPerEater})
	}
	says := words.P("web.want_all_year", words.Args{"amount": amount})
	if w.From != (cal.MonthDay{}) {
		says = words.P("web.want_season", words.Args{"amount": amount, "from": w.From, "to": w.To})
	}
	if w.Importance != "" {
		says = words.P("web.want_held", words.Args{"says": says, "importance": words.P("desk.value_wants.importance."+string(w.Importance), nil)})
	}
	if w.BuyKgPerWeek > 0 {
		says = words.P("web.want_buys", words.Args{"says": says, "kg": w.BuyKgPerWeek})
	}
	return says
}

// visitLines are the guests and absences of a holding, each with the page that
// changes it.
func visitLines(h *holding.Holding) []rowLine {
	var out []rowLine
	for _, visit := range h.Visits {
		key := "web.visit_more"
		if visit.Eaters < 0 {
			key = "web.visit_fewer"
		}
		says := words.P(key, words.Args{"n": math.Abs(visit.Eaters), "first": visit.From, "last": visit.To})
		line := rowLine{Name: visit.Note, Path: rowPath(&visitForm, visit.ID) + "/edit", Says: says}
		if line.Name == "" {
			line.Name = visit.From.String()
		}
		out = append(out, line)
	}
	return out
}

// heldWords say how much is held to a vegetable and what of it is bought.
func (v *visit) heldWords(r *desk.RibbonView) []string {
	var out []string
	switch r.Held {
	case larder.Floor:
		out = append(out, v.say("web.vegetable_floor", nil))
	case larder.Nice:
		out = append(out, v.say("web.vegetable_nice", nil))
	}
	if r.BoughtKg > 0 {
		out = append(out, v.say("web.vegetable_bought", words.Args{"kg": r.BoughtKg}))
	}
	return out
}

// barrenWords say why no bed can grow a vegetable. What is eaten out of the ground can be
// grown, and is not asked about.
func (v *visit) barrenWords(view *desk.VegetableView) ([]string, error) {
	for i := range view.Sources {
		if slices.ContainsFunc(view.Sources[i].FreshKg, func(kg float64) bool { return kg > 0 }) {
			return nil, nil
		}
	}
	found, there, err := v.office.BarrenWithin(barrenPatience)
	if err != nil {
		return nil, err
	}
	if !there {
		return []string{v.say("web.barren_coming", nil)}, nil
	}
	for _, b := range found {
		if b.Vegetable == view.Name {
			return []string{v.sentence(b.Phrase())}, nil
		}
	}
	return nil, nil
}
