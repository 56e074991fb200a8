package cli

import (
	"garner/internal/climate"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/words"
)

// describeCommand tells what a daily record says of a place.
type describeCommand struct {
	Daily string `arg:"" optional:"" placeholder:"DAILY.csv"`
	Site  string `placeholder:"LAT,LON,ELEV"`
	holdingFlags
	JSON bool `name:"json"`
}

// describeAnswer is the JSON of a description, with what was refused in words.
type describeAnswer struct {
	*desk.DescribeResult
	Refused []faultRow `json:"refused"`
}

// Run reads the record, asks the desk and shows the answer.
func (c *describeCommand) Run(a *App) error {
	var f flags
	at, err := c.findSpot(a, &f, c.Site, "DAILY.csv", c.Daily)
	if err != nil {
		return err
	}
	record, refused, err := c.record(a, at)
	if err != nil {
		return err
	}
	result, err := desk.Describe(record, refused, at.site)
	if err != nil {
		return err
	}
	if c.JSON {
		return a.json(describeAnswer{result, a.faultRows(result.Refused)})
	}
	a.showDescription(result, at.site)
	return nil
}

// record returns the daily record: the file named, else the holding's own.
func (c *describeCommand) record(a *App, at spot) (*climate.Record, fault.List, error) {
	if c.Daily != "" {
		return a.readDaily(c.Daily, false)
	}
	if at.weather == nil || at.weather.Record == nil {
		return nil, nil, fault.New(fault.NotFound, "cli.no_record", nil)
	}
	return at.weather.Record, nil, nil
}

// showDescription writes normals, frost dates, warmth and what is missing.
func (a *App) showDescription(r *desk.DescribeResult, site desk.Site) {
	a.say(words.P("cli.describe_title", words.Args{
		"first": r.First, "last": r.Last, "days": r.Days, "site": a.siteText(site),
	}))
	a.gap()
	a.monthGrid(r.Normals).write(a)
	a.gap()
	a.sayFrost("cli.frost_spring", "cli.frost_spring_none", r.LastSpringFrost)
	a.sayFrost("cli.frost_autumn", "cli.frost_autumn_none", r.FirstAutumnFrost)
	for _, d := range r.DegreeDays {
		a.say(words.P("cli.degree_days", words.Args{"base": d.BaseC, "sum": d.YearlyCd}))
	}
	a.sayMissing(r)
	if len(r.Refused) > 0 {
		a.gap()
		a.say(words.P("cli.refused", words.Args{"n": len(r.Refused)}))
		for _, f := range r.Refused {
			a.say(words.P("cli.list_item", words.Args{"text": a.placed(f)}))
		}
	}
}

// sayMissing tells how many days have no value, and which columns never had one.
func (a *App) sayMissing(r *desk.DescribeResult) {
	var never []string
	for _, m := range r.Missing {
		switch {
		case m.Days >= r.Days:
			never = append(never, m.Column)
		case m.Days > 0:
			a.say(words.P("cli.missing", words.Args{"column": m.Column, "n": m.Days}))
		}
	}
	if len(never) > 0 {
		a.say(words.P("cli.never_recorded", words.Args{"columns": never}))
	}
}

// monthGrid lays out the normals; a column that was never recorded is left out.
func (a *App) monthGrid(months []desk.MonthTable) *grid {
	columns := []struct {
		key      string
		value    func(desk.MonthTable) *float64
		decimals int
	}{
		{"cli.column_tmin", func(m desk.MonthTable) *float64 { return m.TMinC }, 1},
		{"cli.column_tmax", func(m desk.MonthTable) *float64 { return m.TMaxC }, 1},
		{"cli.column_rain", func(m desk.MonthTable) *float64 { return m.RainMM }, 0},
		{"cli.column_sun", func(m desk.MonthTable) *float64 { return m.SunH }, 1},
		{"cli.column_radiation", func(m desk.MonthTable) *float64 { return m.RadiationMJ }, 1},
		{"cli.column_humidity", func(m desk.MonthTable) *float64 { return m.HumidityPct }, 0},
		{"cli.column_wind", func(m desk.MonthTable) *float64 { return m.WindMS }, 1},
	}
	format := a.Words.Format()
	g := &grid{right: []bool{false}, rows: make([][]string, len(months)+1)}
	g.rows[0] = []string{a.head("cli.column_month")}
	for i, m := range months {
		g.rows[i+1] = []string{format.Month(m.Month)}
	}
	for _, c := range columns {
		if !recorded(months, c.value) {
			continue
		}
		g.right = append(g.right, true)
		g.rows[0] = append(g.rows[0], a.head(c.key))
		for i, m := range months {
			cell := ""
			if v := c.value(m); v != nil {
				cell = format.Number(*v, c.decimals)
			}
			g.rows[i+1] = append(g.rows[i+1], cell)
		}
	}
	return g
}

func recorded(months []desk.MonthTable, value func(desk.MonthTable) *float64) bool {
	for _, m := range months {
		if value(m) != nil {
			return true
		}
	}
	return false
}

func (a *App) sayFrost(key, without string, d desk.FrostDates) {
	if d.P10 == nil || d.P50 == nil || d.P90 == nil {
		a.say(words.P(without, nil))
		return
	}
	a.say(words.P(key, words.Args{"p10": *d.P10, "p50": *d.P50, "p90": *d.P90}))
}
