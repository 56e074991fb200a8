package desk

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/risk"
	"garner/internal/words"
)

// leastMeeting is the share of the futures from which a flight is told to meet a
// planting.
const leastMeeting = 0.2

// judge says how near a problem is and why; dates are to be sharpened.
func (i *RiskItem) judge(today cal.Date) {
	i.State, i.when = AtRiskQuiet, 0
	i.bySight(today)
	i.byRules(today)
	i.byFlights(today)
	if i.State == AtRiskQuiet && !i.told() {
		i.State = AtRiskDark
		i.Says = append(i.Says, words.P("desk.risk_dark", nil))
	}
	if first := i.firstStand(); i.State == AtRiskQuiet && first > today {
		i.State, i.when = AtRiskLater, first
		i.Says = append(i.Says, words.P("desk.risk_stands_from", words.Args{"date": first}))
	}
	if len(i.Says) == 0 {
		i.Says = append(i.Says, words.P("desk.risk_quiet", nil))
	}
}

// raise takes a state that is nearer than the one so far, and says first why.
func (i *RiskItem) raise(state RiskState, when cal.Date, says words.Phrase) {
	if rank(state) < rank(i.State) {
		i.State, i.when = state, when
		i.Says = slices.Insert(i.Says, 0, says)
	}
}

// rank is the place of a state in their order.
func rank(state RiskState) int {
	for k, s := range riskOrder {
		if s == state {
			return k
		}
	}
	return len(riskOrder)
}

// stands tells whether a host stands or soon will.
func (i *RiskItem) stands(today cal.Date) bool {
	first := i.firstStand()
	return first.IsSet() && first <= today+riskSoon
}

// firstStand is the first day of a host; None: there is none.
func (i *RiskItem) firstStand() cal.Date {
	if len(i.Hosts) == 0 {
		return cal.None
	}
	return i.Hosts[0].From
}

// told tells whether any rule says anything.
func (i *RiskItem) told() bool {
	for k := range i.Rules {
		r := &i.Rules[k]
		if r.Grade != GradeNone && r.Grade != "" && !r.Waiting || len(r.Coming) > 0 {
			return true
		}
	}
	return false
}

func (i *RiskItem) bySight(today cal.Date) {
	if len(i.Seen) == 0 || today-i.Seen[0].Date > seenOfLate {
		return
	}
	s := &i.Seen[0]
	key, args := "desk.risk_seen_in_bed", words.Args{"date": s.Date, "bed": s.BedName}
	if s.Name != "" {
		key, args["what"] = "desk.risk_seen_on_planting", s.Name
	}
	i.raise(AtRiskSeen, -s.Date, words.P(key, args))
}

// byRules tells of rules over diseases that fired of late or are near.
func (i *RiskItem) byRules(today cal.Date) {
	if i.Pest || !i.stands(today) {
		return
	}
	for k := range i.Rules {
		r := &i.Rules[k]
		fired := r.firedLate(today)
		args := words.Args{"rule": r.Rule.Short(), "date": fired, "at": r.At, "of": r.Of, "odds": r.Soon, "days": riskSoonD}
		switch {
		case fired.IsSet() && (r.Grade.strong() || !r.Rule.Hourly):
			i.raise(AtRiskFired, -fired, words.P("desk.risk_fired_on", args))
		case fired.IsSet():
			i.raise(AtRiskPerhaps, -fired, words.P("desk.risk_perhaps_on", args))
		case r.Rule.SumsUp() && r.share() >= nearShare:
			i.raise(AtRiskNear, today, words.P("desk.risk_near", args))
		}
		if len(r.Ahead) > 0 {
			i.raise(AtRiskPerhaps, r.Ahead[0], words.P("desk.risk_ahead_on", words.Args{"rule": r.Rule.Short(), "date": r.Ahead[0], "n": len(r.Ahead)}))
		}
		if r.Soon >= leastMeeting && r.Last.IsSet() { // other years alone press nobody
			i.raise(AtRiskNear, today, words.P("desk.risk_fires_soon", args))
		}
		if r.Waiting && len(i.Rules) == 1 {
			i.Says = append(i.Says, words.P("desk.risk_waits", nil))
		}
	}
}

// byFlights tells of the next flight that meets a host, or that none is to come.
func (i *RiskItem) byFlights(today cal.Date) {
	if !i.Pest {
		return
	}
	for _, f := range i.flights() {
		from, until := f.Quantiles(0.5, 0.5)
		met := i.metBy(&f)
		if !from.IsSet() || until.IsSet() && until <= today || len(met) == 0 {
			continue
		}
		args := words.Args{"n": f.Number, "from": from, "hosts": met}
		switch {
		case from <= today:
			i.raise(AtRiskFlying, from, words.P("desk.risk_flies_now", args))
		case from <= today+riskSoonD:
			i.raise(AtRiskFlying, from, words.P("desk.risk_flies_soon", args))
		default:
			i.raise(AtRiskLater, from, words.P("desk.risk_flies_later", args))
		}
		return
	}
	if len(i.flights()) > 0 && len(i.Says) == 0 {
		i.Says = append(i.Says, words.P("desk.risk_flies_past", nil))
	}
}

// mostMet is how many plantings that a flight meets are named.
const mostMet = 3

// metBy names the hosts that a flight meets in a good share of the futures, the first
// of them and how many more.
func (i *RiskItem) metBy(f *risk.Flight) []words.Phrase {
	var out []words.Phrase
	named := map[[2]string]bool{} // two sowings of one bed by one name
	for h := range i.Hosts {
		for _, m := range i.Hosts[h].Meets {
			name := [2]string{i.Hosts[h].Name, i.Hosts[h].BedName}
			if m.Flight == f.Number && m.Year == f.Year && m.Odds >= leastMeeting && !named[name] {
				named[name] = true
				out = append(out, words.P("desk.risk_host", words.Args{"what": i.Hosts[h].Name, "bed": i.Hosts[h].BedName}))
			}
		}
	}
	if n := len(out) - mostMet; n > 1 {
		out = append(out[:mostMet:mostMet], words.P("desk.risk_hosts_more", words.Args{"n": n}))
	}
	return out
}

// At are the items of one disease or pest, what needs a hand first.
func (v *RiskView) At(problem string) []*RiskItem {
	var out []*RiskItem
	for k := range v.Items {
		if v.Items[k].Problem == problem {
			out = append(out, &v.Items[k])
		}
	}
	return out
}

// lead is what is first to be told.
func (v *RiskView) lead() words.Phrase {
	near := map[string]bool{} // told once, at however many sites
	for k := range v.Items {
		if rank(v.Items[k].State) <= rank(AtRiskPerhaps) {
			near[v.Items[k].Problem] = true
		}
	}
	if pressing := len(near); pressing > 0 {
		first := &v.Items[0]
		args := words.Args{"what": first.Name, "says": first.Says[0], "n": pressing - 1}
		if pressing == 1 {
			return words.P("desk.risk_lead_one", args)
		}
		return words.P("desk.risk_lead", args)
	}
	for k := range v.Items {
		if i := &v.Items[k]; i.State == AtRiskLater && i.Pest {
			return words.P("desk.risk_lead_later", words.Args{"what": i.Name, "says": i.Says[0]})
		}
	}
	if len(v.Items) == 0 {
		return words.P("desk.risk_lead_none", nil)
	}
	return words.P("desk.risk_lead_quiet", nil)
}
