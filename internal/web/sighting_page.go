package web

import (
	"strings"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/record"
	"garner/internal/words"
)

// sightingBody is the form on which a disease or pest that was seen is told.
type sightingBody struct {
	Hidden []hiddenField
	Fields []fieldBody
	Back   string
	Wrong  int
	Faults []words.Phrase // those of no field
}

// sightingFields are what the form sends.
var sightingFields = []string{"problem", "where", "date", "stage", "share", "count", "note"}

// sightingPage shows the form with what the address says: what, and where.
func sightingPage(v *visit) error {
	today, err := v.office.Today()
	if err != nil {
		return err
	}
	typed := lossTyped{"date": today.String(), "problem": v.query("problem")}
	switch {
	case v.query("planting") != "":
		typed["where"] = "planting/" + v.query("planting")
	case v.query("bed") != "":
		typed["where"] = "bed/" + v.query("bed")
	}
	return v.showSighting(typed, nil)
}

// sightingPosted writes what was seen, or shows the form again with what is wrong.
func sightingPosted(v *visit) error {
	typed := lossTyped{}
	for _, name := range sightingFields {
		typed[name] = strings.TrimSpace(v.field(name))
	}
	kept, err := v.writeSighting(typed)
	if err == nil {
		v.kept(kept, v.back("/risk"))
		return nil
	}
	if faults := listOf(err); faults != nil {
		return v.showSighting(typed, faults)
	}
	return err
}

func (v *visit) writeSighting(typed lossTyped) (*desk.KeptEntry, error) {
	r := lossReader{typed: typed}
	s := desk.Sighting{Problem: typed["problem"], On: cal.None, Stage: record.Stage(typed["stage"]), Note: typed["note"]}
	if day, err := cal.Parse(typed["date"]); err == nil {
		s.On = day // else missed at the desk with all else
	}
	switch kind, id, _ := strings.Cut(typed["where"], "/"); kind {
	case "planting":
		s.Planting = id
	case "bed":
		s.Bed = id
	}
	s.Share, s.Count = r.number("share"), r.number("count")
	if len(r.faults) > 0 {
		return nil, r.faults
	}
	return v.office.TellSighting(v.author(), s)
}

// seenShares are the parts of the plants that are told with one choice.
var seenShares = []option{{"", "web.sighting_share_none"}, {"0.02", "web.sighting_share_few"}, {"0.1", "web.sighting_share_tenth"}, {"0.25", "web.sighting_share_quarter"},
	{"0.5", "web.sighting_share_half"}, {"1", "web.sighting_share_all"}}

func (v *visit) showSighting(typed lossTyped, faults fault.List) error {
	choices, err := v.office.SightingChoices()
	if err != nil {
		return err
	}
	field := func(name, kind string, must bool) fieldBody { return v.toldField("sighting", name, kind, typed, must) }
	problem, where, stage := field("problem", kindChoice, true), field("where", kindChoice, true), field("stage", kindChoice, false)
	problem.Wide, where.Wide, stage.Wide = true, true, true
	for _, p := range choices.Problems {
		problem.Options = append(problem.Options, option{p.ID, v.sentence(p.Name)})
	}
	for _, p := range choices.Places {
		if p.Planting == "" {
			where.Options = append(where.Options, option{"bed/" + p.Bed, v.say("web.sighting_bed", words.Args{"bed": p.BedName})})
			continue
		}
		where.Options = append(where.Options, option{"planting/" + p.Planting, v.say("web.sighting_planting", words.Args{"bed": p.BedName, "what": p.Name})})
	}
	stage.Options = []option{{"", v.say("web.sighting_stage_none", nil)}}
	for _, s := range []record.Stage{record.Damage, record.Flying, record.Eggs, record.Young} {
		stage.Options = append(stage.Options, option{string(s), v.sentence(words.P("desk.value_records.stage."+string(s), nil))})
	}
	share := field("share", kindChoice, false)
	for _, s := range seenShares {
		share.Options = append(share.Options, option{s.Value, v.say(s.Name, nil)})
	}
	note := field("note", kindText, false)
	note.Wide = true
	b := &sightingBody{Wrong: len(faults), Back: v.linkBack("/risk"), Fields: []fieldBody{problem, where, field("date", kindDate, true), stage, share, field("count", kindNumber, false), note}}
	if v.field("back") != "" {
		b.Back = v.back("/risk")
	}
	b.Faults = placed(b.Fields, faults)
	if b.Hidden, err = v.entryOf(); err != nil {
		return err
	}
	b.Hidden = append(b.Hidden, hiddenField{"back", b.Back})
	return v.show(page{Name: "sighting", Nav: "weather", Status: statusOf(faults), Body: b})
}
