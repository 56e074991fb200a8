package climate

import (
	"garner/internal/cal"
)

// replay gives the years on file back as futures. A future starts in one of the
// years, on the day of the year it is wanted for, and runs on into the years
// that followed; after the last year on file comes the first. Temperatures are
// shifted by the record's own trend to the present level.
type replay struct {
	first, years int   // the first complete calendar year, and how many there are
	days         []Day // of those years, shifted
	start        []int // place in days of each year's 1 January, and the end
	base         int   // the calendar year whose future i replays the i-th year of the order
}

func newReplay(filled Series, r *Record, today cal.Date) *replay {
	first, years := longestRun(r)
	p := &replay{first: first, years: years, base: today.Year()}
	p.start = make([]int, years+1)
	from := cal.Of(first, 1, 1)
	for i := range p.start {
		p.start[i] = int(cal.Of(first+i, 1, 1) - from)
	}
	p.days = make([]Day, p.start[years])
	copy(p.days, filled.Days[from-filled.First:])
	t := trendOf(r)
	t.shift(p.days, from, today.Year())
	return p
}

// appendDays adds n days from first on to out.
func (p *replay) appendDays(out []Day, k key, first cal.Date, n int) []Day {
	order := yearOrder(k.seed, p.years)
	year, month, day := first.YMD()
	offset := order[int(k.future%uint64(p.years))]
	for n > 0 {
		place := ((offset+year-p.base)%p.years + p.years) % p.years
		length := p.start[place+1] - p.start[place]
		at := cal.MonthDay{Month: month, Day: day}.DayOfYear() - 1
		leap := int(cal.Of(year+1, 1, 1) - cal.Of(year, 1, 1))
		out, n = p.yearInto(out, place, at, length, leap, month, day, n)
		year, month, day = year+1, 1, 1
	}
	return out
}

// leapAt is the place of 29 February in a leap year.
const leapAt = 59

// yearInto adds the days of one year on file, from a month and day on, to a
// year that may be longer or shorter by 29 February: the day is left out or its
// neighbour is used again.
func (p *replay) yearInto(out []Day, place, at, length, wanted, month, day, n int) ([]Day, int) {
	if wanted == 366 && (month > 2 || month == 2 && day == 29) {
		at = int(cal.Of(2000, month, day) - cal.Of(2000, 1, 1))
	}
	year := p.days[p.start[place] : p.start[place]+length]
	for ; at < wanted && n > 0; at, n = at+1, n-1 {
		from := at
		switch {
		case wanted == 366 && length == 365 && at >= leapAt:
			from--
		case wanted == 365 && length == 366 && at >= leapAt:
			from++
		}
		out = append(out, year[from])
	}
	return out, n
}

// minYearDays is how many days with both temperatures make a year complete
// enough.
const minYearDays = 355

// yearsOnFile counts the years that can be replayed.
func yearsOnFile(r *Record) int {
	_, n := longestRun(r)
	return n
}

// longestRun returns the longest run of calendar years that are complete enough:
// the first of them and how many.
func longestRun(r *Record) (first, years int) {
	counts := map[int]int{}
	low, high := 0, -1
	for i, o := range r.Days {
		y := o.Date.Year()
		if i == 0 {
			low = y
		}
		high = y
		if o.TMinC.Known && o.TMaxC.Known {
			counts[y]++
		}
	}
	run := 0
	for y := low; y <= high; y++ {
		if counts[y] < minYearDays {
			run = 0
			continue
		}
		run++
		if run > years {
			first, years = y-run+1, run
		}
	}
	return first, years
}
