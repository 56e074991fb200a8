package scoreboard

import (
	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/growth"
	"garner/internal/outlook"
	"garner/internal/season"
	"garner/internal/table"
	"garner/internal/words"
)

// sharedGround holds crops on the same ground, and plants with more and with less
// room, against published trials: the light beneath a canopy, the land equivalent
// ratio of mixtures of rows, and the yields of stands of different density. No
// slack: what lies outside of the printed figures is missed.
func (m *maker) sharedGround() (s Section, err error) {
	gardens, err := m.trialGardens()
	if err != nil {
		return s, err
	}
	for _, lines := range []func(map[string]*garden) ([]Line, error){m.lightBeneath, m.mixtures, m.densities} {
		more, err := lines(gardens)
		if err != nil {
			return s, err
		}
		s.Lines = append(s.Lines, more...)
	}
	return s, nil
}

// lightBeneath is the share of the light that a crop beneath another gets on its
// ground as a whole [%].
func (m *maker) lightBeneath(map[string]*garden) (lines []Line, err error) {
	c, err := table.OpenCells(m.data, "light_beneath.csv", "crop", "use", "leaf", "low", "high", "source", "mark")
	if err != nil {
		return nil, err
	}
	for i := range c.Rows {
		u := m.find(c.Text(i, "crop"), c.Text(i, "use"))
		leaf := c.Within(i, "leaf", 0, 20)
		lines = append(lines, Line{Crop: u.Crop, Check: words.P("scoreboard.light_beneath", words.Args{"leaf": leaf}),
			Published: span(c, i, "low", "high"), Computed: exactly(100 * (1 - outlook.UnderShare*growth.Intercepted(u.Extinction, leaf))), Unit: "%",
			Sources: []string{m.work(c.Text(i, "source"))}, Mark: c.Text(i, "mark")}.judge())
	}
	return lines, c.Err()
}

// mixture is two crops in turn by rows, the second between the rows of the first.
type mixture struct {
	first, second         sowing
	firstRows, secondRows float64
}

// mixtures are the land equivalent ratios of trials of rows in turn.
func (m *maker) mixtures(gardens map[string]*garden) (lines []Line, err error) {
	c, err := table.OpenCells(m.data, "mixtures.csv", "site", "crop", "use", "method", "rows", "with", "with_use", "with_method", "with_rows", "on", "low", "high", "source", "mark")
	if err != nil {
		return nil, err
	}
	for i := range c.Rows {
		on := cal.MonthDayOf(c.Day(i, "on"))
		x := mixture{first: m.trialSowing(c, i, "crop", "use", "method", on), firstRows: c.Within(i, "rows", 1, 20),
			second: m.trialSowing(c, i, "with", "with_use", "with_method", on), secondRows: c.Within(i, "with_rows", 1, 20)}
		first, second, err := gardens[c.Text(i, "site")].inTurn(x)
		if err != nil {
			return nil, err
		}
		lines = append(lines, Line{Crop: x.first.use.Crop,
			Check:     words.P("scoreboard.mixture", words.Args{"with": x.second.use.Crop, "rows": x.firstRows, "with_rows": x.secondRows}),
			Published: span(c, i, "low", "high"), Computed: exactly(first + second), Unit: "1",
			Sources: []string{m.work(c.Text(i, "source"))}, Mark: c.Text(i, "mark")}.judge())
	}
	return lines, c.Err()
}

// trialSowing reads a crop of a trial, in the open.
func (m *maker) trialSowing(c *table.Cells, row int, crop, use, method string, on cal.MonthDay) sowing {
	return sowing{m.find(c.Text(row, crop), c.Text(row, use)), growth.StartOf(c.Text(row, method)), on, cover.Open, 1, 0}
}

// inTurn is what two crops in turn by rows give as shares of what each gives alone
// on all of the ground in its own rows. Their land equivalent ratio is the sum.
func (g *garden) inTurn(x mixture) (first, second float64, err error) {
	b, err := g.bed(cover.Open, 1)
	if err != nil {
		return 0, 0, err
	}
	rows := x.firstRows + x.secondRows
	wide := [2]sowing{widened(x.first, rows/x.firstRows), widened(x.second, rows/x.secondRows)}
	draws := []growth.Draw{growth.Fair(x.first.use), growth.Fair(x.second.use)}
	var both, alone [2]float64
	for y := range gardenYears {
		year := gardenFirst.Year() + y
		apart := season.Bed{Plantings: []season.Planting{g.planting(x.first, year), g.planting(x.second, year)}}
		mixed := season.Bed{Plantings: []season.Planting{g.planting(wide[0], year), g.planting(wide[1], year)}}
		mixed.Plantings[1].Shares, mixed.Plantings[1].Beneath = 0, outlook.BetweenShare
		for i, o := range g.runner.Run(g.sky, b, &apart, draws) {
			alone[i] += givenKg(o)
		}
		for i, o := range g.runner.Run(g.sky, b, &mixed, draws) {
			both[i] += givenKg(o)
		}
	}
	return both[0] / alone[0], both[1] / alone[1], nil
}

// widened is a sowing with its rows so many times as far apart.
func widened(s sowing, times float64) sowing {
	s.use = growth.Spaced(s.use, 0, s.use.BetweenRowM*times)
	return s
}

// densities are the yields by area of stands against those of other density.
func (m *maker) densities(gardens map[string]*garden) (lines []Line, err error) {
	c, err := table.OpenCells(m.data, "densities.csv", "site", "crop", "use", "method", "on", "per_m2", "against_per_m2", "low", "high", "source", "mark")
	if err != nil {
		return nil, err
	}
	for i := range c.Rows {
		s := m.trialSowing(c, i, "crop", "use", "method", cal.MonthDayOf(c.Day(i, "on")))
		per, against := c.Within(i, "per_m2", 0.1, 1000), c.Within(i, "against_per_m2", 0.1, 1000)
		g := gardens[c.Text(i, "site")]
		kg, err := g.atDensity(s, per)
		if err != nil {
			return nil, err
		}
		other, err := g.atDensity(s, against)
		if err != nil {
			return nil, err
		}
		lines = append(lines, Line{Crop: s.use.Crop, Check: words.P("scoreboard.density", words.Args{"per": per, "against": against}),
			Published: span(c, i, "low", "high"), Computed: exactly(kg / other), Unit: "1",
			Sources: []string{m.work(c.Text(i, "source"))}, Mark: c.Text(i, "mark")}.judge())
	}
	return lines, c.Err()
}

// atDensity is the yield by area of a sowing with so many plants to the m2 in the
// rows of the book, pieces of any size, sum of the years [kg/m2].
func (g *garden) atDensity(s sowing, perM2 float64) (kg float64, err error) {
	stand := *growth.Spaced(s.use, 1/(perM2*s.use.BetweenRowM), 0)
	stand.UsableG = 0
	s.use = &stand
	err = g.everyYear(s, nil, func(_ cal.Date, o season.Outcome) { kg += givenKg(o) })
	return kg, err
}
