package notebook

import (
	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/words"
)

const (
	// usualWithin is how far a crop's usual day may be off where none was told [d].
	// // judgement
	usualWithin = 21
	// justGone is how long past a day may be and still be meant for this year when
	// it is told as still to come [d]. // judgement
	justGone = 10
	// mostWithin is the widest a day may be told [d].
	mostWithin = 60
)

// resolve gives the day its year, and where no day was told takes the crop's
// usual one.
func (r *reading) resolve(u *crop.Use) (d cal.Date, within int) {
	w := r.when
	if !w.told {
		w.day, w.within = r.usualDay(u), usualWithin
		if w.year != 0 {
			w.exact = w.day.In(w.year)
		}
	}
	within = min(w.within, mostWithin)
	d = w.exact
	if !d.IsSet() {
		d = r.inYear(w, u)
	}
	if r.past && d > r.Today {
		d = r.latest(w.day, within)
	}
	r.tellDay(d, within)
	r.askDay(w, u, d)
	return r.raised(u, d), within
}

// askDay asks for a day that was not told.
func (r *reading) askDay(w when, u *crop.Use, d cal.Date) {
	if !w.told && w.year == 0 && !r.standing {
		r.ask("notebook.which_day", words.Args{"crop": u.Label, "day": d})
	}
	if d < r.Today-mostAgo && !perennial(u) {
		r.ask("notebook.long_ago", words.Args{"day": d})
	}
}

// mostAgo is how long ago something not perennial can have been planted and
// still matter [d].
const mostAgo = 500

// inYear sets a day without a year against today.
func (r *reading) inYear(w when, u *crop.Use) cal.Date {
	last, next := r.latest(w.day, w.within), r.next(w.day)
	switch {
	case w.aside < 0:
		return last
	case w.aside > 0:
		return next
	case r.past, r.standing:
		return last
	case r.inGround(u, last):
		r.understand("notebook.still_there", words.Args{"year": digitsOf(last.Year())})
		return last
	}
	return next
}

// latest returns the last time a day came, today included.
func (r *reading) latest(d cal.MonthDay, within int) cal.Date {
	year := r.Today.Year()
	for _, y := range []int{year + 1, year} {
		if at := d.In(y); at <= r.Today || at-cal.Date(within) <= r.Today-justGone {
			return at
		}
	}
	return d.In(year - 1)
}

// next returns the next time a day comes, or the one just gone.
func (r *reading) next(d cal.MonthDay) cal.Date {
	year := r.Today.Year()
	for _, y := range []int{year - 1, year} {
		if at := d.In(y); at >= r.Today-justGone {
			return at
		}
	}
	return d.In(year + 1)
}

// inGround tells whether what went in on a day would still grow or stand today:
// it is not ready yet, or it stands the winter.
func (r *reading) inGround(u *crop.Use, on cal.Date) bool {
	if perennial(u) {
		return true
	}
	days := u.DaysSeed
	switch r.methodFor(u) {
	case "plant", "cutting":
		days = u.DaysPlant
	case "set", "crown":
		days = u.DaysSet
	}
	if u.SlowFactor == 0 {
		days += u.StandDays
	}
	return float64(r.Today-on) < days
}

func perennial(u *crop.Use) bool { return u.Pattern == crop.Perennial }

// usualDay is the day on which the book puts a use in, half a year on in the
// south.
func (r *reading) usualDay(u *crop.Use) cal.MonthDay {
	d, err := cal.ParseMonthDay(u.ReferenceDate)
	if err != nil {
		return cal.MonthDay{Month: 4, Day: 15}
	}
	if r.South {
		return cal.MonthDayOf(d.DayOfYear() + 182)
	}
	return d
}

// raised moves the day of a crop that is sown to be planted out to the day it
// goes into its ground.
func (r *reading) raised(u *crop.Use, d cal.Date) cal.Date {
	if !r.sowing || u.Allows("seed") || !u.Allows("plant") {
		return d
	}
	out := d + cal.Date(u.RaiseDays)
	r.understand("notebook.raised", words.Args{"sown": d, "days": u.RaiseDays, "out": out})
	return out
}
