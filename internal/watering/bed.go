package watering

import (
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
	WeekL    float64  // in the week from today, in the middle of the futures
	WeekDryL float64  // in a dry week, the driest of ten
	UsesL    float64  // that soil and leaves lose in that week, in the middle of the futures

	Wants    cal.Date // the first day of want if nobody comes, in the middle of the futures; None: it lasts four weeks
	WantsDry cal.Date // in a dry time

	BeforeL    float64  // on the day of leaving
	HelperL    float64  // while away, in the middle of the futures
	HelperDryL float64  // in a dry time
	Fails      cal.Date // while away, in the middle of the futures; None: it lasts
	FailsDry   cal.Date // in a dry time
}

// tally gathers a bed's figures by future.
type tally struct {
	told                                     bool
	areaM2                                   float64
	read                                     cal.Date
	readL                                    float64
	now, week, uses, missing, before, helper []float64
	fails, failsAway                         []cal.Date
}

func (t *tally) sums() [6]*[]float64 {
	return [6]*[]float64{&t.now, &t.week, &t.uses, &t.missing, &t.before, &t.helper}
}

// add takes in the litres of another bed.
func (t *tally) add(o *tally) {
	t.areaM2 += o.areaM2
	into, from := t.sums(), o.sums()
	for k := range into {
		for f := range *into[k] {
			(*into[k])[f] += (*from[k])[f]
		}
	}
}

func newTally(futures int) *tally {
	t := &tally{read: cal.None}
	for _, list := range t.sums() {
		*list = make([]float64, futures)
	}
	for _, list := range []*[]cal.Date{&t.fails, &t.failsAway} {
		for range futures {
			*list = append(*list, cal.None)
		}
	}
	return t
}

// dry is the share of futures that are no drier than a dry one.
const dry = 0.9

func (t *tally) bed(id string) Bed {
	return Bed{Bed: id, AreaM2: t.areaM2, Told: t.told, Read: t.read, ReadL: t.readL, MissingL: quantile(t.missing, 0.5), NowL: quantile(t.now, 0.5),
		WeekL: quantile(t.week, 0.5), WeekDryL: quantile(t.week, dry), UsesL: quantile(t.uses, 0.5),
		Wants: dateQuantile(t.fails, 0.5), WantsDry: dateQuantile(t.fails, 1-dry),
		BeforeL: quantile(t.before, 0.5), HelperL: quantile(t.helper, 0.5), HelperDryL: quantile(t.helper, dry),
		Fails: dateQuantile(t.failsAway, 0.5), FailsDry: dateQuantile(t.failsAway, 1-dry)}
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
