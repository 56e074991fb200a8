package climate

import "garner/internal/cal"

// replay gives the years on file back as futures. A future starts in one of the
// years, on the day of the year it is wanted for, and runs on into the years
// that followed on file; after the last comes the first. Temperatures are
// shifted by the record's own trend to the present level.
type replay struct {
	years []replayYear
	base  int // the calendar year in which a future is in the year it starts with
}

// replayYear is a calendar year on file, shifted to the present level.
type replayYear struct{ days []Day }

func newReplay(r *Record, g *Generator, today cal.Date) *replay {
	p := &replay{base: today.Year()}
	t := trendOf(r)
	years := completeYears(r)
	level := min(today.Year(), years[len(years)-1]+mostAhead)
	for _, year := range years {
		from, to := cal.Of(year, 1, 1), cal.Of(year+1, 1, 1)
		filled, _ := fillRecord(r, g, from, int(to-from))
		t.shift(filled.Days, from, level)
		p.years = append(p.years, replayYear{filled.Days})
	}
	return p
}

// appendDays adds n days from first on to out.
func (p *replay) appendDays(out []Day, k key, first cal.Date, n int) []Day {
	count := len(p.years)
	start := yearOrder(k.seed, count)[int(k.future%uint64(count))]
	year, month, day := first.YMD()
	for n > 0 {
		onFile := p.years[((start+year-p.base)%count+count)%count].days
		leap := int(cal.Of(year+1, 1, 1)-cal.Of(year, 1, 1)) == 366
		at := cal.MonthDay{Month: month, Day: day}.DayOfYear() - 1
		if leap && month > 2 {
			at++
		}
		before := len(out)
		out = appendYear(out, onFile, at, leap, n)
		n -= len(out) - before
		year, month, day = year+1, 1, 1
	}
	return out
}

// leapAt is the place of 29 February in a leap year.
const leapAt = 59

// appendYear adds at most n days of a year on file, from place at of the year
// wanted, which may be longer or shorter by 29 February: the day is left out, or
// the day before it is used again.
func appendYear(out, onFile []Day, at int, leap bool, n int) []Day {
	had := len(onFile) == 366
	switch {
	case leap == had:
		return append(out, onFile[at:min(len(onFile), at+n)]...)
	case leap:
		head := onFile[:leapAt]
		if at < len(head) {
			part := head[at:min(len(head), at+n)]
			out, at, n = append(out, part...), at+len(part), n-len(part)
		}
		tail := onFile[leapAt-1:] // its first is 28 February again
		if n > 0 {
			out = append(out, tail[at-leapAt:min(len(tail), at-leapAt+n)]...)
		}
		return out
	default:
		if at < leapAt {
			part := onFile[at:min(leapAt, at+n)]
			out, at, n = append(out, part...), at+len(part), n-len(part)
		}
		if n > 0 {
			out = append(out, onFile[at+1:min(len(onFile), at+1+n)]...)
		}
		return out
	}
}

// minYearDays is how many days with both temperatures make a year complete
// enough.
const minYearDays = 355

// yearsOnFile counts the years that can be replayed.
func yearsOnFile(r *Record) int { return len(completeYears(r)) }

// completeYears returns the calendar years with enough days, in order.
func completeYears(r *Record) (years []int) {
	year, known := 0, 0
	flush := func() {
		if known >= minYearDays {
			years = append(years, year)
		}
	}
	for i := range r.Days {
		o := &r.Days[i]
		if y := o.Date.Year(); y != year {
			flush()
			year, known = y, 0
		}
		if o.TMinC.Known && o.TMaxC.Known {
			known++
		}
	}
	flush()
	return years
}
