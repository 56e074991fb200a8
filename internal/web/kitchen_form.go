package web

import (
	"garner/internal/holding"
	"garner/internal/words"
)

// kitchenForm asks for the hours that a week has for preserving.
var kitchenForm = rowForm{
	table: "holding", nav: "stores", after: to("/stores"), only: true,
	fields: []fieldForm{{name: "kitchen_h_per_week", wide: true}},
}

// mountOnly names the routes of the form of a table's only row, which is neither
// added nor removed.
func (s *Server) mountOnly(mux *router, f *rowForm) {
	base := "/" + f.table
	mux.Handle("GET "+base+"/{id}/edit", s.atHome(func(v *visit) error { return v.editRow(f, v.r.PathValue("id")) }))
	mux.Handle("POST "+base+"/{id}/edit", s.atHome(func(v *visit) error { return v.saveRow(f, v.r.PathValue("id")) }))
}

// kitchenLine tells the kitchen's hours and leads to their form.
func kitchenLine(h *holding.Holding) *rowLine {
	says := words.P("web.kitchen_unlimited", nil)
	if h.KitchenH > 0 {
		says = words.P("web.kitchen_says", words.Args{"h": h.KitchenH})
	}
	return &rowLine{Path: rowPath(&kitchenForm, h.ID) + "/edit", Says: says}
}
