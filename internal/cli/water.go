package cli

import (
	"strings"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/words"
)

// waterCommand tells how much water each bed wants.
type waterCommand struct {
	Away   string `placeholder:"A..B"`
	Enough string `placeholder:"N"`
	Months bool
	Butt   string `placeholder:"ID"`
	Left   string `placeholder:"L"`
	Days   string `placeholder:"N"`
	Site   string `placeholder:"ID"`
	Feed   bool
	Seed   string `placeholder:"S"`
	holdingFlags
	JSON bool `name:"json"`
}

// Run asks the desk what the beds want and shows it.
func (c *waterCommand) Run(a *App) error {
	if c.Months || c.Butt != "" || c.Left != "" || c.Feed {
		return c.supply(a)
	}
	var f flags
	c.refuseAlone(&f)
	options := desk.WateringOptions{Seed: f.seed(c.Seed)}
	options.Leave, options.Back = f.away(c.Away)
	options.Enough = f.whole("--enough", c.Enough, 5, 9, 0)
	if c.Enough != "" && c.Away == "" {
		f.refuse(fault.Invalid, words.P("cli.water_needs_away", nil))
	}
	r, err := ask(a, c.holdingFlags, &f, func(h *holding.Holding, _ reporter) (*desk.WateringResult, error) {
		if options.Leave.IsSet() {
			return desk.Away(h, options)
		}
		return desk.Watering(h, options)
	})
	if err != nil {
		return err
	}
	if c.JSON {
		return a.json(r)
	}
	a.showWater(r)
	return nil
}

// away reads A..B, the days of leaving and of coming back; nothing gives none.
func (f *flags) away(given string) (leave, back cal.Date) {
	if given == "" {
		return cal.None, cal.None
	}
	from, to, found := strings.Cut(given, "..")
	if !found {
		f.refuse(fault.Invalid, words.P("cli.away_shape", words.Args{"given": given}))
		return cal.None, cal.None
	}
	return f.date("--away", from), f.date("--away", to)
}

// showWater writes a line for each bed along the route, and what they want in all.
func (a *App) showWater(r *desk.WateringResult) {
	a.sayUntold(r.Untold)
	if len(r.Beds) == 0 {
		a.say(words.P("cli.water_nothing", nil))
		return
	}
	a.say(words.P("cli.water_title", words.Args{"today": r.Today}))
	a.gap()
	format := a.Words.Format()
	g := &grid{right: []bool{false, true, true, true, true, true, true, false, false}}
	g.add(a.head("cli.column_bed"), a.head("cli.column_now"), a.head("cli.column_cans"), a.head("cli.column_week"), a.head("cli.column_cans"),
		a.head("cli.column_dry"), a.head("cli.column_uses"), a.head("cli.column_suffers"), a.head("cli.column_suffers_dry"))
	recorded := 0
	for i := range r.Beds {
		b := &r.Beds[i]
		g.add(b.Name, format.About(b.NowL), format.About(b.NowCans), format.About(b.WeekL), format.About(b.WeekCans), format.About(b.DryL), format.About(b.UsesL),
			a.dayOrLasts(b.Wants), a.dayOrLasts(b.WantsDry))
		if b.Recorded {
			recorded++
		}
	}
	g.add(a.head("cli.water_all"), format.About(r.All.NowL), format.About(r.All.NowCans), format.About(r.All.WeekL), format.About(r.All.WeekCans), format.About(r.All.DryL), format.About(r.All.UsesL), "", "")
	g.write(a)
	a.gap()
	if r.First != nil {
		a.say(words.P("cli.water_first", words.Args{"bed": r.First.Name, "on": r.First.On}))
	}
	a.showAway(r)
	can := "cli.water_can_usual"
	if r.CanTold {
		can = "cli.water_can"
	}
	a.say(words.P(can, words.Args{"l": r.CanL}))
	if untold := len(r.Beds) - recorded; untold > 0 {
		a.say(words.P("cli.water_unrecorded", words.Args{"n": untold}))
	}
}

// sayUntold names the sites of which nothing can be told.
func (a *App) sayUntold(sites []string) {
	for _, site := range sites {
		a.say(words.P("desk.weather_untold", words.Args{"site": site}))
	}
}

// showAway writes what a time away asks.
func (a *App) showAway(r *desk.WateringResult) {
	if r.Away == nil {
		return
	}
	a.gap()
	a.say(words.P("cli.away_title", words.Args{"leave": r.Away.Leave, "back": r.Away.Back}))
	a.gap()
	format := a.Words.Format()
	g := &grid{right: []bool{false, true, true, false, false, true, true}}
	g.add(a.head("cli.column_bed"), a.head("cli.column_before"), a.head("cli.column_cans"), a.head("cli.column_fails"), a.head("cli.column_suffers_dry"),
		a.head("cli.column_helper"), a.head("cli.column_dry"))
	for i := range r.Beds {
		b := &r.Beds[i]
		g.add(b.Name, format.About(b.BeforeL), format.About(b.BeforeCans), a.dayOrLasts(b.Fails), a.dayOrLasts(b.FailsDry), format.About(b.HelperL), format.About(b.HelperDryL))
	}
	g.add(a.head("cli.water_all"), format.About(r.Away.BeforeL), "", "", "", format.About(r.Away.HelperL), format.About(r.Away.HelperDryL))
	g.write(a)
	a.gap()
	a.showAwayRest(r)
}

// dayOrLasts is the day on which a bed suffers, or that it lasts.
func (a *App) dayOrLasts(d *cal.Date) string {
	if d == nil {
		return a.head("cli.water_lasts")
	}
	return a.Words.Format().Date(*d)
}
