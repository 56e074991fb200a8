package web

import (
	"errors"
	"net/http"
	"strconv"
	"strings"

	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/words"
)

// shortBody is the page of who gets the water when it is short.
type shortBody struct {
	Ways    waterWays
	View    *desk.ShortView
	Lead    []string
	Sources []string
	Fields  []fieldBody
	Wrong   int
	Faults  []words.Phrase
	First   []shortLine // that get some or all of theirs
	Later   []shortLine // that lose something and get none
	Wait    []shortLine // that lose nothing in these days
}

// shortLine is a bed and why it stands where it does.
type shortLine struct {
	*desk.WaterTurn
	Path, Why string
}

// shortPage shows the order in which beds get what is left.
func shortPage(v *visit) error {
	ask, faults := v.shortAsked()
	var view *desk.ShortView
	err := error(nil)
	if len(faults) == 0 {
		view, err = v.office.WaterShort(ask)
		var one *fault.Error
		if errors.As(err, &one) && (one.At.Column == "left" || one.At.Column == "days") {
			faults, err = fault.List{one}, nil
		}
	}
	if len(faults) > 0 {
		view, err = v.office.WaterShort(desk.ShortOptions{LeftL: -1})
	}
	if err != nil {
		return err
	}
	b := v.shortBody(view)
	v.shortFields(b, faults)
	p := page{Name: "short", Nav: waterNav, Body: b}
	if len(faults) > 0 {
		p.Status = http.StatusUnprocessableEntity
	}
	return v.show(p)
}

// shortAsked reads what is left and for how long from the address.
func (v *visit) shortAsked() (o desk.ShortOptions, faults fault.List) {
	o = desk.ShortOptions{Site: v.query("site"), LeftL: -1}
	if given := strings.TrimSpace(v.query("left")); given != "" {
		x, err := strconv.ParseFloat(strings.Replace(given, ",", ".", 1), 64)
		if err != nil || x < 0 {
			faults = append(faults, fault.New(fault.Invalid, "web.short_left_unreadable", words.Args{"given": given}).In(fault.Place{Column: "left"}))
		}
		o.LeftL = x
	}
	if given := strings.TrimSpace(v.query("days")); given != "" {
		n, err := strconv.Atoi(given)
		if err != nil || n < 1 {
			faults = append(faults, fault.New(fault.Invalid, "web.short_days_unreadable", words.Args{"given": given}).In(fault.Place{Column: "days"}))
		}
		o.Days = n
	}
	return o, faults
}

func (v *visit) shortFields(b *shortBody, faults fault.List) {
	view := b.View
	left := fieldBody{Name: "left", Label: v.say("web.short_left", nil), Kind: kindNumber, Unit: v.say("web.unit_L", nil), Hint: v.say("web.short_left_hint", nil)}
	if view.Told {
		left.Value = plainNumber(view.LeftL)
	}
	days := fieldBody{Name: "days", Label: v.say("web.short_days", nil), Kind: kindNumber, Value: strconv.Itoa(view.Days), Must: true}
	site := fieldBody{Name: "site", Label: v.say("web.water_site", nil), Kind: kindChoice, Must: true, Value: view.Site}
	for _, s := range view.Sites {
		site.Options = append(site.Options, option{s.ID, s.Name})
	}
	b.Fields, b.Wrong = []fieldBody{left, days, site}, len(faults)
	for i := range b.Fields {
		for _, e := range faults {
			if e.At.Column == b.Fields[i].Name {
				b.Fields[i].Value = v.query(b.Fields[i].Name)
				b.Fields[i].Faults = append(b.Fields[i].Faults, e.Phrase)
			}
		}
	}
}

func (v *visit) shortBody(view *desk.ShortView) *shortBody {
	b := &shortBody{Ways: v.waterWays("short"), View: view}
	args := words.Args{"site": view.SiteName, "left": view.LeftL, "days": view.Days, "need": view.NeedL, "saves": view.Saves, "stake": view.AtStake, "spare": view.SpareL}
	switch {
	case len(view.Turns) == 0:
		b.Lead = append(b.Lead, v.say("web.short_nothing", args))
	case view.AtStake == 0:
		b.Lead = append(b.Lead, v.say("web.short_nobody_wants", args))
	case view.Endless:
		b.Lead = append(b.Lead, v.say("web.short_endless", args))
	default:
		b.Lead = append(b.Lead, v.say("web.short_lead", args))
		if view.SpareL > 0 {
			b.Lead = append(b.Lead, v.say("web.short_spare", args))
		}
	}
	for _, s := range view.Sources {
		b.Sources = append(b.Sources, v.sourceLeft(&s))
	}
	for i := range view.Turns {
		t := &view.Turns[i]
		line := shortLine{WaterTurn: t, Path: bedPath(t.Bed), Why: v.shortWhy(t)}
		switch {
		case t.GetL > 0:
			b.First = append(b.First, line)
		case t.AtStake > 0:
			b.Later = append(b.Later, line)
		default:
			b.Wait = append(b.Wait, line)
		}
	}
	return b
}

func (v *visit) sourceLeft(s *desk.SourceLeft) string {
	switch {
	case s.Shut:
		return v.say("web.short_source_shut", words.Args{"name": s.Name})
	case s.L == nil:
		return v.say("web.short_source_open", words.Args{"name": s.Name})
	}
	return v.say("web.short_source", words.Args{"name": s.Name, "l": *s.L})
}

// shortWhy tells why a bed stands where it does.
func (v *visit) shortWhy(t *desk.WaterTurn) string {
	if t.Stage == "" || t.AtStake == 0 {
		if t.Wants == nil {
			return v.say("web.short_lasts", nil)
		}
		return v.say("web.short_loses_none", words.Args{"on": *t.Wants})
	}
	return v.say("web.short_why_"+t.Stage, words.Args{"what": capital(t.What)})
}
