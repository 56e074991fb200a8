package scoreboard

import (
	"math"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/num"
	"garner/internal/season"
	"garner/internal/sun"
	"garner/internal/table"
	"garner/internal/words"
)

// winterSlack is as far off the days to the first cut may be, as a share.
const winterSlack = 0.15

// lapseCPerM is how much colder it is higher up: a trial's place against its
// station.
const lapseCPerM = 0.006

// trialRow is one sowing of a winter trial with what the engine makes of it.
type trialRow struct {
	trial, by string
	order     float64 // published rank, 1 best; 0: none
	days      float64 // to the first cut, median; never when it comes in under half the years
	kg        float64 // median yield until the date of the trial [kg/m2]
	lives     float64 // share of winters lived through [%]
}

// winter holds growth under cover in winter against published trials, in the
// generated weather of the nearest station: days to the first cut, and whether
// sowings come out in the published order.
func (m *maker) winter() (s Section, err error) {
	gardens, err := m.trialGardens()
	if err != nil {
		return s, err
	}
	c, err := table.OpenCells(m.data, "winter_trials.csv", "trial", "site", "cover", "crop", "use", "method", "sown", "stage", "days_low", "days_high", "order", "by", "until", "source", "mark")
	if err != nil {
		return s, err
	}
	var rows []trialRow
	for i := range c.Rows {
		u := m.find(c.Text(i, "crop"), c.Text(i, "use"))
		if u == nil {
			continue
		}
		on := cal.MonthDayOf(c.Day(i, "sown"))
		row := trialRow{trial: c.Text(i, "trial"), by: c.Text(i, "by")}
		if c.Text(i, "order") != "" {
			row.order = c.Within(i, "order", 1, 20)
		}
		if c.Text(i, "stage") != "" {
			u = babyLeaf(u, c.Within(i, "stage", 0.3, 1))
		}
		what := sowing{u, growth.StartOf(c.Text(i, "method")), on, cover.Kind(c.Text(i, "cover")), 1, 0}
		if err := row.grow(gardens[c.Text(i, "site")], what, cal.MonthDayOf(c.Day(i, "until"))); err != nil {
			return s, err
		}
		rows = append(rows, row)
		l := Line{Crop: u.Crop, Sources: []string{m.work(c.Text(i, "source"))}, Mark: c.Text(i, "mark")}
		args := words.Args{"place": c.Text(i, "site"), "sown": on}
		if row.by == "lives" {
			l.Check, l.Published, l.Computed, l.Unit = words.P("scoreboard.winter_lives", args), Span{50, 100}, exactly(row.lives), "%"
			s.Lines = append(s.Lines, l.judge())
		} else if c.Text(i, "days_high") != "" {
			l.Check, l.Published, l.Computed, l.Unit = words.P("scoreboard.winter_days", args), span(c, i, "days_low", "days_high"), took(row.days), "d"
			l.Slack = winterSlack * l.edge()
			s.Lines = append(s.Lines, l.judge())
			if row.days < neverDays {
				s.Points = append(s.Points, Point{u.Crop, num.Clamp(row.days, l.Published.Low, l.Published.High), row.days})
			}
		}
	}
	m.ranked(&s, c, rows)
	return s, c.Err()
}

// babyLeaf is a use sown thickly and cut young: from a stage of its way to full
// leaf on, whatever a single plant weighs by then.
func babyLeaf(u *crop.Use, stage float64) *crop.Use {
	young := *u
	young.ReadyStage, young.UsableG = stage, 0
	return &young
}

// edge is the end of the published range that the computed value lies nearest.
func (l *Line) edge() float64 {
	if l.Computed.High < l.Published.Low {
		return l.Published.Low
	}
	return min(l.Published.High, l.Computed.Low)
}

// ranked adds a line for each trial that sets sowings in an order: Kendall's tau
// over the pairs that the trial tells apart, -1 to 1.
func (m *maker) ranked(s *Section, c *table.Cells, rows []trialRow) {
	var all []float64
	for i := 0; i < len(rows); {
		k := i
		for k < len(rows) && rows[k].trial == rows[i].trial {
			k++
		}
		if tau, pairs := kendall(rows[i:k]); pairs > 0 {
			key := map[string]string{"yield": "scoreboard.winter_order_yield", "first cut": "scoreboard.winter_order_days"}[rows[i].by]
			s.Lines = append(s.Lines, Line{Crop: c.Text(i, "crop"), Check: words.P(key, words.Args{"place": c.Text(i, "site"), "n": pairs}),
				Published: exactly(1), Computed: exactly(tau), Unit: "1", Sources: []string{m.work(c.Text(i, "source"))}, Mark: c.Text(i, "mark")}.judge())
			all = append(all, tau)
		}
		i = k
	}
	s.Goals = append(s.Goals, Goal{What: words.P("scoreboard.goal_order", nil), Want: 1, Got: num.Mean(all), Unit: "1"})
	within := 0
	days := 0
	for _, l := range s.Lines {
		if l.Unit == "d" {
			days++
			if l.Verdict == Met {
				within++
			}
		}
	}
	s.Goals = append(s.Goals, Goal{What: words.P("scoreboard.goal_winter_days", nil), Want: 100, Got: 100 * float64(within) / float64(max(1, days)), Unit: "%"})
}

// kendall is Kendall's rank correlation of the published order with the engine's,
// over the pairs of different published rank.
func kendall(rows []trialRow) (tau float64, pairs int) {
	sum := 0.0
	for i := range rows {
		for k := i + 1; k < len(rows); k++ {
			a, b := &rows[i], &rows[k]
			if a.order == 0 || a.order == b.order {
				continue
			}
			pairs++
			better, worse := a, b
			if a.order > b.order {
				better, worse = b, a
			}
			gain := better.kg - worse.kg
			if a.by == "first cut" {
				gain = worse.days - better.days
			}
			switch {
			case gain > 0:
				sum++
			case gain < 0:
				sum--
			}
		}
	}
	if pairs == 0 {
		return 0, 0
	}
	return sum / float64(pairs), pairs
}

// neverDays stands for a crop that gives no cut.
const neverDays = 1e6

// took is a time as a span; never is infinite.
func took(days float64) Span {
	if days >= neverDays {
		return exactly(math.Inf(1))
	}
	return exactly(days)
}

// grow runs the sowing in every year of its garden.
func (r *trialRow) grow(g *garden, what sowing, until cal.MonthDay) error {
	var days, kg []float64
	end := func(date cal.Date) cal.Date {
		if e := until.In(date.Year()); e > date {
			return e
		}
		return until.In(date.Year() + 1)
	}
	err := g.everyYear(what, nil, func(date cal.Date, o season.Outcome) {
		ready := float64(neverDays)
		if o.Ready >= 0 {
			ready = float64(o.Ready - int(date-gardenFirst))
		}
		sum := 0.0
		for i, v := range o.Flow {
			if gardenFirst+cal.Date(o.First+i) <= end(date) {
				sum += float64(v)
			}
		}
		days, kg = append(days, ready), append(kg, sum)
	})
	if err != nil {
		return err
	}
	r.days, r.kg = num.Quantiles(days, 0.5)[0], num.Quantiles(kg, 0.5)[0]
	if r.by == "lives" {
		return r.winters(g, what, end)
	}
	return nil
}

// winters counts the winters that half the stand lives through.
func (r *trialRow) winters(g *garden, what sowing, end func(cal.Date) cal.Date) error {
	what.use = endless(what.use)
	lived, sown := 0, cal.None
	return g.everyYear(what, func(year int, date cal.Date, p *growth.Plants) {
		sown = what.on.In(gardenFirst.Year() + year)
		if date == end(sown) && p.Living() && p.Alive >= 0.5 {
			lived++
		}
	}, func(cal.Date, season.Outcome) { r.lives = 100 * float64(lived) / gardenYears })
}

// trialGardens are the places of the trials, their station's normals shifted to
// their height.
func (m *maker) trialGardens() (map[string]*garden, error) {
	normals, err := m.trialNormals()
	if err != nil {
		return nil, err
	}
	c, err := table.OpenCells(m.data, "trial_sites.csv", "site", "lat", "lon", "elevation_m", "station_elevation_m")
	if err != nil {
		return nil, err
	}
	out := map[string]*garden{}
	for i := range c.Rows {
		at := sun.Location{LatitudeDeg: c.Within(i, "lat", -90, 90), LongitudeDeg: c.Within(i, "lon", -180, 180), ElevationM: c.Within(i, "elevation_m", -400, 5000)}
		n := normals[c.Text(i, "site")]
		colder := lapseCPerM * (at.ElevationM - c.Within(i, "station_elevation_m", -400, 5000))
		for k := range n {
			n[k].TMinC -= colder
			n[k].TMaxC -= colder
		}
		if out[c.Text(i, "site")], err = newGarden(at, n); err != nil {
			return nil, err
		}
	}
	return out, c.Err()
}

func (m *maker) trialNormals() (map[string]climate.Normals, error) {
	c, err := table.OpenCells(m.data, "trial_normals.csv", "site", "month", "tmin_c", "tmax_c", "rain_mm", "rad_mj_m2")
	if err != nil {
		return nil, err
	}
	out := map[string]climate.Normals{}
	for i := range c.Rows {
		n := out[c.Text(i, "site")]
		n[int(c.Within(i, "month", 1, 12))-1] = climate.MonthNormal{TMinC: c.Within(i, "tmin_c", -60, 50), TMaxC: c.Within(i, "tmax_c", -60, 60),
			RainMM: c.Within(i, "rain_mm", 0, 2000), RadiationMJ: climate.Is(c.Within(i, "rad_mj_m2", 0, 45))}
		out[c.Text(i, "site")] = n
	}
	return out, c.Err()
}
