package scoreboard

import (
	"math"

	"garner/internal/fault"
	"garner/internal/risk"
	"garner/internal/table"
	"garner/internal/words"
)

// risk holds severity values and a day's warmth against published ones.
func (m *maker) risk() (s Section, err error) {
	c, err := table.OpenCells(m.data, "risk.csv", "check", "rule", "first", "second", "base_c", "upper_c", "published", "slack", "source", "mark")
	if err != nil {
		return s, err
	}
	book, err := risk.Load()
	if err != nil {
		return s, err
	}
	for i := range c.Rows {
		first, second := c.Within(i, "first", -30, 50), c.Within(i, "second", -30, 50)
		args := words.Args{"rule": c.Text(i, "rule"), "first": first, "second": second}
		l := Line{Published: span(c, i, "published", "published"), Unit: "1", Slack: c.Within(i, "slack", 0, 1),
			Sources: []string{m.work(c.Text(i, "source"))}, Mark: c.Text(i, "mark")}
		if c.Text(i, "check") == "severity" {
			l.Check = words.P("scoreboard.risk_severity", args)
			rule, ok := book.Rule(c.Text(i, "rule"))
			if !ok {
				return s, fault.New(fault.Internal, "scoreboard.data", nil)
			}
			l.Computed = exactly(float64(rule.Severity(first, int(second))))
		} else {
			base := c.Within(i, "base_c", -5, 20)
			args["base"] = base
			upper := math.Inf(1)
			if c.Text(i, "upper_c") != "" {
				upper = c.Within(i, "upper_c", 10, 45)
			}
			l.Check = words.P("scoreboard.risk_warmth", args)
			l.Computed = exactly(risk.Method(c.Text(i, "rule")).DegreeDays(first, second, base, upper))
		}
		s.Lines = append(s.Lines, l.judge())
	}
	return s, c.Err()
}
