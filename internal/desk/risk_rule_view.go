package desk

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/risk"
)

// RiskRuleView is one rule with what it looks at, at every site where it matters.
type RiskRuleView struct {
	Today  cal.Date
	Rule   *risk.Rule
	Others []*risk.Rule // about the same disease or pest
	Sites  []RiskRuleSite
}

// RiskRuleSite is one rule at one site.
type RiskRuleSite struct {
	Item    RiskItem
	Of      RiskRule
	Weather RiskWeather
	Days    []RiskPoint // of the season on record, in order
	Sums    [][]float64 // of rules that sum warmth: by every tenth future and day from SumsFrom on, of the first event's base
	From    cal.Date    // first day of Sums
}

// RiskPoint is a day of the season as the rule sees it.
type RiskPoint struct {
	Date         cal.Date
	TMinC, TMaxC float64
	RainMM       float64
	HumidH       float64 // hours at or above the rule's humidity
	Value, Sum   float64
	Counts       bool // the rule made something of it
	Fired, Made  bool
}

// RiskRuleView tells all of one rule in the household. A rule that there is none of is
// refused with the nearest name.
func (o *Office) RiskRuleView(id string) (*RiskRuleView, error) {
	rule, err := riskRule(id)
	if err != nil {
		return nil, err
	}
	a, err := o.ask(nil)
	if err != nil {
		return nil, err
	}
	odds, whole := o.groundOdds(a, newNamer(a))
	heard, err := o.heard(a)
	if err != nil {
		return nil, err
	}
	d := a.answer("risk rule 1 " + id)
	if whole {
		d.Int(1)
	}
	d.Int(heard)
	key := d.Sum()
	if v, known := o.views.riskRules.get(key); known {
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
	v, err := w.ruleView(rule)
	if err != nil {
		return nil, err
	}
	o.views.riskRules.keep(key, v)
	return v, nil
}

func (w *riskWork) ruleView(rule *risk.Rule) (*RiskRuleView, error) {
	v := &RiskRuleView{Today: w.today, Rule: rule}
	var rules []*risk.Rule
	for _, r := range w.book.Rules {
		if r.Problem == rule.Problem {
			rules = append(rules, r)
		}
		if r.Problem == rule.Problem && r != rule {
			v.Others = append(v.Others, r)
		}
	}
	for _, s := range w.sites {
		item, err := w.item(s, rules)
		if err != nil {
			return nil, err
		}
		if item == nil {
			continue
		}
		if len(w.sites) > 1 {
			item.SiteName = s.site.Name
		}
		at := slices.IndexFunc(item.Rules, func(r RiskRule) bool { return r.Rule == rule })
		own := RiskRuleSite{Item: *item, Of: item.Rules[at], Weather: s.observed(w.today)}
		own.Days = s.points(&own.Of)
		if rule.Pest() {
			own.sums(s)
		}
		v.Sites = append(v.Sites, own)
	}
	return v, nil
}

// points are the days on record as a rule sees them.
func (s *riskSite) points(of *RiskRule) []RiskPoint {
	readings := map[cal.Date]risk.Reading{}
	if !of.Waiting {
		for _, x := range of.Rule.Readings(s.weather, risk.Options{Since: of.Since, South: s.south}) {
			readings[x.Date] = x
		}
	}
	pct, humid := of.Rule.HumidPct()
	var out []RiskPoint
	for i := range s.weather.Days {
		d := &s.weather.Days[i]
		if d.Date < s.start || !d.Warm {
			continue
		}
		p := RiskPoint{Date: d.Date, TMinC: d.TMinC, TMaxC: d.TMaxC, RainMM: d.RainMM, Made: d.Made}
		if humid {
			p.HumidH = s.weather.HumidHours(d, pct)
		}
		if x, ok := readings[d.Date]; ok {
			p.Value, p.Sum, p.Fired, p.Counts = x.Value, x.Sum, x.Fired, true
		}
		out = append(out, p)
	}
	return out
}

// sums are the warmth summed by ten of the futures, over two years.
func (v *RiskRuleSite) sums(s *riskSite) {
	if len(v.Of.Rule.Events) == 0 || v.Of.Waiting {
		return
	}
	e := &v.Of.Rule.Events[0]
	v.From = s.start
	for i := 0; i < len(s.futures); i += max(1, len(s.futures)/10) {
		v.Sums = append(v.Sums, e.Sums(s.futures[i], s.start, risk.Options{South: s.south, Since: v.Of.Since}))
	}
}

// South tells whether the first of the sites concerned lies south of the equator.
func (v *RiskRuleView) South() bool { return len(v.Sites) > 0 && v.Sites[0].Item.South }

// RiskCrops are the plural names of crops of the book.
func RiskCrops(ids []string) ([]string, error) {
	b, err := book()
	if err != nil {
		return nil, err
	}
	var out []string
	for _, id := range ids {
		if c, ok := b.Crop(id); ok {
			out = append(out, c.Plural)
		}
	}
	return out, nil
}
