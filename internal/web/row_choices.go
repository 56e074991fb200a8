package web

import (
	"cmp"
	"slices"

	"garner/internal/desk"
	"garner/internal/holding"
	"garner/internal/plan"
)

// choosing is what lists of choices are made of.
type choosing struct {
	*visit
	holding *holding.Holding
	id      string // of the row edited
}

// choicesOf are the choices of a column: its closed list, or the rows of the
// table it points to.
func (c *choosing) choicesOf(column *desk.ColumnView) ([]option, error) {
	var out []option
	if !column.Required && column.Default == "" {
		out = append(out, option{"", c.blankName(column)})
	}
	for _, value := range column.Values {
		out = append(out, option{value.Value, c.sentence(value.Meaning)})
	}
	if column.PointsTo == "" {
		return out, nil
	}
	rows, err := c.office.Rows(column.PointsTo)
	for _, r := range rows {
		name := r.Cells["name"]
		if name == "" {
			name = r.ID
		}
		out = append(out, option{r.ID, name})
	}
	return out, err
}

// blankName says what it means to choose nothing.
func (c *choosing) blankName(column *desk.ColumnView) string {
	key := "web.blank_" + column.Name
	if c.words.Has(key) {
		return c.say(key, nil)
	}
	return c.say("web.blank_any", nil)
}

// weatherChoices are the weathers there are. Leaving a site without one is not
// offered: nothing of the household can be computed then.
func weatherChoices(c *choosing) ([]option, error) {
	var out []option
	for i := range c.holding.Weather {
		out = append(out, option{c.holding.Weather[i].ID, c.holding.Weather[i].ID})
	}
	return out, nil
}

// grownChoices are all crops and their uses, as crop/use.
func grownChoices(*choosing) ([]option, error) {
	choices, err := desk.Choices()
	out := make([]option, len(choices))
	for i, g := range choices {
		out[i] = option{g.Crop + "/" + g.Use, capital(g.Label)}
	}
	slices.SortStableFunc(out, func(a, b option) int { return cmp.Compare(a.Name, b.Name) })
	return out, err
}

// vegetableChoices are the vegetables as the table counts them.
func vegetableChoices(*choosing) ([]option, error) {
	choices, err := desk.Choices()
	var out []option
	for _, g := range choices {
		if o := (option{g.Vegetable, capital(g.Vegetable)}); g.Feeds && !slices.Contains(out, o) {
			out = append(out, o)
		}
	}
	slices.SortFunc(out, func(a, b option) int { return cmp.Compare(a.Name, b.Name) })
	return out, err
}

// vegetableOrGroup are the vegetables, and none where there are groups and one is wanted.
func vegetableOrGroup(c *choosing) ([]option, error) {
	out, err := vegetableChoices(c)
	none := "web.choose"
	if len(c.holding.Groups) > 0 {
		none = "web.blank_vegetable"
	}
	return append([]option{{"", c.say(none, nil)}}, out...), err
}

func bedChoices(c *choosing) ([]option, error) {
	out := bedOptions(c.holding)
	slices.SortStableFunc(out, func(a, b option) int { return byNumbers(a.Name, b.Name) })
	return out, nil
}

// varietyChoices are the holding's own varieties, each with its crop.
func varietyChoices(c *choosing) ([]option, error) {
	out := []option{{"", c.say("web.blank_variety", nil)}}
	for _, v := range c.holding.Varieties {
		out = append(out, option{v.ID, v.Name + ", " + labelOf(v.Crop, v.Use)})
	}
	return out, nil
}

// otherPlantings are the plantings that one may stand by, the newest first.
func otherPlantings(c *choosing) ([]option, error) {
	out := []option{{"", c.say("web.blank_to", nil)}}
	list, _ := plan.Resolve(c.holding.Plans, c.holding.Plantings, c.holding.Changes, c.holding.Plan)
	slices.SortStableFunc(list, func(a, b plan.Planting) int { return cmp.Compare(b.Date, a.Date) })
	beds := map[string]string{}
	for _, b := range bedOptions(c.holding) {
		beds[b.Value] = b.Name
	}
	for _, p := range list {
		if p.ID != c.id {
			out = append(out, option{p.ID, labelOf(p.Crop, p.Use) + ", " + beds[p.Bed] + ", " + c.words.Format().Date(p.Date)})
		}
	}
	return out, nil
}

// labelOf says what is grown in words, the crop's id when the book has no such
// use.
func labelOf(crop, use string) string {
	choices, _ := desk.Choices() // the book was read before anything was grown
	for _, g := range choices {
		if g.Crop == crop && (g.Use == use || use == "") {
			return capital(g.Label)
		}
	}
	return crop
}

// widthChoices say how sharply a date is known, in days either way.
func widthChoices(c *choosing) ([]option, error) {
	return []option{{"", c.say("web.within_exact", nil)}, {"3", c.say("web.within_3", nil)}, {"7", c.say("web.within_7", nil)},
		{"14", c.say("web.within_14", nil)}, {"30", c.say("web.within_30", nil)}}, nil
}

// shareChoices say how sharply an area is known, as a share of it either way.
func shareChoices(c *choosing) ([]option, error) {
	return []option{{"", c.say("web.share_exact", nil)}, {"0.2", c.say("web.share_fifth", nil)}, {"0.5", c.say("web.share_half", nil)}}, nil
}
