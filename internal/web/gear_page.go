package web

import (
	"garner/internal/desk"
	"garner/internal/plan"
	"garner/internal/words"
)

// gearForm is a stock of covers.
var gearForm = rowForm{
	table: "gear", nav: "ground", after: to("/gear"),
	fields: []fieldForm{{name: "kind", wide: true}, {name: "pieces"}, {name: "mesh_mm"}, {name: "length_m"}, {name: "width_m"}, {name: "name", wide: true}},
}

// lotForm is a lot of seed or plants on hand.
var lotForm = rowForm{
	table: "onhand", nav: "plantings", after: to("/onhand"),
	fields: []fieldForm{
		{name: "grown", columns: []string{"crop", "use"}, wide: true, choices: lotChoices},
		{name: "form", wide: true}, {name: "amount"}, {name: "unit"}, {name: "since"},
		{name: "variety", choices: varietyChoices, more: true},
	},
}

// lotChoices are all crops for any of their uses, and each use.
func lotChoices(c *choosing) ([]option, error) {
	uses, err := grownChoices(c)
	if err != nil {
		return nil, err
	}
	crops, err := desk.CropNames()
	out := make([]option, 0, len(crops)+len(uses))
	for _, crop := range crops {
		out = append(out, option{crop.ID + "/", c.say("web.onhand_any_use", words.Args{"crop": capital(crop.Name)})})
	}
	return append(out, uses...), err
}

// gearBody is the page of covers owned.
type gearBody struct {
	*desk.GearView
	Lines []gearLine
}

// gearLine is a stock with what of it is out when.
type gearLine struct {
	desk.GearLine
	Name string
	Path string
	Says words.Phrase
}

// gearPage lists the covers owned and what of them is out when.
func gearPage(v *visit) error {
	view, err := v.office.GearView()
	if err != nil {
		return err
	}
	b := gearBody{GearView: view}
	for _, g := range view.Gear {
		name := g.Name
		if name == "" {
			name = capital(v.named("desk.value_gear.kind.", g.Kind))
		}
		b.Lines = append(b.Lines, gearLine{GearLine: g, Name: name, Path: rowPath(&gearForm, g.ID) + "/edit", Says: gearSays(&g)})
	}
	return v.show(page{Name: "gear", Nav: "ground", Body: b})
}

// gearSays tells how many there are, how large, and how many are out.
func gearSays(g *desk.GearLine) words.Phrase {
	size := words.P("web.gear_no_size", nil)
	switch {
	case g.MeshMM > 0 && g.LengthM > 0:
		size = words.P("web.gear_size_mesh", words.Args{"length": g.LengthM, "width": g.WidthM, "mm": g.MeshMM})
	case g.LengthM > 0:
		size = words.P("web.gear_size", words.Args{"length": g.LengthM, "width": g.WidthM})
	}
	return words.P("web.gear_says", words.Args{"pieces": g.Pieces, "size": size, "out": g.Out})
}

// onHandBody is the page of seed and plants on hand.
type onHandBody struct{ Groups []onHandGroup }

type onHandGroup struct {
	Form string // seed, plants
	Lots []rowLine
}

// onHandPage lists seed and plants on hand.
func onHandPage(v *visit) error {
	lots, err := v.office.OnHandView()
	if err != nil {
		return err
	}
	var b onHandBody
	for i := range lots {
		l := &lots[i]
		if n := len(b.Groups); n == 0 || b.Groups[n-1].Form != l.Form {
			b.Groups = append(b.Groups, onHandGroup{Form: l.Form})
		}
		g := &b.Groups[len(b.Groups)-1]
		g.Lots = append(g.Lots, rowLine{Name: capital(l.Name), Path: rowPath(&lotForm, l.ID) + "/edit", Says: lotSays(l)})
	}
	return v.show(page{Name: "onhand", Nav: "plantings", Body: b})
}

// lotSays tells how much there is, for how much ground, and how old it is.
func lotSays(l *desk.LotView) words.Phrase {
	parts := []words.Phrase{amountSays(&l.Lot)}
	if l.EnoughM2 > 0 {
		parts = append(parts, words.P("web.onhand_enough", words.Args{"area": l.EnoughM2}))
	}
	switch {
	case l.Old:
		parts = append(parts, words.P("web.onhand_old", words.Args{"year": year(l.Since.Year()), "to": year(l.GoodTo)}))
	case l.GoodTo > 0:
		parts = append(parts, words.P("web.onhand_good", words.Args{"year": year(l.Since.Year()), "to": year(l.GoodTo)}))
	case l.Since.IsSet():
		parts = append(parts, words.P("web.onhand_since", words.Args{"day": l.Since}))
	}
	for len(parts) > 1 {
		parts = append([]words.Phrase{words.P("web.onhand_and", words.Args{"first": parts[0], "then": parts[1]})}, parts[2:]...)
	}
	return parts[0]
}

func year(n int) string { return number(int64(n)) }

func amountSays(l *plan.Lot) words.Phrase {
	return words.P("web.onhand_"+l.Unit, words.Args{"n": l.Amount})
}
