package window

import "sort"

// span is a run of days round the year: from index from on for length days.
type span struct {
	from, length int
	chance       float64
}

// The rules by which dates are told, from the window trial.
const (
	bridge    = 12   // gaps under this many days inside a season are bridged
	ownBest   = 0.85 // a season that misses the wanted chance is told within 15 % of its best
	leastBest = 0.25 // and not at all when its best is under this
	valley    = 0.7  // a season of its own stands out by a valley this deep
	shortest  = 7    // a window is at least a week
	mostTold  = 3
	wholeYear = yearDays
)

// answer turns the odds into windows.
func (o *odds) answer(wanted float64) Answer {
	o.smooth()
	a := Answer{ByDay: o.chance}
	for i, c := range o.chance {
		if c > a.Best {
			a.Best, a.BestDay = c, i+1
		}
	}
	spans := o.spans(func(i int) bool { return o.chance[i] >= wanted })
	spans = append(spans, o.lesser(spans, wanted)...)
	sort.SliceStable(spans, func(i, j int) bool { return spans[i].worth() > spans[j].worth() })
	if len(spans) > mostTold {
		spans = spans[:mostTold]
	}
	sort.Slice(spans, func(i, j int) bool { return spans[i].from < spans[j].from })
	for _, s := range spans {
		a.Windows = append(a.Windows, o.window(s))
	}
	return a
}

// worth orders spans when there are too many to tell.
func (s span) worth() float64 { return s.chance * float64(s.length) }

// spans finds the runs of days that fulfil a condition, with short gaps bridged
// and short runs widened to a week.
func (o *odds) spans(in func(int) bool) []span {
	var yes [yearDays]bool
	count := 0
	for i := range yes {
		if yes[i] = in(i); yes[i] {
			count++
		}
	}
	if count == 0 {
		return nil
	}
	if count == yearDays {
		return []span{{0, wholeYear, o.mean(0, wholeYear)}}
	}
	runs := runsOf(yes)
	runs = bridged(runs)
	for i := range runs {
		runs[i] = o.atLeastWeek(runs[i])
	}
	return runs
}

// runsOf lists the runs of true round the circle.
func runsOf(yes [yearDays]bool) []span {
	start := 0
	for yes[start] {
		start++
	}
	var runs []span
	for k := 0; k < yearDays; k++ {
		i := wrap(start + k)
		if !yes[i] {
			continue
		}
		if n := len(runs); n > 0 && wrap(runs[n-1].from+runs[n-1].length) == i {
			runs[n-1].length++
			continue
		}
		runs = append(runs, span{from: i, length: 1})
	}
	return runs
}

// bridged joins runs with short gaps between them.
func bridged(runs []span) []span {
	for joined := true; joined && len(runs) > 1; {
		joined = false
		for i := range runs {
			j := (i + 1) % len(runs)
			gap := wrap(runs[j].from - runs[i].from - runs[i].length)
			if gap < bridge {
				runs[i].length += gap + runs[j].length
				runs = append(runs[:j], runs[j+1:]...)
				joined = true
				break
			}
		}
	}
	if len(runs) == 1 && runs[0].length >= yearDays {
		runs[0] = span{from: 0, length: wholeYear}
	}
	return runs
}

// atLeastWeek widens a run to a week about its middle and gives its mean chance.
func (o *odds) atLeastWeek(s span) span {
	if s.length < shortest {
		s.from = wrap(s.from - (shortest-s.length)/2)
		s.length = shortest
	}
	s.chance = o.mean(s.from, s.length)
	return s
}

func (o *odds) mean(from, length int) float64 {
	sum := 0.0
	for k := 0; k < length; k++ {
		sum += o.chance[wrap(from+k)]
	}
	return sum / float64(length)
}

// lesser finds the seasons that never reach the wanted chance but stand out by
// a valley from those that do, and from each other.
func (o *odds) lesser(told []span, wanted float64) []span {
	taken := make([]bool, yearDays)
	for _, s := range told {
		mark(taken, s)
	}
	var out []span
	for {
		peak := o.highest(taken)
		if peak < 0 || o.chance[peak] < leastBest {
			return out
		}
		season := o.around(peak)
		if o.standsOut(peak, append(told, out...)) {
			out = append(out, season)
		}
		mark(taken, o.slope(peak))
		mark(taken, season)
	}
}

func mark(taken []bool, s span) {
	for k := 0; k < s.length; k++ {
		taken[wrap(s.from+k)] = true
	}
}

// highest returns the best day index not yet taken, -1 when all are.
func (o *odds) highest(taken []bool) int {
	best := -1
	for i, c := range o.chance {
		if !taken[i] && (best < 0 || c > o.chance[best]) {
			best = i
		}
	}
	return best
}

// around returns the days round a peak within 15 % of it.
func (o *odds) around(peak int) span {
	level := ownBest * o.chance[peak]
	from, to := peak, peak
	for wrap(to+1) != from && o.chance[wrap(to+1)] >= level {
		to++
	}
	for wrap(from-1) != wrap(to) && o.chance[wrap(from-1)] >= level {
		from--
	}
	return o.atLeastWeek(span{from: wrap(from), length: min(to-from+1, wholeYear)})
}

// slope returns the days round a peak down to its valley.
func (o *odds) slope(peak int) span {
	level := valley * o.chance[peak]
	from, to := peak, peak
	for to-peak < yearDays/2 && o.chance[wrap(to+1)] >= level {
		to++
	}
	for peak-from < yearDays/2 && o.chance[wrap(from-1)] >= level {
		from--
	}
	return span{from: wrap(from), length: to - from + 1}
}

// standsOut tells whether a valley lies between a peak and every season told.
func (o *odds) standsOut(peak int, told []span) bool {
	for _, s := range told {
		if s.length >= wholeYear || !o.valleyBetween(peak, s) {
			return false
		}
	}
	return true
}

// valleyBetween walks from a peak both ways to a season and asks that the odds
// fall low on either way.
func (o *odds) valleyBetween(peak int, s span) bool {
	level := valley * o.chance[peak]
	for _, step := range []int{1, -1} {
		fell := false
		for k := 1; k < yearDays; k++ {
			i := wrap(peak + step*k)
			if wrap(i-s.from) < s.length {
				break
			}
			fell = fell || o.chance[i] < level
		}
		if !fell {
			return false
		}
	}
	return true
}

// window tells a span with the harvest it leads to.
func (o *odds) window(s span) Window {
	last := wrap(s.from + s.length - 1)
	return Window{
		First: s.from + 1, Last: last + 1,
		ReadyFrom: wrap(s.from+o.took(s.from)) + 1,
		ReadyTo:   wrap(last+o.took(last)) + 1,
		Chance:    s.chance,
		FirstTook: o.near(s.from).tenYears(), LastTook: o.near(last).tenYears(),
	}
}
