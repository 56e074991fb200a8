package cli

import (
	"garner/internal/climate"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/station"
	"garner/internal/words"
)

// The heights at which wind is measured [m].
const (
	leastWindHeightM = 0.5
	mostWindHeightM  = 100
)

// et0Command tells the reference evapotranspiration of each day of a record.
type et0Command struct {
	Daily      string `arg:"" placeholder:"DAILY.csv"`
	Site       string `placeholder:"LAT,LON,ELEV"`
	WindHeight string `placeholder:"M"`
	KeepGood   bool   `name:"keep-good"`
	JSON       bool   `name:"json"`
}

// et0Answer is its JSON, with what was left out in words.
type et0Answer struct {
	*desk.ET0Result
	Refused []faultRow `json:"refused"`
}

// Run reads the record, asks the desk and shows the days. A record with values that
// cannot be is refused with all of them, unless the good rows are to be kept.
func (c *et0Command) Run(a *App) error {
	var f flags
	site := f.site(f.need("--site", c.Site))
	height := f.between("--wind-height", c.WindHeight, leastWindHeightM, mostWindHeightM)
	if err := f.err(); err != nil {
		return err
	}
	record, refused, err := a.readWind(c.Daily, height)
	if err != nil {
		return err
	}
	if len(refused) > 0 && !c.KeepGood {
		return append(refused, fault.New(fault.Invalid, "cli.et0_keep_good", nil))
	}
	r, err := desk.ET0(record, site, c.Daily)
	if err != nil {
		return err
	}
	refused = append(refused, r.Left...)
	if c.JSON {
		return a.json(et0Answer{r, a.faultRows(refused)})
	}
	a.warn(refused)
	a.showET0(r)
	return nil
}

// readWind reads a daily record whose wind was measured at a height [m], 0: as its
// column tells. What was refused in it is returned.
func (a *App) readWind(path string, heightM float64) (*climate.Record, fault.List, error) {
	file, err := open(path)
	if err != nil {
		return nil, nil, err
	}
	defer file.Close()
	record, report, err := station.ReadDailyAt(file, path, heightM)
	if err != nil {
		return nil, nil, err
	}
	a.warn(report.Warnings)
	return record, report.Refused, nil
}

// showET0 writes a line for each day and their sum.
func (a *App) showET0(r *desk.ET0Result) {
	format := a.Words.Format()
	g := &grid{right: []bool{false, true}}
	g.add(a.head("cli.column_day"), a.head("cli.column_et0"))
	for _, d := range r.Days {
		g.add(d.Date.String(), format.Number(d.MM, 2))
	}
	g.write(a)
	a.gap()
	a.say(words.P("cli.et0_total", words.Args{"n": len(r.Days), "mm": r.TotalMM}))
	if r.Plain > 0 {
		a.say(words.P("cli.et0_hargreaves", words.Args{"n": r.Plain}))
	}
}
