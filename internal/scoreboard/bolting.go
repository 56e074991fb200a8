package scoreboard

import (
	"math"
	"strconv"
	"strings"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/season"
	"garner/internal/table"
	"garner/internal/words"
)

// How far off the published thresholds may be: two degrees of chill, half an hour
// of daylength (the step of the list of onion cultivars), a sixth of the days.
const (
	chillSlackC = 2.0
	bulbSlackH  = 0.5
	runSlack    = 0.15
)

// runWithin is the time after sowing in which a crop in a chamber has run to seed
// or not [d]: as long as spinach takes in the most inductive month (Gonzalez et
// al. 2004).
const runWithin = 60

// bolting holds chill, running to seed and bulbing against published thresholds:
// plants in a growth chamber either side of each, and sowings in southern
// England that were seen to run up or not.
func (m *maker) bolting() (s Section, err error) {
	c, err := table.OpenCells(m.data, "bolting.csv", "crop", "use", "measure", "low", "high", "unit", "source", "mark")
	if err != nil {
		return s, err
	}
	var h hulls
	for i := range c.Rows {
		u := m.find(c.Text(i, "crop"), c.Text(i, "use"))
		if u == nil {
			continue
		}
		measure := c.Text(i, "measure")
		l := Line{Crop: u.Crop, Published: span(c, i, "low", "high"), Unit: c.Text(i, "unit"), Sources: []string{m.work(c.Text(i, "source"))}, Mark: c.Text(i, "mark")}
		if l, err = m.bolted(l, u, measure); err != nil {
			return s, err
		}
		h.add(u.Crop+u.Name+measure, l)
	}
	for _, l := range h.lines {
		s.Lines = append(s.Lines, l.judge())
	}
	return s, c.Err()
}

// bolted says what a published measure is in the engine.
func (m *maker) bolted(l Line, u *crop.Use, measure string) (Line, error) {
	use := words.Args{"use": u.Label}
	switch {
	case measure == "chill from":
		l.Check, l.Computed, l.Slack = words.P("scoreboard.chill_from", use), exactly(chillRange(u, 0).Low), chillSlackC
	case measure == "chill best":
		l.Check, l.Computed, l.Slack = words.P("scoreboard.chill_best", use), chillRange(u, 0.999), 0
	case measure == "chill to":
		l.Check, l.Computed, l.Slack = words.P("scoreboard.chill_to", use), exactly(chillRange(u, 0).High), chillSlackC
	case measure == "chill days":
		l.Check, l.Computed = words.P("scoreboard.chill_days", use), chillDays(u)
	case measure == "bulbs from":
		l.Check, l.Computed, l.Slack = words.P("scoreboard.bulbs_from", use), bulbsFrom(u), bulbSlackH
	case strings.HasPrefix(measure, "share at "), strings.HasPrefix(measure, "days at "):
		words := strings.Fields(measure)
		hours, _ := strconv.ParseFloat(words[2], 64)
		return runsIn(l, u, words[0], hours), nil
	case strings.HasPrefix(measure, "share sown "):
		on, err := cal.ParseMonthDay(strings.TrimPrefix(measure, "share sown "))
		if err != nil {
			return l, err
		}
		l.Check = words.P("scoreboard.runs_sown", words.Args{"use": u.Label, "sown": on})
		l.Computed, err = m.runsUp(u, on)
		return l, err
	}
	return l, nil
}

// chillRange is where a day brings more than a share of the most chill [C].
func chillRange(u *crop.Use, over float64) Span {
	s := Span{math.Inf(1), math.Inf(-1)}
	for i := -40; i <= 120; i++ {
		t := float64(i) / 4
		if chillOf(u, t) > over {
			s = s.join(exactly(t))
		}
	}
	if over > 0 {
		return s
	}
	return Span{s.Low - 0.25, s.High + 0.25}
}

// chillOf is the chill of a day at a steady temperature, past the juvenile stage.
func chillOf(u *crop.Use, meanC float64) float64 {
	p := growth.Prepare(endless(u), growth.FromPlant, true)
	s := growth.Begin(p, growth.Fair(u))
	s.Development = 1
	chamber{meanC: meanC, radiationMJ: 3, dayLengthH: 10}.keep(p, &s, 1, nil)
	return s.Chill
}

// chillDays are the days of best chill after which a crop can run to seed.
func chillDays(u *crop.Use) Span {
	p := growth.Prepare(endless(u), growth.FromPlant, true)
	s := growth.Begin(p, growth.Fair(u))
	s.Development = 1
	best := chillRange(u, 0.999)
	days, ok := chamber{meanC: (best.Low + best.High) / 2, radiationMJ: 3, dayLengthH: 10}.keep(p, &s, 365, func() bool { return s.Chill >= u.BoltChill })
	if !ok {
		return unknown()
	}
	return exactly(float64(days))
}

// runsIn sows a crop in a chamber of a daylength.
func runsIn(l Line, u *crop.Use, what string, hours float64) Line {
	p := growth.Prepare(endless(u), growth.FromSeed, true)
	s := growth.Begin(p, growth.Fair(u))
	days, ok := chamber{meanC: 18, halfC: 4, radiationMJ: 12, dayLengthH: hours}.keep(p, &s, 200, func() bool { return seeded(u, &s) })
	args := words.Args{"hours": hours, "within": runWithin}
	if what == "days" {
		l.Check, l.Computed, l.Slack = words.P("scoreboard.runs_days", args), unknown(), runSlack*l.Published.High
		if ok {
			l.Computed = exactly(float64(days))
		}
		return l
	}
	l.Check, l.Computed = words.P("scoreboard.runs_share", args), exactly(0)
	if ok && days <= runWithin {
		l.Computed = exactly(100)
	}
	return l
}

// seeded tells whether plants have run to seed, ready or not.
func seeded(u *crop.Use, s *growth.Plants) bool {
	return u.BoltThermalCd > 0 && s.Seeding >= u.BoltThermalCd
}

// bulbsFrom is the shortest day in which a bulb ripens, to a quarter of an hour [h].
func bulbsFrom(u *crop.Use) Span {
	for hours := 9.0; hours <= 18; hours += 0.25 {
		p := growth.Prepare(endless(u), growth.StartOf(u.Methods[0]), true)
		s := growth.Begin(p, growth.Fair(u))
		if _, ok := (chamber{meanC: 18, halfC: 5, radiationMJ: 16, dayLengthH: hours}).keep(p, &s, 300, func() bool { return s.Stage == growth.Ready }); ok {
			return exactly(hours)
		}
	}
	return unknown()
}

// runsUpBy is the day of the next year by which a crop that stood the winter
// has run up or has not.
var runsUpBy = cal.MonthDay{Month: 6, Day: 15}

// runsUp is the share of the winters lived through after which a sowing in
// southern England has run up [%].
func (m *maker) runsUp(u *crop.Use, on cal.MonthDay) (Span, error) {
	home, err := m.england()
	if err != nil {
		return unknown(), err
	}
	lived, up := 0, 0
	var last struct{ alive, up bool }
	err = home.everyYear(sowing{endless(u), growth.FromSeed, on, cover.Open, 1, 0},
		func(year int, date cal.Date, p *growth.Plants) {
			if date <= runsUpBy.In(gardenFirst.Year()+year+1) {
				last.alive, last.up = date == runsUpBy.In(gardenFirst.Year()+year+1), last.up || seeded(u, p)
			}
		},
		func(cal.Date, season.Outcome) {
			if last.alive || last.up {
				lived++
			}
			if last.up {
				up++
			}
			last.alive, last.up = false, false
		})
	if lived == 0 {
		return unknown(), err
	}
	return exactly(100 * float64(up) / float64(lived)), err
}
