package season

import (
	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/growth"
)

// Solstices of June and December as days of the common year.
const (
	june21     = 172
	december21 = 355
	commonYear = 365
)

// TooEarly tells whether a use is not yet started on a day, since it is one to
// stand the winter or to be sown late (crop.Use.StartAfterSolsticeDays): what is
// sown in spring is another use of the crop. Plants and sets go out when plants
// sown on the first day are raised.
func TooEarly(u *crop.Use, start growth.Start, date cal.Date, northern bool) bool {
	if u.StartAfterSolsticeDays <= 0 {
		return false
	}
	first := halfYear + int(u.StartAfterSolsticeDays)
	if start != growth.FromSeed {
		first += int(u.RaiseDays)
	}
	return sinceMidwinter(commonDay(date), northern) < first
}

// Due is the last day on which a use started on a day may come ready and still
// be what it is grown for; None when it is not one for winter or spring.
func Due(u *crop.Use, date cal.Date, northern bool) cal.Date {
	if u.DueAfterSolsticeDays <= 0 {
		return cal.None
	}
	gone := sinceMidwinter(commonDay(date), northern)
	return date + cal.Date(halfYear+int(u.DueAfterSolsticeDays)-gone)
}

// sinceMidwinter is how much is gone of the year of growth, from midwinter to
// midwinter, on a day of the common year [d].
func sinceMidwinter(day int, northern bool) int {
	midwinter := december21
	if !northern {
		midwinter = june21
	}
	return (day - midwinter + commonYear) % commonYear
}

// commonDay is the day of the common year, 1-365; a leap day counts as the day
// before it.
func commonDay(d cal.Date) int {
	_, month, day := d.YMD()
	if month == 2 && day == 29 {
		day = 28
	}
	return cal.MonthDay{Month: month, Day: day}.DayOfYear()
}
