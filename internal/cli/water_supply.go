package cli

import (
	"cmp"
	"strconv"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/words"
)

// The most litres and days that may be asked with.
const (
	mostLitres    = 1e6
	mostShortDays = 60
)

// refuseAlone refuses flags that only go with the litres that are left.
func (c *waterCommand) refuseAlone(f *flags) {
	for _, given := range [][2]string{{"--days", c.Days}, {"--site", c.Site}} {
		if given[1] != "" {
			f.refuse(fault.Invalid, words.P("cli.water_needs_left", words.Args{"flag": given[0]}))
		}
	}
}

// supply answers what water there is: one question at a time.
func (c *waterCommand) supply(a *App) error {
	var f flags
	asked := 0
	for _, is := range []bool{c.Months, c.Butt != "", c.Left != "", c.Feed, c.Away != ""} {
		if is {
			asked++
		}
	}
	if asked > 1 {
		f.refuse(fault.Invalid, words.P("cli.water_one", nil))
	}
	if c.Left == "" {
		c.refuseAlone(&f)
	}
	seed := f.seed(c.Seed)
	switch {
	case c.Months:
		return answered(a, c, &f, func(h *holding.Holding) (*desk.WaterUse, error) { return desk.WaterByMonth(h, seed) }, a.showMonths)
	case c.Butt != "":
		return answered(a, c, &f, func(h *holding.Holding) (*desk.ButtView, error) {
			return desk.Butt(h, desk.ButtOptions{Source: c.Butt, Seed: seed})
		}, a.showButt)
	case c.Feed:
		return answered(a, c, &f, func(h *holding.Holding) (*desk.FeedView, error) { return desk.Feeding(h, seed) }, a.showFeeding)
	}
	options := desk.ShortOptions{Site: c.Site, LeftL: f.litres("--left", c.Left), Days: f.whole("--days", c.Days, 1, mostShortDays, 14), Seed: seed}
	return answered(a, c, &f, func(h *holding.Holding) (*desk.ShortView, error) { return desk.WaterShort(h, options) }, a.showShort)
}

// answered asks, and writes the answer as JSON or in words.
func answered[T any](a *App, c *waterCommand, f *flags, question func(*holding.Holding) (T, error), show func(T)) error {
	var untold []string
	r, err := ask(a, c.holdingFlags, f, func(h *holding.Holding, _ reporter) (T, error) {
		untold = desk.WithoutWeather(h)
		return question(h)
	})
	switch {
	case err != nil:
		return err
	case c.JSON:
		return a.json(r)
	}
	a.sayUntold(untold)
	show(r)
	return nil
}

// litres reads an amount of water.
func (f *flags) litres(flag, given string) float64 {
	x, err := strconv.ParseFloat(given, 64)
	if err != nil || !(x >= 0 && x <= mostLitres) {
		f.refuse(fault.Invalid, words.P("cli.water_litres", words.Args{"flag": flag, "given": given}))
		return 0
	}
	return x
}

// showMonths writes the months of all sites together.
func (a *App) showMonths(u *desk.WaterUse) {
	format := a.Words.Format()
	a.say(words.P("web.use_lead", words.Args{"l": u.All.YearL, "dry": u.All.YearDryL}))
	a.gap()
	g := &grid{right: []bool{false, true, true, true}}
	g.add(a.head("web.use_month"), a.head("web.use_col_given"), a.head("web.use_col_come"), a.head("web.use_col_dry"))
	at := map[cal.Date]desk.ComeMonth{}
	for _, m := range u.All.ToCome {
		at[m.Month] = m
	}
	for _, m := range u.All.Given {
		come, both := at[m.Month]
		if delete(at, m.Month); both {
			g.add(a.monthYear(m.Month), format.About(m.L), format.About(come.L), format.About(come.DryL))
		} else if m.L > 0 {
			g.add(a.monthYear(m.Month), format.About(m.L), "", "")
		}
	}
	for _, m := range u.All.ToCome {
		if _, left := at[m.Month]; left {
			g.add(a.monthYear(m.Month), "", format.About(m.L), format.About(m.DryL))
		}
	}
	g.add(a.head("web.use_year"), format.About(u.All.GivenL), format.About(u.All.YearL), format.About(u.All.YearDryL))
	g.write(a)
	a.gap()
	for i := range u.Sites {
		s := &u.Sites[i]
		a.say(words.P("cli.water_site_year", words.Args{"site": s.Name, "l": s.YearL, "dry": s.YearDryL}))
	}
}

func (a *App) monthYear(d cal.Date) string {
	return a.Words.Format().ShortMonth(d.Month()) + " " + strconv.Itoa(d.Year())
}

// showButt writes what each size serves.
func (a *App) showButt(v *desk.ButtView) {
	format := a.Words.Format()
	a.say(words.P("cli.butt_title", words.Args{"name": cmp.Or(v.Name, v.SiteName), "asked": v.AskedL, "shed": v.ShedL}))
	a.gap()
	g := &grid{right: []bool{true, true, true, true, true}}
	g.add(a.head("web.butt_col_l"), a.head("web.butt_col_share"), a.head("web.butt_col_dry"), a.head("web.butt_col_empty"), a.head("web.butt_col_over"))
	points := v.Sizes
	if v.Own != nil {
		points = append([]desk.ButtPoint{*v.Own}, points...)
	}
	for i := range points {
		p := &points[i]
		g.add(format.About(p.HoldsL), format.Percent(p.Share), format.Percent(p.ShareDry), strconv.Itoa(p.EmptyDays), format.About(p.OverflowL))
	}
	g.write(a)
	a.gap()
	if v.Own != nil {
		a.say(words.P("cli.butt_own_first", nil))
	}
	if v.EnoughL > 0 {
		a.say(words.P("cli.butt_enough", words.Args{"l": v.EnoughL, "rule": v.RuleL}))
	}
}

// showShort writes the order in which beds get the water.
func (a *App) showShort(v *desk.ShortView) {
	format := a.Words.Format()
	a.say(words.P("web.short_lead", words.Args{"site": v.SiteName, "left": v.LeftL, "days": v.Days, "need": v.NeedL, "saves": v.Saves, "stake": v.AtStake}))
	a.gap()
	g := &grid{right: []bool{false, true, true, true, true, true, false, false}}
	g.add(a.head("cli.column_bed"), a.head("cli.column_gets"), a.head("cli.column_cans"), a.head("cli.column_needs"), a.head("cli.column_loses"), a.head("cli.column_loses_half"), a.head("cli.column_suffers"), a.head("cli.column_most_at"))
	for i := range v.Turns {
		t := &v.Turns[i]
		g.add(t.Name, format.About(t.GetL), format.About(t.Cans), format.About(t.NeedL), format.About(t.AtStake), format.About(t.Half), a.dayOrLasts(t.Wants), t.What)
	}
	g.write(a)
	a.gap()
	a.say(words.P("web.short_rules", nil))
}

// showFeeding writes who is fed, when and with how much.
func (a *App) showFeeding(v *desk.FeedView) {
	format := a.Words.Format()
	if len(v.Turns) == 0 {
		a.say(words.P("web.feed_nobody", nil))
		return
	}
	g := &grid{right: []bool{false, false, true, true, true, true, false}}
	g.add(a.head("cli.column_bed"), a.head("cli.column_what_fed"), a.head("cli.column_litres"), a.head("cli.column_ml_can"), a.head("cli.column_g_dry"), a.head("cli.column_days"), a.head("cli.column_due"))
	for i := range v.Turns {
		t := &v.Turns[i]
		g.add(t.BedName, t.What, format.About(t.Litres), format.About(t.MLPerCan), format.About(t.DryG), strconv.Itoa(t.EveryD), format.Date(t.Due))
	}
	g.write(a)
	a.gap()
	if !v.Wanted {
		a.say(words.P("cli.feed_not_wanted", nil))
	}
	for _, key := range []string{"web.feed_care_label", "web.feed_care_hands", "web.feed_care_leaves", "web.feed_care_strong"} {
		a.say(words.P(key, nil))
	}
}
