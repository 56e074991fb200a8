package web

import (
	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/draw"
	"garner/internal/words"
)

// Sizes of the drawings of risk [px], and the days that they show.
const (
	riskWidth      = 860.0
	riskWidthPhone = 358.0
	riskPast       = 62  // days of weather
	riskPastPhone  = 31  // on a phone
	flightBack     = 45  // days before today on a chart of flights
	flightAhead    = 365 // and after it
	sumsHeight     = 170.0
)

// riskDrawings are the drawings of a rule at a site.
func (v *visit) riskDrawings(view *desk.RiskRuleView, s *desk.RiskRuleSite) []riskDrawing {
	if view.Rule.Pest() {
		return v.pestDrawings(view, s)
	}
	if len(s.Days) == 0 {
		return nil
	}
	d := riskDrawing{Title: v.say("web.risk_draw_days", nil), Note: v.say("web.risk_draw_days_note", nil)}
	d.Wide = v.riskDays(view, s, riskWidth, riskPast)
	d.Phone = v.riskDays(view, s, riskWidthPhone, riskPastPhone)
	return []riskDrawing{d}
}

// riskDays draws the days up to the last on record.
func (v *visit) riskDays(view *desk.RiskRuleView, s *desk.RiskRuleSite, width float64, days int) string {
	f := v.words.Format()
	last := s.Days[len(s.Days)-1].Date
	first := max(s.Days[0].Date, last+1-cal.Date(days))
	o := draw.RiskDaysOptions{Scale: draw.Scale{From: first, Days: max(14, int(last-first)+2), WidthPX: width}, Today: view.Today,
		Axis: v.axisTexts("", false), Celsius: f.Celsius, Fired: v.say("web.risk_draw_fired", nil), Temps: v.say("web.risk_draw_temps", nil),
		Figure: func(x float64) string { return f.Number(x, 0) }}
	for _, name := range []string{"tmin_c", "temp_c", "low_c", "high_c", "hot_c"} {
		if t, ok := view.Rule.Value(name); ok {
			o.TempC = append(o.TempC, t)
		}
	}
	o.Action = view.Rule.Level()
	o.Value, o.Values = v.riskValue(view, s)
	if o.Action <= 1 {
		o.Action = 0
	}
	o.Most = max(1, o.Action*1.15)
	for i := range s.Days {
		o.Most = max(o.Most, o.Value(&s.Days[i]))
	}
	o.Label = v.say("web.risk_draw_days_label", words.Args{"rule": view.Rule.Name(), "from": first, "to": last, "n": len(s.Of.Fired)})
	return draw.RiskDays(s.Days, o)
}

// riskValue is what is drawn of each day and what it is called: the running sum, the
// humid hours of rules that count them, else what the rule makes of it.
func (v *visit) riskValue(view *desk.RiskRuleView, _ *desk.RiskRuleSite) (func(p *desk.RiskPoint) float64, string) {
	pct, humid := view.Rule.HumidPct()
	_, counts := view.Rule.Value("action_hours")
	switch {
	case view.Rule.SumsUp():
		return func(p *desk.RiskPoint) float64 { return p.Sum }, v.say("web.risk_draw_sum", nil)
	case humid && counts && view.Rule.Form == "humid_days":
		return func(p *desk.RiskPoint) float64 { return p.HumidH }, v.say("web.risk_draw_humid", words.Args{"pct": pct})
	case counts:
		return func(p *desk.RiskPoint) float64 { return p.Value }, v.say("web.risk_draw_hours", nil)
	}
	return func(p *desk.RiskPoint) float64 { return p.Value }, v.say("web.risk_draw_value", nil)
}

// pestDrawings are the flights over the sowings they hit, and the sums of warmth.
func (v *visit) pestDrawings(view *desk.RiskRuleView, s *desk.RiskRuleSite) (out []riskDrawing) {
	if len(s.Item.Flights) > 0 {
		out = append(out, riskDrawing{Title: v.say("web.risk_draw_flights", nil), Note: v.say("web.risk_draw_flights_note", nil),
			Wide: v.flights(view, s, riskWidth, false), Phone: v.flights(view, s, riskWidthPhone, true)})
	}
	if len(s.Sums) > 0 {
		out = append(out, riskDrawing{Title: v.say("web.risk_draw_sums", nil), Note: v.say("web.risk_draw_sums_note", words.Args{"base": view.Rule.Events[0].BaseC}),
			Wide: v.sums(view, s, riskWidth), Phone: v.sums(view, s, riskWidthPhone)})
	}
	return out
}

func (v *visit) flights(view *desk.RiskRuleView, s *desk.RiskRuleSite, width float64, narrow bool) string {
	o := draw.FlightOptions{Scale: draw.Scale{From: view.Today - flightBack, Days: flightBack + flightAhead, WidthPX: width}, Today: view.Today,
		Axis: v.axisTexts("", false), Shut: v.say("web.risk_draw_shut", nil)}
	o.Label = v.say("web.risk_draw_flights_label", words.Args{"what": s.Item.Name, "n": len(s.Item.Hosts)})
	o.Flight = func(f *desk.RiskFlight) string {
		if !f.From.IsSet() {
			return v.say("web.risk_draw_flight_odds", words.Args{"n": f.Number, "odds": f.Odds})
		}
		return v.say("web.risk_draw_flight", words.Args{"n": f.Number, "date": words.Sharp(f.From, view.Today)})
	}
	o.Host = func(h *desk.RiskHost) string {
		if narrow {
			return capital(h.Name)
		}
		return capital(h.Name) + ", " + h.BedName
	}
	return draw.Flights(s.Item.Flights, s.Item.Hosts, o)
}

func (v *visit) sums(view *desk.RiskRuleView, s *desk.RiskRuleSite, width float64) string {
	o := draw.RiskSumsOptions{Scale: draw.Scale{From: view.Today - flightBack, Days: flightBack + flightAhead, WidthPX: width}, Today: view.Today,
		Axis: v.axisTexts("", false), High: sumsHeight, Label: v.say("web.risk_draw_sums_label", words.Args{"base": view.Rule.Events[0].BaseC, "n": len(s.Sums)})}
	first := &view.Rule.Events[0]
	for i := range view.Rule.Events {
		if e := &view.Rule.Events[i]; e.BaseC == first.BaseC && e.Start == first.Start {
			o.Events = append(o.Events, draw.SumLevel{SumCd: e.SumCd, Words: v.words.Text(desk.EventPhrase(e.Name))})
		}
	}
	return draw.RiskSums(s.Sums, s.From, o)
}
