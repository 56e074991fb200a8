package web

import (
	"net/http"
	"strconv"
	"strings"

	"garner/internal/desk"
	"garner/internal/draw"
	"garner/internal/fault"
	"garner/internal/words"
)

// buttBody is the page of how large a butt should be.
type buttBody struct {
	Ways        waterWays
	View        *desk.ButtView
	Butts       []wayLink
	Lead        []string
	Draw, Phone string // drawings
	Fields      []fieldBody
	Wrong       int
	Faults      []words.Phrase
}

// Sizes of the drawing of a butt [px].
const (
	buttWidth, buttHeight = 760.0, 260.0
	buttWidthPhone        = 358.0
	buttHeightPhone       = 230.0
)

// buttPage shows what butts of several sizes would serve.
func buttPage(v *visit) error {
	ask, faults := v.buttAsked()
	body := &buttBody{Ways: v.waterWays("butt"), Wrong: len(faults)}
	status := http.StatusOK
	if len(faults) > 0 {
		status, ask = http.StatusUnprocessableEntity, desk.ButtOptions{Source: ask.Source}
	}
	view, err := v.office.ButtView(ask)
	if err != nil {
		return err
	}
	body.View = view
	for _, w := range view.Butts {
		body.Butts = append(body.Butts, wayLink{w.Name, "/water/butt?source=" + pathEscaped(w.ID), w.ID == view.Source})
	}
	body.Lead = v.buttWords(view)
	if view.Site != "" && view.EnoughL > 0 {
		body.Draw, body.Phone = v.buttDraw(view, buttWidth, buttHeight), v.buttDraw(view, buttWidthPhone, buttHeightPhone)
	}
	v.buttFields(body, view, faults)
	return v.show(page{Name: "butt", Nav: waterNav, Status: status, Body: body})
}

// buttAsked reads what is tried from the address.
func (v *visit) buttAsked() (o desk.ButtOptions, faults fault.List) {
	o = desk.ButtOptions{Source: v.query("source"), Site: v.query("site"), Covering: v.query("covering")}
	for _, f := range []struct {
		name string
		into *float64
		most float64
	}{{"roof", &o.RoofM2, 100000}, {"holds", &o.HoldsL, 1000000}} {
		given := strings.TrimSpace(v.query(f.name))
		if given == "" {
			continue
		}
		x, err := strconv.ParseFloat(strings.Replace(given, ",", ".", 1), 64)
		if err != nil || !(x > 0 && x <= f.most) {
			faults = append(faults, fault.New(fault.Invalid, "web.butt_number", words.Args{"given": given, "most": f.most}).In(fault.Place{Column: f.name}))
			continue
		}
		*f.into = x
	}
	return o, faults
}

func (v *visit) buttFields(b *buttBody, view *desk.ButtView, faults fault.List) {
	covering := fieldBody{Name: "covering", Label: v.say("web.butt_covering", nil), Kind: kindChoice, Must: true, Value: view.Covering}
	for _, name := range desk.Coverings() {
		covering.Options = append(covering.Options, option{name, capital(v.named("desk.value_water_sources.covering.", name))})
	}
	site := fieldBody{Name: "site", Label: v.say("web.water_site", nil), Kind: kindChoice, Must: true, Value: view.Site}
	for _, s := range view.Sites {
		site.Options = append(site.Options, option{s.ID, s.Name})
	}
	roof := fieldBody{Name: "roof", Label: v.say("web.butt_roof", nil), Kind: kindNumber, Unit: v.say("web.unit_m2", nil), Must: true, Value: blankNumber(view.RoofM2)}
	holds := fieldBody{Name: "holds", Label: v.say("web.butt_holds", nil), Kind: kindNumber, Unit: v.say("web.unit_L", nil)}
	if view.Own != nil {
		holds.Value = blankNumber(view.Own.HoldsL)
	}
	b.Fields = []fieldBody{roof, covering, holds, site}
	for i := range b.Fields {
		for _, e := range faults {
			if e.At.Column == b.Fields[i].Name {
				b.Fields[i].Value = v.query(b.Fields[i].Name)
				b.Fields[i].Faults = append(b.Fields[i].Faults, e.Phrase)
			}
		}
	}
}

// blankNumber writes a number for a field; nothing for none.
func blankNumber(x float64) string {
	if x == 0 {
		return ""
	}
	return plainNumber(x)
}

// buttWords tell what the butt serves and how large one pays.
func (v *visit) buttWords(view *desk.ButtView) []string {
	f := v.words.Format()
	beds := strings.Join(view.BedNames, "; ")
	if view.AllBeds {
		beds = v.say("web.butt_all_beds", words.Args{"site": view.SiteName})
	}
	args := words.Args{"beds": beds, "asked": view.AskedL, "dry": view.AskedDry, "shed": view.ShedL, "rule": view.RuleL, "enough": view.EnoughL}
	out := []string{}
	switch {
	case view.Site == "":
		return nil
	case view.AskedL <= 0:
		return append(out, v.say("web.butt_nothing_asked", args))
	case view.PerMM <= 0:
		return append(out, v.say("web.butt_no_roof", args))
	}
	out = append(out, v.say("web.butt_need", args))
	if view.Own != nil {
		out = append(out, v.say("web.butt_own", words.Args{"l": view.Own.HoldsL, "share": f.Percent(view.Own.Share), "dry": f.Percent(view.Own.ShareDry),
			"n": view.Own.EmptyDays, "over": view.Own.OverflowL}))
	}
	for i := range view.Sizes {
		if p := &view.Sizes[i]; p.HoldsL == view.EnoughL {
			out = append(out, v.say("web.butt_enough", words.Args{"l": p.HoldsL, "share": f.Percent(p.Share), "dry": f.Percent(p.ShareDry)}))
		}
	}
	return append(out, v.say("web.butt_rule", args))
}

func (v *visit) buttDraw(view *desk.ButtView, width, height float64) string {
	f := v.words.Format()
	o := draw.ButtCurveOptions{WidthPX: width, HeightPX: height, Percent: f.Percent, Litres: func(l float64) string { return f.About(l) },
		Middle: v.say("web.butt_middle", nil), Dry: v.say("web.butt_dry", nil), Label: v.say("web.butt_draw", words.Args{"text": strings.Join(v.buttWords(view), " ")})}
	if view.Own != nil {
		o.Own = v.say("web.butt_yours", words.Args{"l": view.Own.HoldsL})
	}
	return draw.ButtCurve(view, o)
}
