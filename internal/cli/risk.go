package cli

import (
	"strings"

	"garner/internal/climate"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/risk"
	"garner/internal/station"
	"garner/internal/words"
)

// riskCommand tells what is at risk in a holding, runs a rule for a disease or pest
// over a file of weather, or lists the rules.
type riskCommand struct {
	Hourly    string `arg:"" optional:"" placeholder:"HOURLY.csv"`
	Rule      string `placeholder:"RULE"`
	Since     string `placeholder:"DATE"`
	Wetness   string `placeholder:"humidity|dew-point|tree"`
	Daily     bool
	DropJumps bool `name:"drop-jumps"`
	EveryDay  bool `name:"every-day"`
	South     bool
	Rules     bool
	holdingFlags
	JSON bool `name:"json"`
}

// riskAnswer is the JSON of a rule over a record, with what was refused in words.
type riskAnswer struct {
	*desk.RiskResult
	Refused  []faultRow `json:"refused"`
	Warnings []faultRow `json:"warnings"`
}

// Run tells what is at risk, lists the rules, shows one, or runs one over a file.
func (c *riskCommand) Run(a *App) error {
	var f flags
	o := desk.RiskOptions{Rule: c.Rule, EveryDay: c.EveryDay, Since: f.date("--since", c.Since),
		South: c.South, Wetness: f.oneOf("--wetness", c.Wetness, desk.Wetnesses())}
	if c.Hourly != "" {
		f.need("--rule", c.Rule)
	}
	if err := f.err(); err != nil {
		return err
	}
	switch {
	case c.Hourly != "":
	case c.Rules:
		return a.riskRules("", c.JSON)
	case c.Rule != "" && !c.given():
		return a.riskRules(c.Rule, c.JSON)
	default:
		return c.atHome(a)
	}
	answer, err := c.judge(a, o)
	if err != nil {
		return err
	}
	if c.JSON {
		return a.json(answer)
	}
	a.showRisk(answer.RiskResult, c.EveryDay)
	return nil
}

// judge reads the weather and runs the rule. What was refused and what is odd is
// said on the way, however the answer is asked for.
func (c *riskCommand) judge(a *App, o desk.RiskOptions) (*riskAnswer, error) {
	if c.Daily {
		record, refused, err := a.readDaily(c.Hourly, true)
		if err != nil {
			return nil, err
		}
		r, err := desk.RiskOfDays(record, o)
		return &riskAnswer{r, a.faultRows(refused), []faultRow{}}, err
	}
	hours, report, err := a.readHourly(c.Hourly)
	if err != nil {
		return nil, err
	}
	if c.DropJumps {
		station.DropSpikes(hours)
	}
	r, err := desk.RiskOfHours(hours, o)
	return &riskAnswer{r, a.faultRows(report.Refused), a.faultRows(report.Warnings)}, err
}

// readHourly reads an hourly record and says what is wrong with it.
func (a *App) readHourly(path string) ([]climate.Hour, station.Report, error) {
	file, err := open(path)
	if err != nil {
		return nil, station.Report{}, err
	}
	defer file.Close()
	hours, report, err := station.ReadHourly(file, path)
	if err != nil {
		return nil, report, err
	}
	a.warn(append(append(fault.List(nil), report.Refused...), report.Warnings...))
	return hours, report, nil
}

// riskRow is a rule as the JSON of the list shows it.
type riskRow struct {
	Rule       string   `json:"rule"`
	Name       string   `json:"name"`
	Reads      string   `json:"reads"`
	Crops      []string `json:"crops"`
	Hourly     bool     `json:"hourly"`
	Weaker     bool     `json:"weaker"`
	Mark       string   `json:"mark"`
	Confidence string   `json:"confidence"`
	Source     string   `json:"source"`
	URL        string   `json:"url,omitempty"`
}

// riskRules lists all rules, or tells all of one.
func (a *App) riskRules(id string, asJSON bool) error {
	rules, err := desk.RiskRules()
	if err != nil {
		return err
	}
	if id != "" {
		r, err := desk.RiskOfHours(nil, desk.RiskOptions{Rule: id, Since: 1})
		if err != nil {
			return err
		}
		rules = []*risk.Rule{r.Of}
	}
	if asJSON {
		out := make([]riskRow, len(rules))
		for i, r := range rules {
			out[i] = riskRow{r.ID, a.Words.Text(r.Name()), a.Words.Text(r.Reads()), r.Crops, r.Hourly, !r.Hourly, r.Mark, r.Confidence, r.Source, r.URL}
		}
		return a.json(struct {
			Rules []riskRow `json:"rules"`
		}{out})
	}
	if id != "" {
		a.tellRule(rules[0])
		return nil
	}
	g := &grid{}
	for _, r := range rules {
		g.add(r.ID, a.Words.Text(r.Name()), a.Words.Text(words.P("cli.risk_mark_"+r.Mark, nil)), r.Source)
	}
	g.write(a)
	a.gap()
	a.say(words.P("cli.risk_reading", nil))
	return nil
}

// tellRule writes what a rule looks at, its numbers, its source and what growers do.
func (a *App) tellRule(r *risk.Rule) {
	a.say(r.Name())
	a.say(r.Reads())
	if !r.Hourly {
		a.say(words.P("cli.risk_weaker", nil))
	}
	a.gap()
	g := &grid{right: []bool{false, true}}
	for _, n := range r.Numbers {
		g.add(n.Name, a.Words.Format().Number(n.Value, decimalsOf(n.Value)), n.Unit, n.Mark, n.Source)
	}
	for i := range r.Events {
		e := &r.Events[i]
		g.add(a.Words.Text(risk.EventName(e.Name)), a.Words.Format().Number(e.SumCd, decimalsOf(e.SumCd)),
			a.Words.Text(words.P("cli.risk_above", words.Args{"base": e.BaseC})), e.Mark, e.Region)
	}
	g.write(a)
	a.gap()
	a.say(words.P("cli.risk_source", words.Args{"source": strings.TrimSpace(r.Source + " " + r.URL), "mark": r.Mark, "confidence": r.Confidence}))
	a.say(words.P("cli.risk_cause", words.Args{"cause": r.Cause}))
	a.sayMeasures(r)
}

// decimalsOf is how many decimals a number of the data needs.
func decimalsOf(v float64) int {
	for n, by := 0, 1.0; n < 7; n, by = n+1, by*10 {
		if x := v * by; x-float64(int64(x)) < 1e-9 && x-float64(int64(x)) > -1e-9 {
			return n
		}
	}
	return 7
}

// sayMeasures writes what growers do about it.
func (a *App) sayMeasures(r *risk.Rule) {
	a.gap()
	a.say(words.P("cli.risk_do", nil))
	for _, m := range r.Measures {
		a.say(words.P("cli.list_item", words.Args{"text": a.Words.Text(m.Text())}))
	}
}

// showRisk writes the days on which a rule fired, with what it looked at.
func (a *App) showRisk(r *desk.RiskResult, everyDay bool) {
	a.say(r.Of.Name())
	a.say(r.Of.Reads())
	if r.Weaker {
		a.say(words.P("cli.risk_weaker", nil))
	}
	a.gap()
	a.say(words.P("cli.risk_fired", words.Args{"n": len(r.Fired), "days": r.Counted}))
	format := a.Words.Format()
	g := &grid{right: []bool{false, true, true, true}}
	cells := func(value float64, sum *float64) []string {
		row := []string{format.Number(value, min(2, decimalsOf(value))), ""}
		if sum != nil {
			row[1] = format.Number(*sum, min(2, decimalsOf(*sum)))
		}
		return row
	}
	g.add(a.head("cli.column_date"), a.head("cli.column_value"), a.head("cli.column_sum"), a.head("cli.column_from"))
	for _, x := range r.Fired {
		row := append([]string{format.Date(x.Date)}, cells(x.Value, x.Sum)...)
		row = append(row, format.Number(x.Threshold, min(2, decimalsOf(x.Threshold))))
		if x.Event != "" {
			row = append(row, a.Words.Text(risk.EventName(x.Event)))
		}
		g.add(row...)
	}
	if len(r.Fired) > 0 {
		g.write(a)
	}
	if everyDay {
		a.gap()
		d := &grid{right: g.right}
		d.add(a.head("cli.column_date"), a.head("cli.column_value"), a.head("cli.column_sum"))
		for _, x := range r.Days {
			d.add(append([]string{format.Date(x.Date)}, cells(x.Value, x.Sum)...)...)
		}
		d.write(a)
	}
	if r.LeftOut > 0 {
		a.say(words.P("cli.risk_left_out", words.Args{"n": r.LeftOut}))
	}
	a.gap()
	a.say(words.P("cli.risk_source", words.Args{"source": strings.TrimSpace(r.Source + " " + r.URL), "mark": r.Mark, "confidence": r.Confidence}))
	a.sayMeasures(r.Of)
}
