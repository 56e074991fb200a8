package risk

import "garner/internal/cal"

// halfYear is how many months the growing year of the south is behind that of the
// north.
const halfYear = 6

// YearStart is the first day of the growing year that a date lies in: the calendar
// year in the north; in the south it begins on 1 July, in the winter as well.
func YearStart(d cal.Date, south bool) cal.Date {
	year, month, _ := d.YMD()
	switch {
	case !south:
		return cal.Of(year, 1, 1)
	case month > halfYear:
		return cal.Of(year, halfYear+1, 1)
	}
	return cal.Of(year-1, halfYear+1, 1)
}

// NextYear is the first day of the growing year after that of a date.
func NextYear(d cal.Date, south bool) cal.Date { return YearStart(YearStart(d, south)+370, south) }

// dayInYear is a day of the northern year in the growing year of a date: 1 March is 1
// September in the south.
func dayInYear(m cal.MonthDay, d cal.Date, south bool) cal.Date {
	start := YearStart(d, south)
	if !south {
		return cal.Of(start.Year(), m.Month, m.Day)
	}
	if m.Month > halfYear {
		return cal.Of(start.Year()+1, m.Month-halfYear, m.Day)
	}
	return cal.Of(start.Year(), m.Month+halfYear, m.Day)
}
