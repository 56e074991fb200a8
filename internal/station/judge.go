package station

import (
	"math"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/words"
)

// judge looks at what was read as a whole: nothing left, units that cannot be,
// jumps and gaps.
func (f *Found) judge(name string) error {
	f.moveWrong()
	defer func() { sortByRow(f.Refused); sortByRow(f.Doubtful); sortByRow(f.Warnings) }()
	if f.Typical != nil {
		return nil
	}
	if f.Days == nil || len(f.Days.Days) == 0 {
		if len(f.Refused) > 0 {
			return f.Refused
		}
		none := fault.New(fault.Invalid, "station.nothing_kept", words.Args{"rows": f.Rows}).In(fault.Place{File: name})
		return append(fault.List{none}, f.Warnings...)
	}
	days := f.Days.Days
	f.swapped(name)
	f.units(name, days)
	if f.Format != GHCNDaily && f.Format != GHCNStation { // its publisher looked for jumps already
		f.spikes(name, days)
		f.steps(name, days)
		f.leaps(name, days)
	}
	f.gaps(name, days)
	return nil
}

// moveWrong takes warnings that speak of the whole file out of the others.
func (f *Report) moveWrong() {
	wrong := map[string]bool{"station.looks_fahrenheit": true, "station.hours_look_fahrenheit": true, "station.humidity_looks_share": true,
		"station.looks_inches": true, "station.looks_kmh": true}
	kept := f.Warnings[:0:0]
	for _, w := range f.Warnings {
		if wrong[w.Phrase.Key] {
			f.Wrong = append(f.Wrong, w)
		} else {
			kept = append(kept, w)
		}
	}
	f.Warnings = kept
}

// swapped tells columns that have changed places: the minimum above the maximum
// on more days than not.
func (f *Found) swapped(name string) {
	n := 0
	for _, r := range f.Refused {
		if r.Phrase.Key == "station.minimum_above_maximum" {
			n++
		}
	}
	if n >= 3 && 2*n > len(f.Days.Days) {
		f.Wrong = append(f.Wrong, fault.New(fault.Invalid, "station.looks_swapped", words.Args{"n": n}).In(fault.Place{File: name}))
	}
}

const (
	// leastWetDayMM is under the mean of the days with any rain of every place that
	// feeds a garden: 2 to 10 mm on the stations the tests read. In inches the
	// same days come to 0.1 to 0.4.
	leastWetDayMM = 0.8
	enoughWetDays = 30
	// mostMeanWindMS is above the mean wind at 2 m of every place where anything
	// is grown (judgement, no source); km/h taken for m/s is over it.
	mostMeanWindMS = 12
	// windyMeanMS is about the mean wind at 2 m of the windiest coasts that are gardened
	// (judgement; 7 to 8 m/s at 10 m, from memory); calm places in km/h are over it.
	windyMeanMS = 6.5
)

// units tells columns that look as if they were in another unit.
func (f *Found) units(name string, days []climate.Observation) {
	var rain, wind, temp weighted
	hot := 0
	damp := 0.0
	for i := range days {
		o := &days[i]
		if o.RainMM.Known && o.RainMM.Value > 0 {
			rain.add(o.RainMM.Value, 1)
		}
		if o.WindMS.Known {
			wind.add(o.WindMS.Value, 1)
		}
		if o.TMinC.Known && o.TMaxC.Known {
			temp.add((o.TMinC.Value+o.TMaxC.Value)/2, 1)
			if o.TMaxC.Value > hottestC {
				hot++
			}
		}
		damp = max(damp, o.HumidityPct.Value)
	}
	at := func(column string) fault.Place { return fault.Place{File: name, Column: column} }
	wrong := func(key, column string, args words.Args) {
		f.Wrong = append(f.Wrong, fault.New(fault.Invalid, key, args).In(at(column)))
	}
	if rain.seconds >= enoughWetDays && rain.sum/rain.seconds < leastWetDayMM && !f.wrongIn(columnRain) {
		wrong("station.looks_inches", columnRain, words.Args{"mean": rain.sum / rain.seconds})
	}
	if mean := wind.sum / wind.seconds; wind.seconds >= enoughDays && mean > windyMeanMS && !f.wrongIn(columnWind) {
		if mean > mostMeanWindMS {
			wrong("station.looks_kmh", columnWind, words.Args{"mean": mean})
		} else {
			f.Warnings = append(f.Warnings, fault.New(fault.Invalid, "station.windy", words.Args{"mean": mean}).In(at(columnWind)))
		}
	}
	if damp > 0 && damp <= 1 && len(days) >= enoughDays && !f.wrongIn(columnHumidity) {
		wrong("station.humidity_looks_share", columnHumidity, words.Args{"most": damp})
	}
	if temp.seconds >= enoughDays && !f.wrongIn(columnTMax) && !f.wrongIn(columnTemp) &&
		(float64(hot) >= hotShare*temp.seconds || temp.sum/temp.seconds >= warmestMeanC) {
		wrong("station.looks_fahrenheit", columnTMax, words.Args{"days": hot, "mean": temp.sum / temp.seconds})
	}
}

func (f *Report) wrongIn(column string) bool {
	for _, w := range f.Wrong {
		if w.At.Column == column {
			return true
		}
	}
	return false
}

// gaps warns of days that are not there, at the row after them.
func (f *Found) gaps(name string, days []climate.Observation) {
	for i := 1; i < len(days); i++ {
		if missing := int(days[i].Date-days[i-1].Date) - 1; missing > 0 {
			f.Warnings = append(f.Warnings, fault.New(fault.Invalid, "station.days_missing",
				words.Args{"n": missing, "first": days[i-1].Date + 1, "last": days[i].Date - 1}).
				In(fault.Place{File: name, Row: days[i].Row}))
		}
	}
}

// doubt is a value that can be but hardly is.
type doubt struct {
	day      int
	min, max bool
}

// spikes doubts a temperature that stands far from those of the day before and
// the day after, which are close to each other.
func (f *Found) spikes(name string, days []climate.Observation) {
	for i := 1; i+1 < len(days); i++ {
		if days[i].Date != days[i-1].Date+1 || days[i+1].Date != days[i].Date+1 {
			continue
		}
		for k, of := range []func(*climate.Observation) climate.Maybe{
			func(o *climate.Observation) climate.Maybe { return o.TMinC },
			func(o *climate.Observation) climate.Maybe { return o.TMaxC },
		} {
			b, n, a := of(&days[i-1]), of(&days[i]), of(&days[i+1])
			if b.Known && n.Known && a.Known && math.Abs(n.Value-a.Value) >= jumpC && away(b.Value, n.Value, a.Value) {
				f.doubts = append(f.doubts, doubt{i, k == 0, k == 1})
				f.Doubtful = append(f.Doubtful, fault.New(fault.Invalid, "station.day_spike",
					words.Args{"before": b.Value, "given": n.Value, "after": a.Value}).
					In(fault.Place{File: name, Row: days[i].Row, Column: []string{columnTMin, columnTMax}[k]}))
			}
		}
	}
}

const (
	stepDays  = 10 // days looked at before and after a step
	stepC     = 17 // of their means [C]
	stepAtC   = 13 // from the one day to the next [C]
	leastDays = 7  // of either side with both extremes
)

// steps doubts all days after the temperature steps to another level and stays
// there, until it steps back: an instrument moved, or set to another unit.
func (f *Found) steps(name string, days []climate.Observation) {
	for i := 1; i < len(days); {
		by := stepAt(days, i)
		if by == 0 {
			i++
			continue
		}
		end := i + leastDays
		for end < len(days) && !(stepAt(days, end) != 0 && (stepAt(days, end) > 0) != (by > 0)) {
			end++
		}
		end = min(end, len(days))
		for k := i; k < end; k++ {
			f.doubts = append(f.doubts, doubt{k, true, true})
		}
		f.Doubtful = append(f.Doubtful, fault.New(fault.Invalid, "station.step",
			words.Args{"by": by, "n": end - i, "last": days[end-1].Date}).
			In(fault.Place{File: name, Row: days[i].Row, Column: columnTMin}))
		i = end + 1 // the step back is no step of its own
	}
}

// stepAt is by how much the level changes with day i; 0 where it does not.
func stepAt(days []climate.Observation, i int) float64 {
	before, now := meanOf(days, i-1, i), meanOf(days, i, i+1)
	if !(math.Abs(now-before) >= stepAtC) || days[i].Date-days[i-1].Date > stepDays {
		return 0
	}
	by := meanOf(days, i, i+stepDays) - meanOf(days, i-stepDays, i)
	if !(math.Abs(by) >= stepC) || (by > 0) != (now > before) {
		return 0
	}
	return by
}

// meanOf is the mean temperature of days; NaN where too few of them have both
// extremes.
func meanOf(days []climate.Observation, from, to int) float64 {
	sum, n := 0.0, 0
	for i := max(from, 0); i < min(to, len(days)); i++ {
		if o := &days[i]; o.TMinC.Known && o.TMaxC.Known {
			sum, n = sum+(o.TMinC.Value+o.TMaxC.Value)/2, n+1
		}
	}
	if n == 0 || to-from > 1 && n < leastDays {
		return math.NaN()
	}
	return sum / float64(n)
}

// leaps warns of days whose temperature leaps to another level and of which it is too
// early to say, or too short a time, that the station stepped.
func (f *Found) leaps(name string, days []climate.Observation) {
	doubted := map[int]bool{}
	for _, d := range f.doubts {
		doubted[d.day] = true
	}
	for i := 1; i < len(days); i++ {
		before, now := meanOf(days, i-1, i), meanOf(days, i, i+1)
		if doubted[i] || doubted[i-1] || days[i].Date != days[i-1].Date+1 || !(math.Abs(now-before) >= jumpC) {
			continue
		}
		f.Warnings = append(f.Warnings, fault.New(fault.Invalid, "station.day_leap", words.Args{"before": before, "given": now}).
			In(fault.Place{File: name, Row: days[i].Row, Column: columnTMin}))
	}
}

// DropDoubtful leaves out the values that are doubtful. A day of which nothing
// stays is left out as a whole.
func (f *Found) DropDoubtful() {
	doubtful := map[cal.Date]bool{}
	for _, d := range f.doubts {
		o := &f.Days.Days[d.day]
		doubtful[o.Date] = true
		if d.min {
			o.TMinC = climate.Maybe{}
		}
		if d.max {
			o.TMaxC = climate.Maybe{}
		}
	}
	f.doubts = nil
	f.dropDoubtfulHours(doubtful)
	if f.Days == nil {
		return
	}
	kept := f.Days.Days[:0]
	for _, o := range f.Days.Days {
		if o.TMinC.Known || o.TMaxC.Known || o.RainMM.Known || o.SunH.Known || o.RadiationMJ.Known || o.HumidityPct.Known || o.DewC.Known || o.WindMS.Known {
			kept = append(kept, o)
		}
	}
	f.Days.Days = kept
}

// Period is the first and the last day; None where the file tells a typical year.
func (f *Found) Period() (first, last cal.Date) {
	if f.Days == nil || len(f.Days.Days) == 0 {
		return cal.None, cal.None
	}
	return f.Days.Days[0].Date, f.Days.Days[len(f.Days.Days)-1].Date
}
