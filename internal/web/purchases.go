package web

import (
	"garner/internal/holding"
	"garner/internal/words"
)

// purchaseForm is a span in which something may be bought.
var purchaseForm = rowForm{
	table: "purchases", nav: "wants", after: to("/wants"),
	fields: []fieldForm{{name: "vegetable", wide: true, choices: vegetableOrGroup}, {name: "kg_per_week"}, {name: "from"}, {name: "to"}, {name: "group", more: true}},
}

// purchaseLines are the purchases of a holding, each with the page that changes it.
func purchaseLines(h *holding.Holding) []rowLine {
	var out []rowLine
	for _, p := range h.Purchases {
		out = append(out, rowLine{Name: capital(wantedName(h, p.Vegetable, p.Group)), Path: rowPath(&purchaseForm, p.ID) + "/edit",
			Says: words.P("web.purchase_says", words.Args{"kg": p.KgPerWeek, "first": p.From, "last": p.To})})
	}
	return out
}
