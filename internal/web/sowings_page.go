package web

import (
	"strings"

	"garner/internal/desk"
	"garner/internal/words"
)

// sowingsBody is the list of all that is to be sown in the year ahead.
type sowingsBody struct {
	Lead string
	Rows []sowingRow
}

// sowingRow is one sowing as a row of the list.
type sowingRow struct {
	When, What, Path, Where, Seed, Lot, Apart, How, Cover string
	LotPath                                               string
}

// sowingsPage shows the list, to be read and to be hung up.
func sowingsPage(v *visit) error {
	view, err := v.office.SowingsView()
	if err != nil {
		return err
	}
	args := words.Args{"n": len(view.Sowings), "from": view.Today, "last": view.Last}
	b := sowingsBody{Lead: v.say("web.sowings_none", args)}
	if len(view.Sowings) > 0 {
		b.Lead = v.say("web.sowings_lead", args)
	}
	for i := range view.Sowings {
		l := &view.Sowings[i]
		row := sowingRow{When: v.sentence(words.Sharp(max(l.Date, view.Today), view.Today)), What: capital(l.Name), Path: plantingPath(l.Planting), Where: v.sowingWhere(l, view),
			Seed: v.sowingSeed(l), How: v.sowingHow(l), Apart: v.sowingApart(l), Cover: v.sowingCover(l), Lot: v.sowingLot(l)}
		if l.Lot != "" {
			row.LotPath = rowPath(&lotForm, l.Lot) + "/edit"
		}
		b.Rows = append(b.Rows, row)
	}
	return v.show(page{Name: "sowings", Nav: "week", Body: b})
}

func (v *visit) sowingWhere(l *desk.SowingLine, view *desk.SowingsView) string {
	if l.Indoors {
		return v.say("web.sowings_indoors", words.Args{"bed": l.BedName, "out": words.Sharp(l.Out, view.Today)})
	}
	return v.say("web.sowings_bed", words.Args{"bed": l.BedName, "area": l.AreaM2})
}

func (v *visit) sowingSeed(l *desk.SowingLine) string {
	switch {
	case l.SetKg > 0:
		return v.say("web.sowings_sets_kg", words.Args{"kg": l.SetKg})
	case l.SeedG > 0:
		return v.say("web.sowings_seed_g", words.Args{"g": l.SeedG})
	}
	return v.say("web.sowings_seed_none", nil)
}

// sowingLot tells whether it is on hand; nothing where it is not known how much it takes.
func (v *visit) sowingLot(l *desk.SowingLine) string {
	switch {
	case l.SeedG == 0 && l.SetKg == 0:
		return ""
	case l.Enough:
		return v.say("web.sowings_lot_enough", nil)
	case l.Lot != "":
		return v.say("web.sowings_lot_some", nil)
	}
	return v.say("web.sowings_lot_none", nil)
}

func (v *visit) sowingApart(l *desk.SowingLine) string {
	if l.InRowM <= 0 || l.BetweenM <= 0 {
		return v.say("web.sowings_seed_none", nil)
	}
	return v.say("web.sowings_rows", words.Args{"apart": 100 * l.InRowM, "rows": 100 * l.BetweenM})
}

// shallowM is the depth from which one is told [m]: less is scattered and pressed down.
const shallowM = 0.005

func (v *visit) sowingHow(l *desk.SowingLine) string {
	args := words.Args{"row": l.RowM, "per": l.PerM, "cells": l.Cells, "sets": l.Sets}
	how := words.P("web.sowings_how_seed", args)
	switch {
	case l.How == "plant":
		how = words.P("web.sowings_how_plant", args)
	case l.How == "set":
		how = words.P("web.sowings_how_set", args)
	case l.PerM > 0:
		how = words.P("web.sowings_how_seed_per", args)
	}
	if l.DepthM >= shallowM {
		how = words.P("web.sowings_deep", words.Args{"how": how, "deep": 100 * l.DepthM})
	}
	return v.words.Text(how)
}

// sowingCover names what lies over the bed on the day; what is raised stands indoors,
// and its cover is that of the day on which it is planted out.
func (v *visit) sowingCover(l *desk.SowingLine) string {
	if len(l.Covers) == 0 {
		return v.say("web.sowings_open", nil)
	}
	var names []string
	for _, kind := range l.Covers {
		names = append(names, v.named("desk.value_covers.kind.", string(kind)))
	}
	return strings.Join(names, ", ")
}
