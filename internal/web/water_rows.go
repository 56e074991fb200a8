package web

import (
	"cmp"
	"slices"

	"garner/internal/cal"
	"garner/internal/holding"
	"garner/internal/place"
	"garner/internal/record"
	"garner/internal/words"
)

// sourceForm is where water comes from.
var sourceForm = rowForm{
	table: "water_sources", nav: waterNav, after: to("/water_sources"),
	fields: []fieldForm{{name: "name", wide: true}, {name: "kind"}, {name: "site"}, {name: "holds_l"}, {name: "l_per_week"}, {name: "roof_m2"}, {name: "covering"},
		{name: "shut_from"}, {name: "shut_to"}, {name: "filter_loss", more: true}},
}

// readingForm is what was read of a bed's moisture.
var readingForm = rowForm{
	table: "moisture_readings", nav: waterNav, after: afterReading,
	fields: []fieldForm{{name: "bed", wide: true, choices: bedChoices}, {name: "way", wide: true}, {name: "value"}, {name: "felt"}, {name: "date"}, {name: "sure"}, {name: "note", wide: true, more: true}},
}

// afterReading leads to the bed that was read.
func afterReading(_ *visit, cells map[string]string) string {
	if cells["bed"] == "" {
		return "/moisture_readings"
	}
	return bedPath(cells["bed"]) + "#water"
}

// waterRowsBody is a list of rows among the pages of water.
type waterRowsBody struct {
	rowsBody
	Ways waterWays
}

// sourcesPage lists where water comes from.
func sourcesPage(v *visit) error {
	h, err := v.office.Holding()
	if err != nil {
		return err
	}
	b := waterRowsBody{Ways: v.waterWays("sources"), rowsBody: rowsBody{Title: "web.sources_title", Says: "web.sources_says", AddKey: "web.sources_add", None: "web.sources_none", Path: "/water_sources"}}
	for i := range h.Sources {
		w := &h.Sources[i]
		b.Rows = append(b.Rows, rowLine{Name: w.Name, Path: rowPath(&sourceForm, w.ID) + "/edit", Says: v.sourceSays(h, w)})
	}
	return v.show(page{Name: "water_rows", Nav: waterNav, Body: b})
}

// sourceSays tells what a source is, what it holds, what fills it and when it is shut.
func (v *visit) sourceSays(h *holding.Holding, w *place.WaterSource) words.Phrase {
	site, beds := w.Site, 0
	for _, s := range h.Sites {
		if s.ID == w.Site {
			site = s.Name
		}
	}
	for i := range h.Beds {
		if h.Beds[i].Water == w.ID {
			beds++
		}
	}
	says := words.P("web.source_says", words.Args{"kind": v.named("desk.value_water_sources.kind.", string(w.Kind)), "site": site, "n": beds})
	add := func(key string, args words.Args) {
		says = words.P("web.water_and", words.Args{"first": says, "then": words.P(key, args)})
	}
	if w.HoldsL > 0 {
		add("web.source_holds", words.Args{"l": w.HoldsL})
	}
	if w.RoofM2 > 0 {
		add("web.source_roof", words.Args{"m2": w.RoofM2, "covering": v.named("desk.value_water_sources.covering.", cmp.Or(w.Covering, "tiles"))})
	}
	if w.LPerWeek > 0 {
		add("web.source_week", words.Args{"l": w.LPerWeek})
	}
	if w.ShutFrom.Month > 0 {
		add("web.source_shut", words.Args{"from": w.ShutFrom, "to": w.ShutTo})
	}
	return says
}

// readingsPage lists what was read, the last first.
func readingsPage(v *visit) error {
	h, err := v.office.Holding()
	if err != nil {
		return err
	}
	b := waterRowsBody{Ways: v.waterWays("readings"), rowsBody: rowsBody{Title: "web.readings_title", Says: "web.readings_says", AddKey: "web.readings_add", None: "web.readings_none", Path: "/moisture_readings"}}
	readings := slices.Clone(h.Readings)
	slices.SortStableFunc(readings, func(a, b record.Reading) int { return cmp.Compare(b.Date, a.Date) })
	for i := range readings {
		r := &readings[i]
		b.Rows = append(b.Rows, rowLine{Name: nameOf(bedOptions(h), r.Bed), Path: rowPath(&readingForm, r.ID) + "/edit", Says: v.readingSays(r)})
	}
	return v.show(page{Name: "water_rows", Nav: waterNav, Body: b})
}

// readingSays tells a reading.
func (v *visit) readingSays(r *record.Reading) words.Phrase {
	args := words.Args{"date": r.Date, "value": r.Value}
	switch r.Way {
	case record.Probe:
		return words.P("web.reading_probe", args)
	case record.Tensiometer:
		return words.P("web.reading_tensiometer", args)
	}
	args["felt"] = v.named("desk.value_moisture_readings.felt.", r.Felt)
	return words.P("web.reading_finger", args)
}

// bedWaterBody is the part of a bed's page about its water.
type bedWaterBody struct {
	From    string // the source it is watered from; "": not told
	Reading string // the last; "": none
	Add     string // address of the form of a reading
}

func (v *visit) bedWater(h *holding.Holding, its place.Bed, today cal.Date) bedWaterBody {
	b := bedWaterBody{Add: "/moisture_readings/new?bed=" + pathEscaped(its.ID) + "&date=" + today.String()}
	for i := range h.Sources {
		if h.Sources[i].ID == its.Water {
			b.From = h.Sources[i].Name
		}
	}
	var last *record.Reading
	for i := range h.Readings {
		if r := &h.Readings[i]; r.Bed == its.ID && (last == nil || r.Date >= last.Date) {
			last = r
		}
	}
	if last != nil {
		b.Reading = v.sentence(v.readingSays(last))
	}
	return b
}
