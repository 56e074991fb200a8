package web

import (
	"strings"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/words"
)

// ruleBody is the page of one rule.
type ruleBody struct {
	Name, Reads string
	Pest        bool
	Weaker      bool
	Sites       []ruleSite
	Numbers     []ruleNumber
	Events      []ruleEvent
	Measures    []ruleMeasure
	Source, URL string
	Mark        string
	Sure        string
	Cause       string
	Crops       []string
	Others      []wayLink
	Tell        string
}

// ruleSite is the rule at one site.
type ruleSite struct {
	Name     string // empty where there is one
	State    string
	Says     []string
	Weather  string
	Drawings []riskDrawing
	Fired    []ruleFired
	Events   []string
	Hosts    []ruleHost
	Seen     []riskSeen
}

// riskDrawing is a drawing for the desk and one for the phone.
type riskDrawing struct{ Title, Note, Wide, Phone string }

type ruleFired struct {
	Date  cal.Date
	Event string
	Value string
}

type ruleNumber struct{ Name, Value, Mark, Source string }

type ruleEvent struct{ Name, Sum, From, Region, Mark, Source, URL string }

type ruleMeasure struct {
	Text, Source string
	Chemical     bool
}

// ruleHost is a planting concerned, with what would help.
type ruleHost struct {
	Name, Path   string
	Bed, BedPath string
	When         string
	Says         []string
	Try          string // the planting's page with the later day tried
}

// riskRulePage shows one rule with what it looks at.
func riskRulePage(v *visit) error {
	view, err := v.office.RiskRuleView(v.r.PathValue("rule"))
	if err != nil {
		return err
	}
	r := view.Rule
	b := &ruleBody{Name: v.sentence(r.Name()), Reads: v.words.Text(r.Reads()), Pest: r.Pest(), Weaker: !r.Hourly, Source: r.Source, URL: r.URL,
		Mark: v.named("web.risk_mark_", r.Mark), Sure: v.named("web.risk_sure_", r.Confidence), Cause: r.Cause, Tell: sightingPath(r.Problem, "", "")}
	choices, err := desk.RiskCrops(r.Crops)
	if err != nil {
		return err
	}
	b.Crops = choices
	for _, o := range view.Others {
		b.Others = append(b.Others, wayLink{v.sentence(o.Name()), rulePath(o.ID), false})
	}
	f := v.words.Format()
	for _, n := range r.Numbers {
		b.Numbers = append(b.Numbers, ruleNumber{v.named("web.risk_number_", n.Name), f.Plain(n.Value) + v.unitAfter(n.Unit), v.named("web.risk_mark_", n.Mark), n.Source})
	}
	for i := range r.Events {
		b.Events = append(b.Events, v.ruleEvent(view, i))
	}
	for _, m := range r.Measures {
		b.Measures = append(b.Measures, ruleMeasure{v.words.Text(m.Text()), m.Source, m.Kind == "chemical"})
	}
	for i := range view.Sites {
		b.Sites = append(b.Sites, v.ruleSite(view, &view.Sites[i]))
	}
	return v.show(page{Name: "risk_rule", Nav: "weather", Body: b})
}

// unitAfter is a unit as it stands after its figure; nothing for plain numbers.
func (v *visit) unitAfter(unit string) string {
	if unit == "1" {
		return ""
	}
	return noBreak + unit
}

// ruleEvent tells one sum of a pest, with its start in the site's hemisphere.
func (v *visit) ruleEvent(view *desk.RiskRuleView, i int) ruleEvent {
	e := &view.Rule.Events[i]
	f := v.words.Format()
	args := words.Args{"base": e.BaseC, "sum": e.SumCd, "spread": e.SpreadCd, "start": v.words.Text(words.P("web.risk_start_seen", nil))}
	key := "web.risk_sum"
	if e.SpreadCd > 0 {
		key = "web.risk_sum_spread"
	}
	from := v.say("web.risk_start_seen", nil)
	if e.Start.Month > 0 {
		start := e.Start
		if view.South() {
			start.Month = (start.Month+5)%12 + 1
		}
		from = v.say("web.risk_start", words.Args{"day": strings.ReplaceAll(f.MonthDay(start), " ", noBreak)})
	}
	return ruleEvent{v.sentence(desk.EventPhrase(e.Name)), v.say(key, args), from, e.Region, v.named("web.risk_mark_", e.Mark), e.Source, e.URL}
}

func (v *visit) ruleSite(view *desk.RiskRuleView, s *desk.RiskRuleSite) ruleSite {
	out := ruleSite{Name: s.Item.SiteName, State: capital(v.ruleState(&s.Of, view.Today)) + ".", Weather: v.riskWeather(&s.Weather, false, view.Today)}
	for _, p := range s.Item.Says {
		out.Says = append(out.Says, v.told(p, view.Today))
	}
	f := v.words.Format()
	for i := range s.Of.Fired {
		x := &s.Of.Fired[i]
		row := ruleFired{Date: x.Date, Value: f.Number(x.Value, 0)}
		if x.Sum != nil && *x.Sum > 0 {
			row.Value = f.Number(*x.Sum, 0)
		}
		if x.Event != "" {
			row.Event = v.words.Text(desk.EventPhrase(x.Event))
		}
		out.Fired = append(out.Fired, row)
	}
	for i := range s.Of.Coming {
		if c := &s.Of.Coming[i]; c.P50.IsSet() && c.P50 >= view.Today-aMonthAgo {
			out.Events = append(out.Events, v.sentence(v.eventPhrase(&s.Of, c, view.Today)))
		}
	}
	for i := range s.Item.Hosts {
		out.Hosts = append(out.Hosts, v.ruleHost(s, &s.Item.Hosts[i], view.Today))
	}
	for i := range s.Item.Seen {
		out.Seen = append(out.Seen, v.seenLine(&s.Item.Seen[i], view.Today))
	}
	out.Drawings = v.riskDrawings(view, s)
	return out
}

// ruleHost tells a planting and what flights meet it.
func (v *visit) ruleHost(s *desk.RiskRuleSite, h *desk.RiskHost, today cal.Date) ruleHost {
	out := ruleHost{Name: capital(h.Name), Path: plantingPath(h.Planting), Bed: h.BedName, BedPath: bedPath(h.Bed)}
	key := "web.risk_host_stands"
	if !h.Stands {
		key = "web.risk_host_comes"
	}
	out.When = v.told(words.P(key, words.Args{"from": h.From, "until": h.Until}), today)
	for _, m := range h.Meets {
		args := words.Args{"n": m.Flight, "odds": m.Odds, "year": m.Year.Year()}
		switch {
		case m.Odds < 0.05:
			out.Says = append(out.Says, v.say("web.risk_meets_not", args))
		default:
			out.Says = append(out.Says, v.say("web.risk_meets", args))
		}
	}
	if s.Item.Pest && len(h.Meets) == 0 && len(s.Item.Flights) > 0 {
		out.Says = append(out.Says, v.say("web.risk_meets_none", nil))
	}
	for _, p := range h.Does {
		out.Says = append(out.Says, v.told(p, today))
	}
	if h.Try.IsSet() {
		out.Try = plantingPath(h.Planting) + "?try=" + h.Planting + ":date=" + h.Try.String()
	}
	return out
}
