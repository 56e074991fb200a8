package web

import (
	"garner/internal/holding"
)

// rowForm says which columns of a table are asked for, in which order, and where
// the form leads. What a column is, its label, unit and choices, is the desk's.
type rowForm struct {
	table  string
	nav    string
	fields []fieldForm
	// carried are columns that are not asked for and stay as the page gave them.
	carried []string
	// fixed gives what is not asked of a new row.
	fixed func(h *holding.Holding) map[string]string
	// fit keeps columns in step with those that were changed, given the row as it stands.
	fit func(row, cells map[string]string)
	// only tells that the table has one row, which is neither added nor removed.
	only bool
	// after is where to go once a row was written or left.
	after func(v *visit, cells map[string]string) string
}

// fieldForm is one field: a column, or columns that are asked for together.
type fieldForm struct {
	name    string   // of the column, or of the field that stands for several
	columns []string // those it stands for; none: the one of its name
	more    bool     // asked for behind "more"
	wide    bool     // takes the whole width of the form
	choices func(c *choosing) ([]option, error)
}

// plantingForm is in the order in which a grower tells of a planting.
var plantingForm = rowForm{
	table: "plantings", nav: "plantings", after: afterPlanting,
	fields: []fieldForm{
		{name: "grown", columns: []string{"crop", "use"}, wide: true, choices: grownChoices},
		{name: "bed", wide: true, choices: bedChoices},
		{name: "date"},
		{name: "date_within_d", choices: widthChoices},
		{name: "area_m2"},
		{name: "area_within", choices: shareChoices},
		{name: "method", wide: true},
		{name: "variety", choices: varietyChoices},
		{name: "store"},
		{name: "clear_by", more: true},
		{name: "relation", more: true},
		{name: "to", more: true, choices: otherPlantings},
		{name: "years_old", more: true},
		{name: "stock", more: true},
		{name: "seed_plants", more: true},
	},
	fixed: func(h *holding.Holding) map[string]string { return map[string]string{"plan": h.Plan} },
}

var bedForm = rowForm{
	table: "beds", nav: "ground", after: to("/beds"), fit: fitOutline,
	fields: []fieldForm{
		{name: "name", wide: true}, {name: "length_m"}, {name: "width_m"}, {name: "kind", wide: true}, {name: "site"},
		{name: "light_share", more: true}, {name: "soil", more: true}, {name: "texture", more: true}, {name: "ph", more: true}, {name: "water", more: true},
		{name: "rotation", more: true}, {name: "turn_round_d", more: true}, {name: "order", more: true},
	},
}

var coverForm = rowForm{
	table: "covers", nav: "ground", after: afterCover, carried: []string{"bed"},
	fields: []fieldForm{{name: "kind", wide: true}, {name: "on"}, {name: "off"}, {name: "sides"}, {name: "mesh_mm"}},
}

var wantForm = rowForm{
	table: "wants", nav: "wants", after: to("/wants"),
	fields: []fieldForm{{name: "vegetable", wide: true, choices: vegetableOrGroup}, {name: "kg_per_week"}, {name: "portions_per_eater"}, {name: "from"}, {name: "to"},
		{name: "group", more: true}, {name: "importance", more: true}, {name: "buy_kg_per_week", more: true}},
}

var storeForm = rowForm{
	table: "stores", nav: "stores", after: to("/stores"),
	fields: []fieldForm{{name: "name", wide: true}, {name: "method", wide: true}, {name: "capacity_kg", wide: true}, {name: "winter_c"}, {name: "summer_c"},
		{name: "litres", more: true}, {name: "jars", more: true}, {name: "place", more: true}, {name: "humidity", more: true}},
}

// numberForm gives a number of the crop book the grower's own value: which number
// it is, is carried along.
var numberForm = rowForm{
	table: "crops", nav: "crops", after: afterNumber, carried: []string{"crop", "use", "parameter", "unit"},
	fields: []fieldForm{{name: "value"}, {name: "source", wide: true}},
}

// to leads to a list.
func to(path string) func(*visit, map[string]string) string {
	return func(*visit, map[string]string) string { return path }
}

// afterPlanting leads back to where the form was opened, else to the list.
func afterPlanting(v *visit, _ map[string]string) string { return v.back("/plantings") }

// afterCover leads to the bed that the cover is over.
func afterCover(_ *visit, cells map[string]string) string {
	if cells["bed"] == "" {
		return "/beds"
	}
	return bedPath(cells["bed"])
}

// afterNumber leads to the crop whose number it is.
func afterNumber(_ *visit, cells map[string]string) string {
	if cells["crop"] == "" {
		return "/crops"
	}
	return cropPath(cells["crop"], cells["use"])
}
