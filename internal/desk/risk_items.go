package desk

import (
	"cmp"
	"slices"

	"garner/internal/cal"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/risk"
	"garner/internal/words"
)

// Risks tells what the weather puts at risk in a holding.
func Risks(h *holding.Holding, seed uint64, progress func(done, total int)) (*RiskView, error) {
	setting, err := settingOf(h, OutlookOptions{Seed: seed, Progress: progress})
	if err != nil {
		return nil, err
	}
	t, err := outlook.Compute(setting, memory())
	if err != nil {
		return nil, err
	}
	a := &asked{holding: h, setting: setting}
	n := newNamer(a)
	over := map[string]cal.Date{}
	for i := range t.Plantings {
		line := n.line(t, &t.Plantings[i], nil)
		over[line.ID] = line.Over.P50
	}
	w, err := newRiskWork(a, func(id string) cal.Date {
		if d, known := over[id]; known {
			return d
		}
		return cal.None
	})
	if err != nil {
		return nil, err
	}
	v, err := w.view()
	if err == nil {
		v.Whole = true
	}
	return v, err
}

// RiskView tells what the weather puts at risk in the household. It never waits for a
// table: until there is one, plantings end after the days of the crop book.
func (o *Office) RiskView() (*RiskView, error) {
	a, err := o.ask(nil)
	if err != nil {
		return nil, err
	}
	odds, whole := o.groundOdds(a, newNamer(a))
	heard, err := o.heard(a)
	if err != nil {
		return nil, err
	}
	d := a.answer("risk 1")
	if whole {
		d.Int(1)
	}
	d.Int(heard)
	key := d.Sum()
	if v, known := o.views.risks.get(key); known {
		return v, nil
	}
	w, err := newRiskWork(a, func(id string) cal.Date {
		if its, ok := odds[id]; ok {
			return its.Over.P50
		}
		return cal.None
	})
	if err != nil {
		return nil, err
	}
	v, err := w.view()
	if err != nil {
		return nil, err
	}
	v.Whole = whole
	o.views.risks.keep(key, v)
	return v, nil
}

// view puts everything together.
func (w *riskWork) view() (*RiskView, error) {
	v := &RiskView{Today: w.today}
	for _, s := range w.sites {
		if len(s.beds) == 0 {
			continue
		}
		v.Sites++
		v.Weather = append(v.Weather, s.observed(w.today))
		for _, rules := range w.problems() {
			item, err := w.item(s, rules)
			if err != nil {
				return nil, err
			}
			if item != nil {
				v.Items = append(v.Items, *item)
			}
		}
	}
	if v.Sites > 1 {
		for i := range v.Items {
			v.Items[i].SiteName = w.siteName(v.Items[i].Site)
		}
	}
	slices.SortStableFunc(v.Items, func(a, b RiskItem) int {
		return cmp.Or(rank(a.State)-rank(b.State), a.doubt()-b.doubt(), cmp.Compare(a.when, b.when))
	})
	v.Lead = v.lead()
	return v, nil
}

// doubt puts a rule whose figures are sure before others.
func (i *RiskItem) doubt() int {
	if i.State == AtRiskFired && i.Rules[0].Rule.Confidence != "high" {
		return 1
	}
	return 0
}

func (w *riskWork) siteName(id string) string {
	for _, s := range w.sites {
		if s.site.ID == id {
			return s.site.Name
		}
	}
	return id
}

// problems are the rules in groups of what they are about, in their order.
func (w *riskWork) problems() [][]*risk.Rule {
	var out [][]*risk.Rule
	at := map[string]int{}
	for _, r := range w.book.Rules {
		i, known := at[r.Problem]
		if !known {
			i, at[r.Problem] = len(out), len(out)
			out = append(out, nil)
		}
		out[i] = append(out[i], r)
	}
	return out
}

// item is one problem at one site; nil where no crop of it stands or comes and it was
// not seen this season.
func (w *riskWork) item(s *riskSite, rules []*risk.Rule) (*RiskItem, error) {
	hosts, err := w.hosts(s, rules)
	if err != nil {
		return nil, err
	}
	i := &RiskItem{Problem: rules[0].Problem, Name: risk.ProblemName(rules[0].Problem), Pest: rules[0].Pest(), Site: s.site.ID, South: s.south, Hosts: hosts}
	i.Seen = w.seen(s, i.Problem)
	if len(hosts) == 0 && !firstSeen(i.Seen, s.start).IsSet() {
		return nil, nil
	}
	for _, r := range rules {
		i.Rules = append(i.Rules, w.ruleOver(s, r, hosts, i.Seen))
	}
	i.weave()
	i.meet(w.today)
	i.advise(w.today)
	i.foreseen(s.start)
	i.judge(w.today)
	return i, nil
}

// meet tells which flights of the season and the next meet each planting: by the first
// of the rules that tells of a flight, so that two do not tell of it twice.
func (i *RiskItem) meet(today cal.Date) {
	for h := range i.Hosts {
		host := &i.Hosts[h]
		for _, f := range i.flights() {
			if from, until := f.Quantiles(0, 0.999); until.IsSet() && until < max(today, host.From) || from.IsSet() && from > host.Until {
				continue
			}
			odds := f.Meets(ahead(host.Open, today))
			if odds > 0 || i.Rules[0].Rule.TenderD == 0 && f.Meets([]risk.Stay{{From: max(today, host.From), Until: host.Until}}) > 0 {
				host.Meets = append(host.Meets, RiskMeeting{f.Number, f.Year, odds})
			}
		}
	}
}

// flights are those of the rules, each told once.
func (i *RiskItem) flights() []risk.Flight {
	var out []risk.Flight
	for k := range i.Rules {
		for _, f := range i.Rules[k].Flights {
			if !slices.ContainsFunc(out, func(o risk.Flight) bool { return o.Number == f.Number && o.Year == f.Year }) {
				out = append(out, f)
			}
		}
	}
	return out
}

// weave tells the flights for pages.
func (i *RiskItem) weave() {
	for _, f := range i.flights() {
		v := RiskFlight{Number: f.Number, Year: f.Year}
		v.From, v.Until = f.Quantiles(0.5, 0.5)
		v.P10, _ = f.Quantiles(0.1, 0)
		v.P90, _ = f.Quantiles(0.9, 0)
		order := make([]int, 0, len(f.From))
		for k := range f.From {
			if f.From[k].IsSet() {
				order = append(order, k)
			}
		}
		slices.SortStableFunc(order, func(a, b int) int { return int(f.From[a] - f.From[b]) })
		v.Odds = float64(len(order)) / float64(max(1, len(f.From)))
		for t := range RiskThreads {
			if k := (2*t + 1) * len(f.From) / (2 * RiskThreads); k < len(order) {
				v.Threads = append(v.Threads, RiskThread{f.From[order[k]], f.Until[order[k]]})
			}
		}
		if len(v.Threads) > 0 {
			i.Flights = append(i.Flights, v)
		}
	}
}

// ahead are stays from a day on.
func ahead(stays []risk.Stay, from cal.Date) []risk.Stay {
	var out []risk.Stay
	for _, s := range stays {
		if s.Until > from {
			out = append(out, risk.Stay{From: max(s.From, from), Until: s.Until})
		}
	}
	return out
}

// EventPhrase says what a pest does.
func EventPhrase(event string) words.Phrase { return risk.EventName(event) }

// Only leaves what one rule is about, with that rule alone.
func (v *RiskView) Only(rule string) {
	var kept []RiskItem
	for _, i := range v.Items {
		if at := slices.IndexFunc(i.Rules, func(r RiskRule) bool { return r.Rule.ID == rule }); at >= 0 {
			i.Rules = i.Rules[at : at+1]
			kept = append(kept, i)
		}
	}
	v.Items = kept
	v.Lead = v.lead()
}
