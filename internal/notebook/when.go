package notebook

import (
	"strconv"
	"strings"

	"garner/internal/cal"
	"garner/internal/words"
)

// when is a day as it was written.
type when struct {
	told   bool
	exact  cal.Date     // with its year; None: without
	day    cal.MonthDay // without a year
	year   int          // told alone or with the day; 0: none
	within int          // days either way
	aside  int          // years from the one that fits: -1 "last", +1 "next"
}

// readWhen finds the day. Of several ways the sharpest that is there is taken.
func (r *reading) readWhen() {
	r.when.exact = cal.None
	for _, read := range []func(int) bool{r.named, r.dayOfDigits} {
		for i := range r.tokens {
			if !r.tokens[i].used && read(i) {
				r.when.told = true
				r.readAbout()
				return
			}
		}
	}
	for i := range r.tokens {
		if r.has(i, "season") && !r.cropFollows(i) {
			r.season(i)
			return
		}
	}
	r.readYear()
}

// named reads a day that is told in words.
func (r *reading) named(i int) bool {
	return r.monthAt(i) || r.relative(i) || r.weekAt(i) || r.feastAt(i)
}

// dayOfDigits reads 2027-03-20, 20/3 and 20/3/27, day first; 3/20 can only be
// the twentieth of March.
func (r *reading) dayOfDigits(i int) bool {
	t := &r.tokens[i]
	if t.kind != day || r.fractionAt(i) {
		return false
	}
	if d, err := cal.Parse(t.raw); err == nil {
		r.when.exact = d
		r.take(i, 1)
		return true
	}
	parts := strings.FieldsFunc(t.raw, func(c rune) bool { return c == '/' || c == '-' || c == '.' })
	if len(parts) != 2 && len(parts) != 3 || strings.ContainsRune(t.raw, ',') {
		return false
	}
	var n [3]int
	for k, p := range parts {
		n[k], _ = strconv.Atoi(p)
	}
	d := cal.MonthDay{Month: n[1], Day: n[0]}
	if d.Month > 12 && n[0] <= 12 {
		d = cal.MonthDay{Month: n[0], Day: n[1]}
	}
	year := n[2]
	if len(parts) == 3 && year < 100 {
		year += 2000
	}
	if !dayExists(d) || len(parts) == 3 && !plausible(year) {
		return false
	}
	r.take(i, 1)
	r.setDay(d, year)
	return true
}

// dayExists tells whether a year has the day.
func dayExists(d cal.MonthDay) bool {
	return d.Month >= 1 && d.Month <= 12 && d.Day >= 1 && (d.Day <= cal.DaysInMonth(d.Month) || d.Month == 2 && d.Day == 29)
}

func plausible(year int) bool { return year >= 1950 && year <= 2150 }

func (r *reading) setDay(d cal.MonthDay, year int) {
	r.when.day = d
	if year != 0 {
		r.when.exact, r.when.year = d.In(year), year
	}
}

// season reads spring, summer, autumn or winter: its middle, six weeks either
// way; half a year later in the south.
func (r *reading) season(i int) {
	d, err := cal.ParseMonthDay(known()["season"][r.tokens[i].text])
	if err != nil {
		return
	}
	if r.South {
		d.Month = (d.Month+5)%12 + 1
	}
	r.take(i, 1)
	within := 45
	if at := i - 1; r.free(at) && is("part", r.tokens[at].text) {
		shift := map[string]int{"early": -30, "start": -30, "beginning": -30, "late": 30, "end": 30}[r.tokens[at].text]
		d, within = cal.MonthDayOf(d.DayOfYear()+shift), 20
		r.take(at, 1)
	}
	r.when = when{told: true, exact: cal.None, within: within}
	r.setDay(d, r.yearAfter(i+1))
	r.asideBefore(i)
}

// feastAt reads midsummer and midwinter: a week either way, and half a year later
// in the south.
func (r *reading) feastAt(i int) bool {
	d, err := cal.ParseMonthDay(known()["feast"][r.tokens[i].text])
	if err != nil {
		return false
	}
	if r.South {
		d.Month = (d.Month+5)%12 + 1
	}
	r.take(i, 1)
	r.when.within = 7
	r.setDay(d, r.yearAfter(i+1))
	r.asideBefore(i)
	return true
}

// cropFollows tells whether a season is part of a crop's name: winter lettuce.
func (r *reading) cropFollows(i int) bool {
	if !r.free(i + 1) {
		return false
	}
	return r.knows(r.tokens[i].text + " " + r.tokens[i+1].text)
}

// yearAfter reads and takes a year of four digits.
func (r *reading) yearAfter(i int) int {
	v, ok := r.figure(i)
	if !ok || !plausible(int(v)) || v != float64(int(v)) || len(r.tokens[i].raw) != 4 || r.counted(i+1) {
		return 0
	}
	r.take(i, 1)
	return int(v)
}

// readYear reads a year that stands alone: the usual time of that year.
func (r *reading) readYear() {
	for i := range r.tokens {
		if year := r.yearAfter(i); year != 0 {
			r.when.year = year
			return
		}
	}
}

// readAbout widens a day that is told as rough.
func (r *reading) readAbout() {
	for k := range r.tokens {
		if r.has(k, "about") {
			v, _ := value("about", r.tokens[k].text)
			r.take(k, 1)
			r.when.within = max(r.when.within, int(v))
		}
	}
}

// weekAt reads "week 12": the week of the year that holds that Thursday (ISO
// 8601), with its middle for the day.
func (r *reading) weekAt(i int) bool {
	if r.tokens[i].text != "week" && r.tokens[i].text != "wk" {
		return false
	}
	n, ok := r.figure(i + 1)
	if !ok || n < 1 || n > 53 || n != float64(int(n)) || r.counted(i+2) {
		return false
	}
	r.take(i, 2)
	monday := cal.Of(r.Today.Year(), 1, 4).Monday() + cal.Date(7*(int(n)-1))
	_, month, dd := (monday + 3).YMD()
	r.when.within = 3
	r.setDay(cal.MonthDay{Month: month, Day: dd}, r.yearAfter(i+2))
	return true
}

// relative reads today, yesterday, tomorrow, "3 weeks ago", "in 2 weeks", "last
// week" and the like.
func (r *reading) relative(i int) bool {
	switch r.tokens[i].text {
	case "today":
		return r.daysOff(i, 1, 0, 0)
	case "yesterday":
		return r.daysOff(i, 1, -1, 0)
	case "tomorrow":
		return r.daysOff(i, 1, 1, 0)
	}
	if r.has(i+2, "month") && (r.tokens[i+1].text == "of" || r.tokens[i+1].text == "in") {
		return false // last week of March
	}
	length, ok := map[string]int{"day": 1, "days": 1, "week": 7, "weeks": 7, "month": 30, "months": 30, "fortnight": 14}[r.tokens[i].text]
	if !ok || i == 0 {
		return false
	}
	switch {
	case r.free(i-1) && r.tokens[i-1].text == "last":
		return r.daysOff(i-1, 2, -length, length/2)
	case r.free(i-1) && r.tokens[i-1].text == "next":
		return r.daysOff(i-1, 2, length, length/2)
	case r.free(i-1) && r.tokens[i-1].text == "this":
		return r.daysOff(i-1, 2, 0, length/2)
	}
	n, ok := r.number(i - 1)
	if !ok || n*float64(length) > 3000 {
		return false
	}
	switch off := int(n * float64(length)); {
	case r.free(i+1) && r.tokens[i+1].text == "ago":
		return r.daysOff(i-1, 3, -off, length/2)
	case r.free(i-2) && r.tokens[i-2].text == "in":
		return r.daysOff(i-2, 3, off, length/2)
	}
	return false
}

func (r *reading) daysOff(i, n, off, within int) bool {
	r.take(i, n)
	r.when.exact, r.when.within = r.Today+cal.Date(off), within
	return true
}

// tellDay says what a day was taken for.
func (r *reading) tellDay(d cal.Date, within int) {
	if within == 0 {
		r.understand("notebook.day", words.Args{"day": d})
		return
	}
	r.understand("notebook.day_within", words.Args{"day": d, "days": within})
}
