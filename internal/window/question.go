package window

import (
	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/season"
	"garner/internal/sun"
)

// Question is what is asked.
type Question struct {
	Use      *crop.Use
	Start    growth.Start
	Location sun.Location
	First    cal.Date      // 1 January of the first year
	Days     []climate.Day // unbroken weather of Years years and the run-out after them
	Years    int           // years of sowings, at least 10
	Light    float64       // share of the open light, 0-1
	Cover    cover.Kind
	Chance   float64 // wanted chance of a usable crop, 0-1
}

// RunOut is how many days of weather a question needs after its last year, so
// that crops that stand the winter come to their end.
const RunOut = 600

// Window is a stretch of the year. Days are days of the common year, 1-365; a
// window may cross the new year.
type Window struct {
	First, Last        int
	ReadyFrom, ReadyTo int // median ready days of the first and last sowing
	Chance             float64
}

// Answer holds at most three windows and the best chance of the year.
type Answer struct {
	Windows []Window
	Best    float64
	BestDay int
}

// Find answers a question.
func Find(q Question) (Answer, error) {
	trial, err := newTrial(q)
	if err != nil {
		return Answer{}, err
	}
	odds := trial.run()
	return odds.answer(q.Chance), nil
}

// trial runs sowings of every few days of the year over all years.
type trial struct {
	q      Question
	sky    *season.Sky
	beside season.Bedside
	params *growth.Parameters
	runner season.Runner
	bed    season.Bed
}

func newTrial(q Question) (*trial, error) {
	t := &trial{q: q, sky: season.NewSky(q.Location, q.First, len(q.Days))}
	var spells []cover.Spell
	if q.Cover != "" && q.Cover != cover.Open {
		spells = []cover.Spell{{Kind: q.Cover, On: q.First, Off: cal.None}}
	}
	t.bed.Ground = season.Ground{Light: q.Light, Spells: spells}
	if err := t.beside.Build(t.sky, q.Days, t.bed.Ground, 0); err != nil {
		return nil, err
	}
	t.params = growth.Prepare(q.Use, q.Start, t.sky.Northern())
	t.bed.Plantings = []season.Planting{{ID: "trial", Parameters: t.params, AreaM2: 1, ClearBy: cal.None, Shares: -1, Soil: 1}}
	return t, nil
}

// sowingStep is the distance of trial sowings [d]; odds between are straight
// lines.
const sowingStep = 4

// run fills in the odds of the year.
func (t *trial) run() *odds {
	o := newOdds()
	for day := 1; day <= yearDays; day += sowingStep {
		o.set(day, t.sow(day))
	}
	return o
}

// sow counts the years in which a sowing on a day of the common year gives a
// usable crop, and notes how long each took.
func (t *trial) sow(day int) tally {
	var c tally
	for y := 0; y < t.q.Years; y++ {
		date := cal.MonthDayOf(day).In(t.q.First.Year() + y)
		c.years++
		at := int(date - t.q.First)
		if !t.workable(at) {
			continue
		}
		if took, ok := t.succeeds(date); ok {
			c.good++
			c.took = append(c.took, took)
		}
	}
	return c
}

// roundSowing is the half-width of the ten days over which the soil must be
// warm enough.
const roundSowing = 5

// dormantBelowC is the mean air of the first fortnight under which a dormant
// crown can be moved. judgement: growth is in full course above it.
const dormantBelowC = 16.0

func (t *trial) workable(at int) bool {
	from, to := max(0, at-roundSowing), min(len(t.q.Days), at+roundSowing)
	return t.beside.MeanSoilC(from, to) >= t.q.Use.SoilMinimumC
}

// succeeds runs one sowing.
func (t *trial) succeeds(date cal.Date) (took int, ok bool) {
	at := int(date - t.q.First)
	if t.params.Perennial() {
		return int(t.params.PublishedDays()), t.beside.MeanAirC(at, at+14) < dormantBelowC
	}
	ready, ok := t.runner.Usable(t.sky, &t.beside, &t.bed.Plantings[0], date, growth.Fair(t.q.Use))
	return ready - at, ok
}
