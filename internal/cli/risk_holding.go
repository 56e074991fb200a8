package cli

import (
	"strings"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/holding"
	"garner/internal/words"
)

// riskHolding is the JSON of what is at risk in a holding.
type riskHolding struct {
	Today   cal.Date      `json:"today"`
	Lead    string        `json:"lead"`
	Weather []riskRecord  `json:"weather"`
	Risks   []riskProblem `json:"risks"`
}

type riskRecord struct {
	Site    string    `json:"site"`
	From    cal.Date  `json:"from"`
	Last    *cal.Date `json:"last"`
	Hourly  int       `json:"days_by_the_hour"`
	Made    int       `json:"days_alone"`
	Guessed int       `json:"days_without_humidity"`

	HoursFrom []riskHours `json:"hours_from"`
}

// riskHours is where days by the hour come from: pasted, instrument or file.
type riskHours struct {
	From string `json:"from"`
	Name string `json:"name,omitempty"`
	Days int    `json:"days"`
}

type riskProblem struct {
	Problem   string         `json:"problem"`
	Name      string         `json:"name"`
	Site      string         `json:"site"`
	State     string         `json:"state"`
	Says      []string       `json:"says"`
	Rules     []riskStanding `json:"rules"`
	Plantings []riskPlanting `json:"plantings"`
	Seen      []riskSight    `json:"seen"`
}

type riskStanding struct {
	Rule   string           `json:"rule"`
	Grade  string           `json:"grade"`
	Fired  []desk.RiskFired `json:"fired"`
	At     float64          `json:"at"`
	Of     float64          `json:"of"`
	Soon   float64          `json:"odds_soon"`
	Ahead  []cal.Date       `json:"forecast"` // from hours made of days
	Events []riskEvent      `json:"events"`
}

type riskEvent struct {
	Event string    `json:"event"`
	P10   *cal.Date `json:"p10"`
	P50   *cal.Date `json:"p50"`
	P90   *cal.Date `json:"p90"`
	Odds  float64   `json:"odds"`
}

type riskPlanting struct {
	Planting string     `json:"planting"`
	Bed      string     `json:"bed"`
	From     cal.Date   `json:"from"`
	Until    cal.Date   `json:"until"`
	Meets    []riskMeet `json:"meets"`
	Does     []string   `json:"what_helps"`
}

type riskMeet struct {
	Flight int     `json:"flight"`
	Year   int     `json:"year"`
	Odds   float64 `json:"odds"`
}

type riskSight struct {
	Date     cal.Date `json:"date"`
	Bed      string   `json:"bed"`
	Planting string   `json:"planting"`
	Stage    string   `json:"stage"`
	Foreseen string   `json:"foreseen"`
}

// atHome tells what is at risk in a holding.
func (c *riskCommand) atHome(a *App) error {
	var f flags
	if c.Rule != "" {
		if err := desk.RiskRuleNamed(c.Rule); err != nil {
			return err
		}
	}
	v, err := ask(a, c.holdingFlags, &f, func(h *holding.Holding, progress reporter) (*desk.RiskView, error) {
		return desk.Risks(h, 1, progress)
	})
	if err != nil {
		return err
	}
	if c.Rule != "" {
		v.Only(c.Rule)
	}
	if c.JSON {
		return a.json(a.riskAnswer(v))
	}
	a.showRisks(v)
	return nil
}

// toldOf is a phrase with dates as sharp as they deserve.
func (a *App) toldOf(p words.Phrase, today cal.Date) string {
	return a.Words.Text(words.Sharpened(p, today))
}

func (a *App) riskAnswer(v *desk.RiskView) riskHolding {
	r := riskHolding{Today: v.Today, Lead: strings.ReplaceAll(a.toldOf(v.Lead, v.Today), "**", ""), Weather: []riskRecord{}, Risks: []riskProblem{}}
	for _, w := range v.Weather {
		hours := []riskHours{}
		for _, o := range w.Origins {
			hours = append(hours, riskHours{string(o.From), o.Name, o.Days})
		}
		r.Weather = append(r.Weather, riskRecord{w.Site, w.From, dated(w.Last), w.Hours, w.Made, w.Guessed, hours})
	}
	for i := range v.Items {
		item := &v.Items[i]
		p := riskProblem{Problem: item.Problem, Name: a.Words.Text(item.Name), Site: item.Site, State: string(item.State), Rules: []riskStanding{},
			Plantings: []riskPlanting{}, Seen: []riskSight{}, Says: a.toldAll(item.Says, v.Today)}
		for k := range item.Rules {
			p.Rules = append(p.Rules, standing(&item.Rules[k]))
		}
		for k := range item.Hosts {
			h := &item.Hosts[k]
			host := riskPlanting{h.Planting, h.Bed, h.From, h.Until, []riskMeet{}, a.toldAll(h.Does, v.Today)}
			for _, m := range h.Meets {
				host.Meets = append(host.Meets, riskMeet{m.Flight, m.Year.Year(), m.Odds})
			}
			p.Plantings = append(p.Plantings, host)
		}
		for k := range item.Seen {
			s := &item.Seen[k]
			p.Seen = append(p.Seen, riskSight{s.Date, s.Bed, s.Planting, string(s.Stage), a.foreseen(s, v.Today)})
		}
		r.Risks = append(r.Risks, p)
	}
	return r
}

func (a *App) toldAll(phrases []words.Phrase, today cal.Date) []string {
	out := []string{}
	for _, p := range phrases {
		out = append(out, a.toldOf(p, today))
	}
	return out
}

func (a *App) foreseen(s *desk.RiskSighting, today cal.Date) string {
	if s.Foreseen.Key == "" {
		return ""
	}
	return a.toldOf(s.Foreseen, today)
}

func standing(r *desk.RiskRule) riskStanding {
	out := riskStanding{Rule: r.Rule.ID, Grade: string(r.Grade), Fired: append([]desk.RiskFired{}, r.Fired...), At: r.At, Of: r.Of, Soon: r.Soon, Ahead: append([]cal.Date{}, r.Ahead...), Events: []riskEvent{}}
	for i := range r.Coming {
		c := &r.Coming[i]
		out.Events = append(out.Events, riskEvent{c.Event, dated(c.P10), dated(c.P50), dated(c.P90), c.Odds})
	}
	return out
}

// showRisks writes what is at risk, what wants a hand first.
func (a *App) showRisks(v *desk.RiskView) {
	a.sayPlain(v.Lead, v.Today)
	for i := range v.Weather {
		w := &v.Weather[i]
		key := "cli.risk_some_weather"
		if !w.Last.IsSet() {
			key = "cli.risk_none_weather"
		}
		a.say(words.P(key, words.Args{"site": w.SiteName, "from": w.From, "hours": w.Hours, "made": w.Made}))
	}
	for i := range v.Items {
		item := &v.Items[i]
		a.gap()
		name := item.Name
		if item.SiteName != "" {
			name = words.P("cli.risk_item_at", words.Args{"what": item.Name, "site": item.SiteName})
		}
		a.sayPlain(name, v.Today)
		lines := a.toldAll(item.Says, v.Today)
		for k := range item.Seen {
			s := &item.Seen[k]
			lines = append(lines, a.Words.Text(words.P("cli.risk_seen", words.Args{"bed": s.BedName, "date": s.Date, "foreseen": a.foreseen(s, v.Today)})))
		}
		var hosts []words.Phrase
		for k := range item.Hosts {
			hosts = append(hosts, words.P("cli.risk_host", words.Args{"what": item.Hosts[k].Name, "bed": item.Hosts[k].BedName}))
		}
		if len(hosts) > 0 {
			named := hosts[:min(len(hosts), 4)]
			key := "cli.risk_concerned"
			if len(named) < len(hosts) {
				key = "cli.risk_concerned_more"
			}
			lines = append(lines, a.Words.Text(words.P(key, words.Args{"hosts": named, "n": len(hosts) - len(named)})))
		}
		for _, line := range lines {
			a.say(words.P("cli.list_item", words.Args{"text": capital(line)}))
		}
	}
}
