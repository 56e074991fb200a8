package web

import (
	"net/url"
	"slices"
	"strconv"
	"strings"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/words"
)

// awayBody is the page of a time away.
type awayBody struct {
	Title    string
	Says     []string
	Doubts   []string
	From, To string
	Every    string
	Everies  []option
	NotePath string
	Beds     []awayBed // that want water before or meanwhile
	BeforeL  float64
	HelperL  float64
	HelpDryL float64
	Picks    []awayLine
	Waits    []awayLine
	Due      []awayLine
	Doors    []string
	Look     []string
}

// awayBed is what a bed wants before, and when it fails.
type awayBed struct {
	Name, Path      string
	Before          string
	Fails, FailsDry string
	Helper          string
}

// awayLine is one thing with what to do about it.
type awayLine struct{ Name, Path, Says string }

// awayAsked reads the days away from the address.
func (v *visit) awayAsked() (desk.WateringOptions, int, error) {
	o := desk.WateringOptions{}
	for _, d := range []struct {
		name string
		into *cal.Date
	}{{"from", &o.Leave}, {"to", &o.Back}} {
		day, err := cal.Parse(v.query(d.name))
		if err != nil {
			return o, 0, fault.New(fault.Invalid, "web.away_days", words.Args{"given": v.query(d.name)})
		}
		*d.into = day
	}
	every := 0
	if given := v.query("every"); given != "" {
		n, err := strconv.Atoi(given)
		if err != nil || n != 0 && !slices.Contains(desk.AwayEvery(), n) {
			return o, 0, fault.New(fault.OutOfRange, "web.away_every_unknown", words.Args{"given": given})
		}
		every = n
	}
	return o, every, nil
}

// awayPage tells what a time away asks; without days it leads to the form that asks
// for them.
func awayPage(v *visit) error {
	if v.query("from") == "" && v.query("to") == "" {
		v.moveTo("/water#away")
		return nil
	}
	o, every, err := v.awayAsked()
	if err != nil {
		return v.wrongAway(err)
	}
	view, err := v.office.AwayView(o, every)
	if listOf(err) != nil {
		return v.wrongAway(err)
	}
	if err != nil {
		return err
	}
	return v.show(page{Name: "away", Nav: waterNav, Body: v.awayBody(view)})
}

// wrongAway shows the page of water again with what is wrong in the days.
func (v *visit) wrongAway(err error) error {
	return v.showWater(waterTyped{form: "away", from: v.query("from"), to: v.query("to"), faults: listOf(err)})
}

// awayQuery is the address of a page of a time away.
func awayQuery(path string, view *desk.AwayView) string {
	q := url.Values{"from": {view.Away.Leave.String()}, "to": {view.Away.Back.String()}}
	if view.Every > 0 {
		q.Set("every", strconv.Itoa(view.Every))
	}
	return path + "?" + q.Encode()
}

func (v *visit) awayBody(view *desk.AwayView) *awayBody {
	say := func(p words.Phrase) string { return v.sentence(sharpened(p, view.Today)) }
	b := &awayBody{Title: say(words.P("web.away_title", words.Args{"leave": view.Away.Leave, "back": view.Away.Back})),
		From: view.Away.Leave.String(), To: view.Away.Back.String(), Every: strconv.Itoa(view.Every), NotePath: awayQuery("/water/away/note", view),
		BeforeL: view.Away.BeforeL, HelperL: view.Away.HelperL, HelpDryL: view.Away.HelperDryL}
	b.Everies = []option{{"0", v.say("web.away_every_least", nil)}}
	for _, n := range desk.AwayEvery() {
		b.Everies = append(b.Everies, option{strconv.Itoa(n), v.say("web.away_every", words.Args{"n": n})})
	}
	for _, p := range view.Says {
		b.Says = append(b.Says, say(p))
	}
	for _, p := range view.Doubts {
		b.Doubts = append(b.Doubts, say(p))
	}
	for i := range view.Beds {
		if bed := &view.Beds[i]; bed.BeforeL > 0 || bed.FailsDry != nil {
			b.Beds = append(b.Beds, v.awayBed(view, bed))
		}
	}
	for _, p := range view.Rest.Picks {
		b.Picks = append(b.Picks, awayLine{capital(p.Name), plantingPath(p.Planting), say(words.P("web.away_pick", words.Args{"kg": p.Kg, "spoils": p.SpoilsKg}))})
	}
	for _, p := range view.Rest.Waits {
		b.Waits = append(b.Waits, awayLine{Name: capital(p.Name), Path: plantingPath(p.Planting)})
	}
	for i := range view.Rest.Due {
		d := &view.Rest.Due[i]
		line := awayLine{Name: v.sentence(words.P("web.away_job", words.Args{"place": d.Place, "job": d.Title})), Says: say(d.Says)}
		if d.Planting != "" {
			line.Path = plantingPath(d.Planting)
		}
		b.Due = append(b.Due, line)
	}
	for _, d := range view.Rest.Doors {
		b.Doors = append(b.Doors, v.doorSays(&d))
	}
	for _, p := range view.Rest.Look {
		b.Look = append(b.Look, say(p))
	}
	return b
}

// doorSays tells what to do with the doors of a cover.
func (v *visit) doorSays(d *desk.AwayDoor) string {
	return v.sentence(words.P("web.away_doors_"+d.Do, words.Args{"cover": v.named("desk.value_covers.kind.", string(d.Kind)), "beds": strings.Join(d.Beds, "; ")}))
}

func (v *visit) awayBed(view *desk.AwayView, bed *desk.BedThirst) awayBed {
	day := func(d *cal.Date) string {
		if d == nil {
			return v.say("web.away_bed_lasts", nil)
		}
		return v.words.Text(planned(*d, view.Today))
	}
	much := func(litres float64) string {
		if litres <= 0 {
			return ""
		}
		return v.cansTold(litres, desk.CansOf(litres, view.CanL), view.CanL)
	}
	return awayBed{Name: bed.Name, Path: bedPath(bed.Bed), Before: much(bed.BeforeL), Fails: day(bed.Fails), FailsDry: day(bed.FailsDry), Helper: much(bed.HelperDryL)}
}

// awayRoutes names the pages of a time away.
func (s *Server) awayRoutes(mux *router) {
	mux.Handle("GET /water/away", s.atHome(awayPage))
	mux.Handle("GET /water/away/note", s.atHome(notePage))
}
