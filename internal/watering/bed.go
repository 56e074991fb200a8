package watering

import (
	"cmp"
	"math"
	"slices"

	"garner/internal/cal"
)

// Bed is what one bed wants. Litres are for all of its plantings together.
type Bed struct {
	Bed    string
	AreaM2 float64 // planted
	Told   bool    // the records tell what it was given; else it counts as watered whenever it was due

	Read     cal.Date // the last reading of its moisture; None: none within half a year
	ReadL    float64  // by how much less that reading left missing on its day
	MissingL float64  // that would fill the ground this morning
	NowL     float64  // to be given today, 0 where it can wait
	WeekL    float64  // in the week from today: the one middle week that is told of all beds
	WeekDryL float64  // in a dry week, the driest of ten
	UsesL    float64  // that soil and leaves lose in it, mean of the futures
	// Days is what is given on each of the days from today on in the middle week, and on the
	// days after it in the same future [L]: the first seven make WeekL, the first is NowL.
	Days []float64

	Level     Level   // of its driest ground, this morning
	Seeds     bool    // seed lies in it that is not through
	LastRain  Rain    // that reached it
	LostWeekL float64 // that soil and leaves lost in the seven days before today

	Wants    cal.Date // the first day of want if nobody comes, in the middle week or, after it, in the middle of the futures; None: it lasts four weeks
	WantsDry cal.Date // in a dry time

	BeforeL  float64  // on the day of leaving, in a dry time; 0 where it lasts without
	HelperL  float64  // while away, in one middle time that is told of all beds
	Fails    cal.Date // while away, in the middle of the futures; None: it lasts
	FailsDry cal.Date // in a dry time
	Rounds   []Round  // while away, by how often somebody comes
}

// tally gathers a bed's figures by future.
type tally struct {
	told, seeds bool
	read        cal.Date
	readL       float64
	areaM2      float64
	rain        Rain

	seen                                  []bool
	level                                 []Level
	uses, missing, before, helper, lately []float64
	fails, failsAway                      []cal.Date
	rounds                                []rounds

	mornings [][]morning // of today, by future
	leavings [][]morning // of the day of leaving, by future
	nowL     float64     // settled: the same in all of them
	days     [][]float64 // by future, from today on
}

func (t *tally) sums() [5]*[]float64 {
	return [5]*[]float64{&t.uses, &t.missing, &t.before, &t.helper, &t.lately}
}

// isSeen tells whether anything stands on the bed in some future.
func (t *tally) isSeen() bool { return slices.Contains(t.seen, true) }

func newTally(futures int) *tally {
	t := &tally{read: cal.None, rain: Rain{On: cal.None}, seen: make([]bool, futures), level: make([]Level, futures), rounds: newRounds(futures)}
	for _, list := range t.sums() {
		*list = make([]float64, futures)
	}
	for _, list := range []*[]cal.Date{&t.fails, &t.failsAway} {
		for range futures {
			*list = append(*list, cal.None)
		}
	}
	t.mornings, t.leavings, t.days = make([][]morning, futures), make([][]morning, futures), make([][]float64, futures)
	for f := range t.days {
		t.days[f] = make([]float64, aheadDays)
	}
	return t
}

// dry is the share of futures that are no drier than a dry one.
const dry = 0.9

// chosen are the futures that are told of all beds: that of the middle week, and those of
// the rounds while away.
type chosen struct {
	week   int
	rounds []int
	odds   float64 // of a dry time away
}

func (t *tally) bed(id string, which *chosen, today cal.Date) Bed {
	week := t.week()
	b := Bed{Bed: id, AreaM2: t.areaM2, Told: t.told, Read: t.read, ReadL: t.readL, MissingL: quantile(t.missing, 0.5), NowL: t.nowL,
		WeekL: week[which.week], WeekDryL: max(quantile(week, dry), week[which.week]), UsesL: mean(t.uses), Days: t.days[which.week],
		Level: t.middleLevel(), Seeds: t.seeds, LastRain: t.rain, LostWeekL: quantile(t.lately, 0.5),
		Wants:   t.wants(which.week, today),
		BeforeL: quantile(t.before, which.odds), HelperL: mean(t.helper), Fails: t.suffers(which.week, today)}
	b.WantsDry = sooner(dateQuantile(t.fails, 1-dry), b.Wants)
	b.FailsDry = sooner(dateQuantile(t.failsAway, 1-which.odds), b.Fails)
	for k, f := range which.rounds {
		b.Rounds = append(b.Rounds, t.rounds[k].of(f, which.odds))
	}
	return b
}

// middleLevel is how full the ground is in the middle of the futures.
func (t *tally) middleLevel() Level {
	sorted := slices.Clone(t.level)
	slices.SortStableFunc(sorted, func(a, b Level) int { return cmp.Compare(a.Gone(), b.Gone()) })
	return sorted[rank(len(sorted), 0.5)]
}

// quantile is the value that a share of the futures do not pass.
func quantile(values []float64, share float64) float64 {
	sorted := slices.Clone(values)
	slices.Sort(sorted)
	return sorted[rank(len(sorted), share)]
}

// dateQuantile is the same of dates, of which none comes after all others.
func dateQuantile(dates []cal.Date, share float64) cal.Date {
	sorted := slices.Clone(dates)
	slices.SortFunc(sorted, func(a, b cal.Date) int {
		switch {
		case a == b:
			return 0
		case !a.IsSet():
			return 1
		case !b.IsSet():
			return -1
		}
		return int(a - b)
	})
	return sorted[rank(len(sorted), share)]
}

func rank(n int, share float64) int {
	return max(0, min(n-1, int(math.Ceil(share*float64(n)))-1))
}
