package notebook

import (
	"strconv"
	"strings"

	"garner/internal/cal"
)

// monthAt reads a month with what stands round it: a day before or after, early
// or late, a year.
func (r *reading) monthAt(i int) bool {
	month, ok := value("month", r.tokens[i].text)
	if !ok {
		return false
	}
	m := int(month)
	r.take(i, 1)
	year := r.yearAfter(i + 1)
	d, within := cal.MonthDay{Month: m, Day: 16}, 15
	switch {
	case r.dayBefore(i, m, &d), r.dayAfter(i, m, &d):
		within = 0
		if year == 0 {
			year = r.yearAfter(i + 2)
		}
	default:
		within = r.partBefore(i, m, &d, within)
		within = r.untilMonth(i, &d, within)
		if year == 0 {
			year = r.yearAfter(i + 2)
		}
	}
	r.when.within = within
	r.setDay(d, year)
	r.asideBefore(i)
	return true
}

// dayBefore reads the day in "20 March", "20th of March".
func (r *reading) dayBefore(i, month int, d *cal.MonthDay) bool {
	at, n := i-1, 1
	for r.free(at) && (r.tokens[at].text == "of" || ordinal(r.tokens[at].text)) {
		at--
		n++
	}
	v, ok := r.figure(at)
	return ok && r.dayOf(v, month, d, at, n)
}

// dayAfter reads the day in "March 20", unless the number counts something.
func (r *reading) dayAfter(i, month int, d *cal.MonthDay) bool {
	v, ok := r.figure(i + 1)
	if !ok || r.counted(i+2) {
		return false
	}
	n := 1
	if r.free(i+2) && ordinal(r.tokens[i+2].text) {
		n++
	}
	return r.dayOf(v, month, d, i+1, n)
}

func (r *reading) dayOf(v float64, month int, d *cal.MonthDay, at, n int) bool {
	read := cal.MonthDay{Month: month, Day: int(v)}
	if v != float64(int(v)) || !dayExists(read) {
		return false
	}
	*d = read
	r.take(at, n)
	return true
}

// counted tells whether a word makes the number before it an amount.
func (r *reading) counted(i int) bool {
	for _, group := range []string{"length", "area", "square", "count", "row", "standing", "share"} {
		if r.has(i, group) {
			return true
		}
	}
	return r.free(i) && (r.tokens[i].text == "x" || r.tokens[i].text == "percent")
}

func ordinal(s string) bool { return s == "st" || s == "nd" || s == "rd" || s == "th" }

// partBefore reads early, mid and late, and returns how far the day may be off.
func (r *reading) partBefore(i, month int, d *cal.MonthDay, within int) int {
	at := i - 1
	for r.free(at) && (r.tokens[at].text == "of" || r.tokens[at].text == "in") {
		at--
	}
	text := ""
	if r.free(at) {
		text = known()["part"][r.tokens[at].text]
	}
	if r.free(at-1) && r.tokens[at].text == "week" {
		at--
		text = known()["week"][r.tokens[at].text]
	}
	if text == "" {
		return within
	}
	r.take(at, i-at)
	return partOf(text, month, d)
}

// untilMonth reads the second month of "March-April" and "late March to early
// April", and returns the half-width of both together.
func (r *reading) untilMonth(i int, d *cal.MonthDay, within int) int {
	at := i + 1
	for r.free(at) && (r.tokens[at].text == "to" || r.tokens[at].text == "or" || is("part", r.tokens[at].text)) {
		at++
	}
	if !r.has(at, "month") {
		return within
	}
	month, _ := value("month", r.tokens[at].text)
	end, half := cal.MonthDay{Month: int(month), Day: 16}, 15
	if at > i+1 {
		half = r.partBefore(at, int(month), &end, half)
	}
	first, last := d.DayOfYear()-within, end.DayOfYear()+half
	if last < first {
		last += 365
	}
	r.take(i+1, at-i)
	*d = cal.MonthDayOf((first + last) / 2)
	return (last - first + 1) / 2
}

// partOf sets the middle of a part of a month, such as 1-10, and returns its
// half-width.
func partOf(part string, month int, d *cal.MonthDay) int {
	low, high, _ := strings.Cut(part, "-")
	first, _ := strconv.Atoi(low)
	last, _ := strconv.Atoi(high)
	last = min(last, cal.DaysInMonth(month))
	*d = cal.MonthDay{Month: month, Day: (first + last) / 2}
	return (last - first + 1) / 2
}

// asideBefore reads "last" and "next" before a month or a season.
func (r *reading) asideBefore(i int) {
	for at := i - 1; at >= max(0, i-3); at-- {
		if !r.free(at) {
			continue
		}
		switch r.tokens[at].text {
		case "last":
			r.when.aside = -1
		case "next":
			r.when.aside = 1
		case "this":
		default:
			continue
		}
		r.take(at, 1)
		return
	}
}
