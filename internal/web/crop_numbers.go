package web

import (
	"math"
	"net/url"
	"strconv"

	"garner/internal/desk"
	"garner/internal/words"
)

// numberGroup is a group of numbers that belong together.
type numberGroup struct {
	Name string
	Open bool // shown at once
	Rows []numberRow
}

// numberRow is one number in words, with where it comes from and how sure it is.
type numberRow struct {
	Name, Value string
	Sure        string
	Source, URL string
	Where, Note string
	Book        string // the book's value beside the grower's own
	BookSource  string
	Change      string // page on which it is corrected
	Own         bool
}

// parameterTexts is where the names of the book's numbers begin in the catalogue.
const parameterTexts = "words.parameter_"

// openGroups are those that a grower looks into first.
var openGroups = map[string]bool{"starting": true, "spacing": true, "yield": true}

func (v *visit) numberGroups(view *desk.CropView) []numberGroup {
	var out []numberGroup
	for _, g := range view.Facts {
		group := numberGroup{Name: v.named("web.numbers_", g.Name), Open: openGroups[g.Name]}
		for i := range g.Facts {
			group.Rows = append(group.Rows, v.numberRow(view, &g.Facts[i]))
		}
		out = append(out, group)
	}
	return out
}

func (v *visit) numberRow(view *desk.CropView, f *desk.CropFact) numberRow {
	r := v.plainNumber(f)
	if f.Own != "" {
		r.Own, r.Change = true, rowPath(&numberForm, f.Own)+"/edit"
		r.Book = v.say("web.number_book", words.Args{"value": v.figure(f.Book)})
		r.BookSource = v.named("web.sure_", f.Book.Sure)
		if f.Book.Source.Text != "" {
			r.BookSource = v.say("web.number_source", words.Args{"sure": r.BookSource, "source": f.Book.Source.Text})
		}
		return r
	}
	q := url.Values{"crop": {view.ID}, "use": {view.Use}, "parameter": {f.Parameter}, "unit": {f.Unit},
		"value": {strconv.FormatFloat(f.Value, 'g', -1, 64)}}
	r.Change = "/crops/new?" + q.Encode()
	return r
}

// plainNumber tells a number without a way to correct it.
func (v *visit) plainNumber(f *desk.CropFact) numberRow {
	r := numberRow{Name: capital(v.say(parameterTexts+f.Parameter, nil)), Value: v.figure(f), Sure: v.named("web.sure_", f.Sure),
		Source: f.Source.Text, URL: f.Source.URL, Where: f.Source.Where, Note: f.Source.Note}
	return r
}

// shares are the numbers between none and all.
var shares = map[string]bool{"days_factor": true, "ready_stage": true, "gate_stage": true, "bolt_juvenile": true, "organ_start": true, "organ_share": true,
	"dry_matter": true, "stand_loss": true, "weight_spread": true, "leaf_share": true, "edible_share": true, "age_yield_0": true,
	"age_yield_1": true, "age_yield_2": true, "age_yield_3": true, "age_yield_4": true, "age_yield_5": true}

// unitFigures are the texts of figures by the unit of the book.
var unitFigures = map[string]string{"C": "web.figure_c", "C d": "web.figure_cd", "d": "web.figure_d", "h": "web.figure_h", "a": "web.figure_a",
	"ml": "web.figure_ml", "1/m": "web.figure_per_m", "1/g": "web.figure_per_g", "kg/m2": "web.figure_kg_m2", "cm2": "web.figure_cm2",
	"m2/g": "web.figure_m2_g", "1/d": "web.figure_per_d", "g/MJ": "web.figure_g_mj"}

// figure puts a number of the book into words: none and all have words of their
// own where they mean more than a figure.
func (v *visit) figure(f *desk.CropFact) string {
	if f.Value == math.Trunc(f.Value) && f.Value >= 0 && f.Value <= 1 {
		if key := "web.figure_" + f.Parameter + "_" + whole(int(f.Value)); v.words.Has(key) {
			return v.say(key, nil)
		}
	}
	switch {
	case shares[f.Parameter]:
		return v.say("web.figure_share", words.Args{"n": f.Value})
	case f.Unit == "g":
		return v.say("web.figure_g", words.Args{"n": f.Value / 1000})
	case f.Unit == "m":
		return v.length(f.Value)
	}
	key, known := unitFigures[f.Unit]
	if !known {
		key = "web.figure_plain"
	}
	return v.say(key, words.Args{"n": f.Value})
}

// length tells a length as it is measured: under a metre in centimetres.
func (v *visit) length(m float64) string {
	if m < 1 {
		return v.say("web.figure_cm", words.Args{"n": math.Round(m*1000) / 10})
	}
	return v.say("web.figure_m", words.Args{"n": m})
}

// span tells how long something keeps.
func (v *visit) span(days float64) string {
	if days < 42 {
		return v.say("web.figure_d", words.Args{"n": days})
	}
	if days < 100 {
		return v.say("web.figure_weeks", words.Args{"n": math.Round(days / 7)})
	}
	return v.say("web.figure_months", words.Args{"n": math.Round(days / 30.4)})
}
