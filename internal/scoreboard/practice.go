package scoreboard

import (
	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/num"
	"garner/internal/printed"
	"garner/internal/season"
	"garner/internal/table"
	"garner/internal/words"
)

// practice holds the engine against what growers at a cool maritime place near
// 51 N take for granted: common practice, no source.
func (m *maker) practice() (s Section, err error) {
	c, err := table.OpenCells(m.data, "practice.csv", "crop", "use", "measure", "low", "high", "unit", "source", "mark")
	if err != nil {
		return s, err
	}
	home, err := m.england()
	if err != nil {
		return s, err
	}
	for i := range c.Rows {
		measure := c.Text(i, "measure")
		l := Line{Crop: c.Text(i, "crop"), Published: span(c, i, "low", "high"), Computed: unknown(), Unit: c.Text(i, "unit"),
			Sources: []string{m.work(c.Text(i, "source"))}, Mark: c.Text(i, "mark")}
		custom, ok := customs[measure]
		if !ok {
			custom = m.pairCustoms()[measure]
		}
		l.Check = words.P(custom.key, words.Args{"use": c.Text(i, "use")})
		if u := m.find(l.Crop, c.Text(i, "use")); u != nil {
			l.Crop = u.Crop
			l.Check = words.P(custom.key, words.Args{"use": u.Label})
			if l.Computed, err = custom.ask(home, u); err != nil {
				return s, err
			}
		}
		s.Lines = append(s.Lines, l.judge())
	}
	return s, c.Err()
}

// custom is a measure: its phrase, and what the engine says of a use.
type custom struct {
	key string
	ask func(*garden, *crop.Use) (Span, error)
}

// customs are the measures of practice.csv: their phrase, and what the engine
// says of a use.
var customs = map[string]custom{
	"runs to seed":           {"scoreboard.practice_runs", runsOn},
	"august later than july": {"scoreboard.practice_later", augustAfterJuly},
	"small and old":          {"scoreboard.practice_old", smallAndOld},
	"renewed after":          {"scoreboard.practice_renewed", renewedAfter},
	"first cut in year":      {"scoreboard.practice_first_cut", firstCut},
	"ready in half shade":    {"scoreboard.practice_shade", func(g *garden, u *crop.Use) (Span, error) { return readyBefore(g, u, 8, 15, 0.5) }},
	"ready in the open":      {"scoreboard.practice_july", func(g *garden, u *crop.Use) (Span, error) { return readyBefore(g, u, 7, 3, 1) }},
	"ripe":                   {"scoreboard.practice_ripe", ripeOn},
	"sowings close up":       {"scoreboard.practice_close_up", closeUp},
}

// inOpen is a use put in on a day in the open by a method.
func inOpen(u *crop.Use, method string, month, day int) sowing {
	return sowing{u, growth.StartOf(method), cal.MonthDay{Month: month, Day: day}, cover.Open, 1, 0}
}

// seedingDay is the median day after sowing on which a sowing runs to seed [d].
func (g *garden) seedingDay(s sowing) (float64, error) {
	var took []float64
	ran := cal.None
	whole := s.use
	s.use = endless(s.use)
	err := g.everyYear(s, func(_ int, date cal.Date, p *growth.Plants) {
		if !ran.IsSet() && seeded(whole, p) {
			ran = date
		}
	}, func(date cal.Date, _ season.Outcome) {
		if ran.IsSet() {
			took = append(took, float64(ran-date))
		} else {
			took = append(took, neverDays)
		}
		ran = cal.None
	})
	return num.Quantiles(took, 0.5)[0], err
}

// runsOn is the day of the year on which a crop put in on its reference date
// runs to seed.
func runsOn(g *garden, u *crop.Use) (Span, error) {
	on, err := cal.ParseMonthDay(u.ReferenceDate)
	if err != nil {
		return unknown(), err
	}
	took, err := g.seedingDay(inOpen(u, u.ReferenceMethod, on.Month, on.Day))
	if err != nil || took >= neverDays {
		return unknown(), err
	}
	return exactly(float64(printed.OnCircle(on.DayOfYear() + int(took)))), nil
}

// augustAfterJuly is how much later a sowing of late August runs up than one of
// early July [d].
func augustAfterJuly(g *garden, u *crop.Use) (Span, error) {
	july, err := g.seedingDay(inOpen(u, crop.Seed, 7, 5))
	if err != nil {
		return unknown(), err
	}
	august, err := g.seedingDay(inOpen(u, crop.Seed, 8, 25))
	apart := float64(cal.MonthDay{Month: 8, Day: 25}.DayOfYear() - cal.MonthDay{Month: 7, Day: 5}.DayOfYear())
	return exactly(august + apart - july), err
}

// smallAndOld is the share of years in which a root of usable size is over by
// its age before it has come to its full size, in a bed sown too thickly [%].
func smallAndOld(g *garden, u *crop.Use) (Span, error) {
	thick := *u
	thick.InRowM /= 2
	what := inOpen(&thick, crop.Seed, 5, 1)
	what.light = 0.7
	params := growth.Prepare(&thick, growth.FromSeed, true)
	old, piece := 0, 0.0
	err := g.everyYear(what, func(_ int, _ cal.Date, p *growth.Plants) {
		if p.Stage == growth.Ready {
			piece = p.PieceG(params)
		}
	}, func(_ cal.Date, o season.Outcome) {
		if o.Ready >= 0 && o.End == growth.Harvested && piece >= u.UsableG && piece < u.PieceG {
			old++
		}
		piece = 0
	})
	return exactly(100 * float64(old) / gardenYears), err
}

// renewedAfter is when new plants take over from old ones [a]; unknown while the
// book does not tell.
func renewedAfter(_ *garden, u *crop.Use) (Span, error) {
	if u.RenewYears <= 0 {
		return unknown(), nil
	}
	return exactly(u.RenewYears), nil
}

// firstCut is the season in the ground in which a perennial is first cut, the
// first is 1.
func firstCut(_ *garden, u *crop.Use) (Span, error) {
	for i, share := range u.AgeYield {
		if share > 0 {
			return exactly(float64(i + 1)), nil
		}
	}
	return unknown(), nil
}

// readyBefore is the share of years in which a sowing in a share of the light is
// ready before December [%].
func readyBefore(g *garden, u *crop.Use, month, day int, light float64) (Span, error) {
	what := inOpen(u, crop.Seed, month, day)
	what.light = light
	ready := 0
	err := g.everyYear(what, nil, func(date cal.Date, o season.Outcome) {
		if o.Ready >= 0 && gardenFirst+cal.Date(o.Ready) < cal.Of(date.Year(), 12, 1) {
			ready++
		}
	})
	return exactly(100 * float64(ready) / gardenYears), err
}

// medianReady is the median of the days to ready of a sowing; never counts as late.
func (g *garden) medianReady(s sowing) (float64, error) {
	var took []float64
	err := g.everyYear(s, nil, func(date cal.Date, o season.Outcome) {
		days := float64(neverDays)
		if o.Ready >= 0 {
			days = float64(o.Ready - int(date-gardenFirst))
		}
		took = append(took, days)
	})
	return num.Quantiles(took, 0.5)[0], err
}

// ripeOn is the day of the year on which a crop put in on its reference date is
// ready.
func ripeOn(g *garden, u *crop.Use) (Span, error) {
	on, err := cal.ParseMonthDay(u.ReferenceDate)
	if err != nil {
		return unknown(), err
	}
	took, err := g.medianReady(inOpen(u, u.ReferenceMethod, on.Month, on.Day))
	if err != nil || took >= neverDays {
		return unknown(), err
	}
	return exactly(float64(printed.OnCircle(on.DayOfYear() + int(took)))), nil
}

// closeUp is the longest time between the ready days of three spring sowings
// three weeks apart [d].
func closeUp(g *garden, u *crop.Use) (Span, error) {
	widest, before := 0.0, 0.0
	for i, on := range []cal.MonthDay{{Month: 3, Day: 20}, {Month: 4, Day: 10}, {Month: 5, Day: 1}} {
		took, err := g.medianReady(inOpen(u, crop.Seed, on.Month, on.Day))
		if err != nil {
			return unknown(), err
		}
		ready := float64(on.DayOfYear()) + took
		if i > 0 {
			widest = max(widest, ready-before)
		}
		before = ready
	}
	return exactly(widest), nil
}
