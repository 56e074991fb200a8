package web

import (
	"cmp"
	"strings"

	"garner/internal/desk"
	"garner/internal/fault"
)

// siteForm is a site with its place on earth and the size of its plan.
var siteForm = rowForm{
	table: "sites", nav: "ground", after: afterSite,
	fields: []fieldForm{
		{name: "name", wide: true}, {name: "plan_width_m"}, {name: "plan_depth_m"}, {name: "up_deg"},
		{name: "latitude_deg"}, {name: "longitude_deg"}, {name: "elevation_m"}, {name: "weather", choices: weatherChoices},
		{name: "not_allowed", wide: true, several: true, choices: siteRules},
	},
}

// siteRules are what a site may forbid.
func siteRules(c *choosing) ([]option, error) {
	var out []option
	for _, rule := range desk.SiteRules() {
		out = append(out, option{rule, c.say("web.rule_"+rule, nil)})
	}
	return out, nil
}

// featureForm is what stands on a site beside its beds.
var featureForm = rowForm{
	table: "features", nav: "ground", after: afterFeature,
	fields: []fieldForm{
		{name: "name", wide: true}, {name: "kind", wide: true}, {name: "site"}, {name: "height_m"},
		{name: "length_m"}, {name: "width_m"}, {name: "x_m"}, {name: "y_m"}, {name: "turn_deg"},
		{name: "base_m", more: true}, {name: "leaf_on", more: true}, {name: "leaf_off", more: true},
		{name: "through_leaf", more: true}, {name: "through_bare", more: true},
	},
}

// The forms beside a drawing: what of a thing is drawn.
var (
	drawnSiteForm = rowForm{table: "sites", fields: []fieldForm{{name: "plan_width_m"}, {name: "plan_depth_m"}, {name: "up_deg", wide: true}}}

	drawnBedForm = rowForm{table: "beds", fields: []fieldForm{
		{name: "name", wide: true}, {name: "length_m"}, {name: "width_m"}, {name: "x_m"}, {name: "y_m"},
		{name: "turn_deg"}, {name: "shape", choices: shapeChoices}, {name: "outline", wide: true, more: true},
	}}

	drawnFeatureForm = rowForm{table: "features", fields: []fieldForm{
		{name: "name", wide: true}, {name: "kind", wide: true}, {name: "length_m"}, {name: "width_m"}, {name: "x_m"}, {name: "y_m"},
		{name: "turn_deg"}, {name: "height_m"},
		{name: "base_m", more: true}, {name: "leaf_on", more: true}, {name: "leaf_off", more: true},
		{name: "through_leaf", more: true}, {name: "through_bare", more: true},
	}}
)

// drawnForm is the form beside the drawing for a table.
func drawnForm(table string) (*rowForm, error) {
	switch table {
	case "sites":
		return &drawnSiteForm, nil
	case "beds":
		return &drawnBedForm, nil
	case "features":
		return &drawnFeatureForm, nil
	}
	return nil, fault.New(fault.NotFound, "web.draw_no_thing", nil)
}

// shapeChoices are the shapes of a bed, with the one that a blank cell stands for.
func shapeChoices(c *choosing) ([]option, error) {
	columns, err := c.columns("beds")
	if err != nil {
		return nil, err
	}
	var out []option
	for _, value := range columns["shape"].Values {
		out = append(out, option{value.Value, c.sentence(value.Meaning)})
	}
	return out, nil
}

// afterSite leads to the drawing of a site, unless it goes.
func afterSite(v *visit, cells map[string]string) string {
	if strings.HasSuffix(v.r.URL.Path, "/remove") {
		return "/beds"
	}
	return drawnAt{site: cmp.Or(v.r.PathValue("id"), cells["id"])}.path()
}

// afterFeature leads to the drawing with a feature chosen.
func afterFeature(v *visit, cells map[string]string) string {
	at := drawnAt{site: cells["site"]}
	if id := v.r.PathValue("id"); id != "" {
		at.pick = "features/" + id
	}
	return at.path()
}
