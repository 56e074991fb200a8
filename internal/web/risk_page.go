package web

import (
	"strings"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/words"
)

// riskBody is the page of what the weather puts at risk.
type riskBody struct {
	Lead    string
	Groups  []riskGroup
	Lines   []riskNames
	Weather []string
}

// riskGroup is the entries of states that belong together.
type riskGroup struct {
	Key   string // its title is web.risk_group_ and it
	Items []riskItem
}

// riskLine is one rule in a line.
type riskLine struct{ Name, Path, Says string }

// riskBed is a bed with the plantings in it that are concerned.
type riskBed struct {
	Name, Path string
	Plantings  []riskPlanting
}

type riskPlanting struct{ Name, Path, When string }

// riskSeen is a sighting in a line.
type riskSeen struct{ Says, Foreseen, Note string }

// mostHosts is how many plantings of an item are named.
const mostHosts = 8

// riskPage shows what the weather puts at risk now.
func riskPage(v *visit) error {
	view, err := v.office.RiskView()
	if err != nil {
		return err
	}
	b := &riskBody{Lead: v.told(view.Lead, view.Today), Weather: v.riskWeathers(view)}
	b.Groups, b.Lines = v.riskGathered(view)
	return v.show(page{Name: "risk", Nav: "weather", Body: b})
}

// told is a phrase as a sentence, its dates as sharp as they deserve.
func (v *visit) told(p words.Phrase, today cal.Date) string { return v.sentence(sharpened(p, today)) }

// riskBeds are the plantings concerned by their beds.
func (v *visit) riskBeds(hosts []desk.RiskHost, today cal.Date) (beds []riskBed, more int) {
	for i := range hosts {
		h := &hosts[i]
		if i >= mostHosts {
			return beds, len(hosts) - mostHosts
		}
		at := -1
		for k := range beds {
			if beds[k].Path == bedPath(h.Bed) {
				at = k
			}
		}
		if at < 0 {
			at = len(beds)
			beds = append(beds, riskBed{Name: h.BedName, Path: bedPath(h.Bed)})
		}
		beds[at].Plantings = append(beds[at].Plantings, riskPlanting{h.Name, plantingPath(h.Planting), v.hostWhen(h, today)})
	}
	return beds, 0
}

// hostWhen is nothing of what stands, else when it comes.
func (v *visit) hostWhen(h *desk.RiskHost, today cal.Date) string {
	if h.Stands {
		return ""
	}
	return v.words.Text(sharpened(words.P("web.risk_from", words.Args{"date": h.From}), today))
}

// ruleState says how one rule stands, and what the forecast makes of it.
func (v *visit) ruleState(r *desk.RiskRule, today cal.Date) string {
	says := v.ruleSoFar(r, today)
	if len(r.Ahead) == 0 {
		return says
	}
	var dates []words.Phrase
	for _, d := range r.Ahead {
		dates = append(dates, words.Sharp(d, today))
	}
	return says + "; " + v.say("web.risk_rule_ahead", words.Args{"dates": dates})
}

// ruleSoFar says how one rule stands by what is on record.
func (v *visit) ruleSoFar(r *desk.RiskRule, today cal.Date) string {
	args := words.Args{"grade": words.P("web.risk_grade_"+gradeOf(r), nil), "at": r.At, "of": r.Of, "odds": r.Soon}
	switch {
	case r.Rule.Pest():
		return v.eventsSay(r, today)
	case r.Waiting:
		return v.say("web.risk_rule_waits", nil)
	case r.Grade == desk.GradeNone || r.Grade == "":
		return v.say("web.risk_rule_dark", nil)
	case len(r.Fired) > 0:
		args["dates"], args["n"] = v.firedDates(r, today), len(r.Fired)
		if len(r.Fired) > mostFired {
			args["dates"], args["last"] = v.firstAndLast(r, today), r.Fired[len(r.Fired)-1].Date
			return v.say("web.risk_rule_fired_often", args)
		}
		return v.say("web.risk_rule_fired", args)
	case r.Of > 1:
		return v.say("web.risk_rule_at", args)
	}
	return v.say("web.risk_rule_not", args)
}

func gradeOf(r *desk.RiskRule) string {
	if r.Grade == "" {
		return string(desk.GradeNone)
	}
	return string(r.Grade)
}

// mostFired is how many dates of a rule are told one by one.
const mostFired = 4

func (v *visit) firedDates(r *desk.RiskRule, today cal.Date) []words.Phrase {
	var out []words.Phrase
	for i := range r.Fired {
		out = append(out, words.Sharp(r.Fired[i].Date, today))
	}
	return out
}

func (v *visit) firstAndLast(r *desk.RiskRule, today cal.Date) []words.Phrase {
	return []words.Phrase{words.Sharp(r.Fired[0].Date, today), words.Sharp(r.Fired[len(r.Fired)-1].Date, today)}
}

// eventsSay tells the next events of a pest, or those that are past.
func (v *visit) eventsSay(r *desk.RiskRule, today cal.Date) string {
	if r.Waiting {
		return v.say("web.risk_pest_waits", nil)
	}
	var parts []string
	year := cal.None
	for i := range r.Coming {
		c := &r.Coming[i]
		if !c.P50.IsSet() || c.P50 < today-aMonthAgo || len(parts) > 0 && c.Year != year {
			continue
		}
		year = c.Year
		parts = append(parts, v.words.Text(v.eventPhrase(r, c, today)))
		if len(parts) == mostEvents {
			break
		}
	}
	if len(parts) == 0 {
		return v.say("web.risk_pest_none", nil)
	}
	return capital(strings.Join(parts, "; ")) + "."
}

const (
	aMonthAgo  = 30 // for which an event that is past is told [d]
	mostEvents = 2
)

// eventPhrase tells when an event comes and how sure that is.
func (v *visit) eventPhrase(r *desk.RiskRule, c *desk.RiskComing, today cal.Date) words.Phrase {
	args := words.Args{"event": desk.EventPhrase(c.Event), "date": words.Sharp(c.P50, today)}
	switch {
	case c.Firm(today):
		return words.P("web.risk_event_past", args)
	case !c.P90.IsSet():
		args["odds"] = c.Odds
		return words.P("web.risk_event_odds", args)
	case c.P90-c.P10 <= 2:
		return words.P("web.risk_event", args)
	}
	args["days"] = int(c.P90-c.P10+1) / 2
	return words.P("web.risk_event_spread", args)
}

// seenLine tells a sighting.
func (v *visit) seenLine(s *desk.RiskSighting, today cal.Date) riskSeen {
	args := words.Args{"date": s.Date, "bed": s.BedName, "what": s.Name, "value": s.Value, "stage": words.P("desk.value_records.stage."+string(s.Stage), nil)}
	key := "web.risk_seen"
	if s.Name != "" {
		key = "web.risk_seen_on"
	}
	out := riskSeen{Says: v.sentence(sharpened(words.P(key, args), today)), Note: s.Note}
	if s.Stage != "" {
		out.Says += " " + v.sentence(words.P("web.risk_seen_stage", args))
	}
	switch {
	case s.Unit == "share":
		out.Says += " " + v.say("web.risk_seen_share", args)
	case s.Unit != "":
		out.Says += " " + v.say("web.risk_seen_count", args)
	}
	if s.Foreseen.Key != "" {
		out.Foreseen = v.told(s.Foreseen, today)
	}
	return out
}
