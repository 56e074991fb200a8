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
	Use    *crop.Use
	Start  growth.Start
	Place  *Place
	Years  int     // years of sowings, at least 10
	Step   int     // distance of trial sowings [d]; odds between are straight lines; 0: four days
	Chance float64 // wanted chance of a usable crop, 0-1
}

// Place is a bed with its weather, made once for many questions.
type Place struct {
	first  cal.Date
	sky    *season.Sky
	beside season.Bedside
}

// NewPlace makes a bed ready: days is the unbroken open weather from first, a 1
// January, for the years of sowings and RunOut days more; light the share of the
// open light (0-1); kind the cover over it all year.
func NewPlace(at sun.Location, first cal.Date, days []climate.Day, light float64, kind cover.Kind) (*Place, error) {
	p := &Place{first: first, sky: season.NewSky(at, first, len(days))}
	ground := season.Ground{Light: light}
	if kind != "" && kind != cover.Open {
		ground.Spells = []cover.Spell{{Kind: kind, On: first, Off: cal.None}}
	}
	if err := p.beside.Build(p.sky, days, ground, 0); err != nil {
		return nil, err
	}
	return p, nil
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

	// Days from the first and from the last sowing to ready in ten good years,
	// the quick ones first: the 5, 15 ... 95 % of them all.
	FirstTook, LastTook [10]int
}

// Answer holds at most three windows and the best chance of the year.
type Answer struct {
	Windows []Window
	Best    float64
	BestDay int
	ByDay   [yearDays]float64 // smoothed chance by sowing day, index is day of the common year - 1
}

// Find answers a question. Questions of one place may be asked at once.
func Find(q Question) Answer {
	if q.Step <= 0 {
		q.Step = usualStep
	}
	t := &trial{q: q, Place: q.Place, params: growth.Prepare(q.Use, q.Start, q.Place.sky.Northern())}
	t.planting = season.Planting{ID: "trial", Parameters: t.params, AreaM2: 1, ClearBy: cal.None, Shares: -1, Soil: 1}
	return t.run().answer(q.Chance)
}

// trial runs sowings of every few days of the year over all years.
type trial struct {
	q Question
	*Place
	params   *growth.Parameters
	planting season.Planting
	runner   season.Runner
}

// usualStep is the usual distance of trial sowings [d].
const usualStep = 4

// run fills in the odds of the year.
func (t *trial) run() *odds {
	o := newOdds()
	for day := 1; day <= yearDays; day += t.q.Step {
		o.set(day, t.sow(day))
	}
	return o
}

// sow counts the years in which a sowing on a day of the common year gives a
// usable crop, and notes how long each took.
func (t *trial) sow(day int) tally {
	var c tally
	for y := 0; y < t.q.Years; y++ {
		date := cal.MonthDayOf(day).In(t.first.Year() + y)
		c.years++
		at := int(date - t.first)
		if season.TooEarly(t.q.Use, t.q.Start, date, t.sky.Northern()) || !t.workable(at) {
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
	from, to := max(0, at-roundSowing), min(len(t.beside.Air), at+roundSowing)
	return t.beside.MeanSoilC(from, to) >= t.q.Use.SoilMinimumC
}

// bearsWithin is the time within which every perennial has its first pick [d].
const bearsWithin = 5 * 366

// firstPick returns the days from planting a perennial to its first pick, by the
// seasons it lives through; the published days where the weather ends before it.
func (t *trial) firstPick(date cal.Date) int {
	p := t.planting
	p.Date, p.ClearBy = date, date+bearsWithin
	if o := t.runner.Follow(t.sky, &t.beside, &p, growth.Fair(t.q.Use), nil); o.Ready >= 0 {
		return o.Ready - int(date-t.first)
	}
	return int(t.params.PublishedDays())
}

// succeeds runs one sowing.
func (t *trial) succeeds(date cal.Date) (took int, ok bool) {
	at := int(date - t.first)
	if t.params.Perennial() {
		return t.firstPick(date), t.beside.MeanAirC(at, at+14) < dormantBelowC
	}
	ready, ok := t.runner.Usable(t.sky, &t.beside, &t.planting, date, growth.Fair(t.q.Use))
	return ready - at, ok
}
