package desk

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/risk"
)

const (
	riskAgo    = 14  // for which a rule that fired is told of as of late [d]
	riskSoonD  = 14  // days to come that odds are told of [d]
	staleAfter = 4   // days after which a last reading says nothing of today [d]
	nearShare  = 0.7 // of the way at which a sum is near. judgement
)

// ruleOver runs a rule over the season of a site.
func (w *riskWork) ruleOver(s *riskSite, r *risk.Rule, hosts []RiskHost, seen []RiskSighting) RiskRule {
	out := RiskRule{Rule: r, Last: cal.None, Since: cal.None}
	o := risk.Options{Since: cal.None, South: s.south}
	switch r.Begins {
	case risk.Standing:
		if o.Since = w.standsSince(s, hosts); !o.Since.IsSet() {
			out.Grade = s.grade(r, s.start)
			return out
		}
	case risk.Sighting:
		if o.Since = firstSeen(seen, s.start); !o.Since.IsSet() {
			out.Grade, out.Waiting = s.grade(r, s.start), true
			return out
		}
	}
	out.Since = o.Since
	if r.Pest() {
		o.Seen = firstFlying(seen, s.start)
		out.fly(r, s, o, w.today)
	}
	out.read(r, s, o, w.today)
	if !r.Hourly && !r.Pest() {
		out.Soon = s.soon(r, o, w.today)
	}
	if r.Hourly && s.ahead != nil {
		out.foresee(r, s, o, w.today)
	}
	return out
}

// foresee takes what a rule over hours makes of the days of the forecast.
func (out *RiskRule) foresee(r *risk.Rule, s *riskSite, o risk.Options, today cal.Date) {
	for _, x := range r.Readings(s.ahead, o) {
		if x.Fired && x.Date >= today {
			out.Ahead = append(out.Ahead, x.Date)
		}
	}
}

// read takes what the rule made of the days on record.
func (out *RiskRule) read(r *risk.Rule, s *riskSite, o risk.Options, today cal.Date) {
	from := s.start
	if o.Since.IsSet() {
		from = o.Since
	}
	out.Grade = s.grade(r, from)
	var last risk.Reading
	for _, x := range r.Readings(s.weather, o) {
		if x.Date < s.start {
			continue
		}
		last, out.Last = x, x.Date
		if x.Fired {
			sum := x.Sum
			out.Fired = append(out.Fired, RiskFired{Date: x.Date, Value: x.Value, Sum: &sum, Threshold: x.Threshold, Event: x.Event})
		}
	}
	if out.Last.IsSet() && (r.SumsUp() || today-out.Last <= staleAfter) {
		out.At, out.Of = r.Nearness(last, len(out.Fired))
	}
}

// fly takes what the insects do over the futures.
func (out *RiskRule) fly(r *risk.Rule, s *riskSite, o risk.Options, today cal.Date) {
	if len(s.futures) == 0 {
		return
	}
	comings := r.Comings(s.futures, s.start, o)
	out.Flights = risk.Flights(comings)
	for i := range comings {
		c := &comings[i]
		out.Coming = append(out.Coming, RiskComing{Event: c.Event.Name, Flight: c.Event.Flight, Part: c.Event.Part, Year: c.Year,
			P10: c.Quantile(0.1), P50: c.Quantile(0.5), P90: c.Quantile(0.9), Odds: c.Odds(), Soon: c.Between(today, today+riskSoonD),
			Dates: c.Dates, SumCd: c.Event.SumCd})
	}
}

// soon is the share of the futures in which a rule over days fires in the days to come.
func (s *riskSite) soon(r *risk.Rule, o risk.Options, today cal.Date) float64 {
	n := 0
	for _, days := range s.futures {
		fired := r.Fired(risk.OfDays(s.start, days[:min(len(days), int(today-s.start)+riskSoonD)]), o)
		if slices.ContainsFunc(fired, func(x risk.Reading) bool { return x.Date >= today }) {
			n++
		}
	}
	return float64(n) / float64(max(1, len(s.futures)))
}

// firstSeen is the first day of the season on which it was seen; None: it was not.
func firstSeen(seen []RiskSighting, start cal.Date) cal.Date {
	first := cal.None
	for i := range seen {
		if d := seen[i].Date; d >= start && (!first.IsSet() || d < first) {
			first = d
		}
	}
	return first
}

// firstFlying is the first day on which insects were seen flying.
func firstFlying(seen []RiskSighting, start cal.Date) cal.Date {
	var flying []RiskSighting
	for i := range seen {
		if seen[i].flying() {
			flying = append(flying, seen[i])
		}
	}
	return firstSeen(flying, start)
}

// firedLate is the last day of late on which the rule fired; None: none.
func (r *RiskRule) firedLate(today cal.Date) cal.Date {
	for i := len(r.Fired) - 1; i >= 0; i-- {
		if today-r.Fired[i].Date <= riskAgo {
			return r.Fired[i].Date
		}
	}
	return cal.None
}

// strong tells whether a grade is of hours as recorded, for most of its days.
func (g RiskGrade) strong() bool { return g == GradeHours || g == GradeMixed }

// share is how far the rule is toward firing, 0-1 and more.
func (r *RiskRule) share() float64 {
	if r.Of <= 0 {
		return 0
	}
	return r.At / r.Of
}
