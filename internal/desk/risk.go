package desk

import (
	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/near"
	"garner/internal/risk"
	"garner/internal/words"
)

// RiskOptions are what a rule may be told beside the weather.
type RiskOptions struct {
	Rule     string
	Wetness  string   // humidity, dew-point or tree; "" is humidity
	Since    cal.Date // sums begin here; cal.None: with the record and each growing year
	South    bool     // sums begin half a year later than in the north
	EveryDay bool     // a reading for every day as well
}

// RiskResult is a rule over a record of weather.
type RiskResult struct {
	Rule       string      `json:"rule"`
	Fired      []RiskFired `json:"fired"`
	Days       []RiskDay   `json:"days,omitempty"`
	Counted    int         `json:"days_counted"` // days with 22 known hours or more
	LeftOut    int         `json:"days_left_out"`
	Weaker     bool        `json:"weaker"` // looks at days alone, or at hours made from days
	Mark       string      `json:"mark"`
	Confidence string      `json:"confidence"`
	Source     string      `json:"source"`
	URL        string      `json:"url,omitempty"`

	Of *risk.Rule `json:"-"`
}

// RiskFired is a day on which a rule fired.
type RiskFired struct {
	Date      cal.Date `json:"date"`
	Value     float64  `json:"value"`
	Sum       *float64 `json:"sum,omitempty"`
	Threshold float64  `json:"threshold"`
	Event     string   `json:"event,omitempty"`
}

// RiskDay is what a rule makes of a day.
type RiskDay struct {
	Date  cal.Date `json:"date"`
	Value float64  `json:"value"`
	Sum   *float64 `json:"sum,omitempty"`
}

// RiskRules are all rules in order.
func RiskRules() ([]*risk.Rule, error) {
	b, err := risk.Load()
	if err != nil {
		return nil, err
	}
	return b.Rules, nil
}

// Wetnesses names the ways of telling wet leaves, the usual one first.
func Wetnesses() (names []string) {
	for _, w := range risk.Wetnesses() {
		names = append(names, string(w))
	}
	return names
}

// RiskOfHours runs a rule over hourly weather. An unknown rule is refused with the
// nearest name, and so is a rule over a flight that no one has told of.
func RiskOfHours(hours []climate.Hour, o RiskOptions) (*RiskResult, error) {
	return riskOf(risk.New(hours), o)
}

// RiskOfDays runs a rule over hours that are made from a daily record.
func RiskOfDays(r *climate.Record, o RiskOptions) (*RiskResult, error) {
	return riskOf(risk.FromDays(r), o)
}

func riskOf(w *risk.Weather, o RiskOptions) (*RiskResult, error) {
	rule, err := riskRule(o.Rule)
	if err != nil {
		return nil, err
	}
	if rule.Needs() && o.Since == cal.None {
		return nil, fault.New(fault.Invalid, "desk.risk_needs_sighting", words.Args{"rule": rule.ID})
	}
	if lacks := rule.Lacks(w, risk.Wetness(o.Wetness)); len(lacks) > 0 && len(w.Hours) > 0 {
		return nil, fault.New(fault.Invalid, "desk.risk_lacks", words.Args{"rule": rule.ID, "columns": lacks})
	}
	r := &RiskResult{Rule: rule.ID, Fired: []RiskFired{}, Weaker: w.Estimated || !rule.Hourly, Mark: rule.Mark,
		Confidence: rule.Confidence, Source: rule.Source, URL: rule.URL, Of: rule}
	for i := range w.Days {
		if d := &w.Days[i]; d.Humid || d.Warm && !rule.Humid() {
			r.Counted++
		}
	}
	r.LeftOut = len(w.Days) - r.Counted
	for _, x := range rule.Readings(w, risk.Options{Wet: risk.Wetness(o.Wetness), Since: o.Since, South: o.South}) {
		var sum *float64
		if x.Sum != 0 {
			sum = &x.Sum
		}
		if x.Fired {
			r.Fired = append(r.Fired, RiskFired{x.Date, x.Value, sum, x.Threshold, x.Event})
		}
		if o.EveryDay {
			r.Days = append(r.Days, RiskDay{x.Date, x.Value, sum})
		}
	}
	return r, nil
}

// RiskRuleNamed refuses a rule that there is none of, with the nearest name.
func RiskRuleNamed(id string) error {
	_, err := riskRule(id)
	return err
}

// riskRule finds a rule by its id.
func riskRule(id string) (*risk.Rule, error) {
	b, err := risk.Load()
	if err != nil {
		return nil, err
	}
	if rule, ok := b.Rule(id); ok {
		return rule, nil
	}
	var ids []string
	for _, r := range b.Rules {
		ids = append(ids, r.ID)
	}
	if meant := near.Names(id, ids, 1); len(meant) > 0 {
		return nil, fault.New(fault.NotFound, "desk.risk_no_rule_meant", words.Args{"given": id, "meant": meant[0]})
	}
	return nil, fault.New(fault.NotFound, "desk.risk_no_rule", words.Args{"given": id})
}
