package cal

import "fmt"

// MonthDay is a day of any year, such as 03-15.
type MonthDay struct{ Month, Day int }

// monthStart holds the days of a common year before each month.
var monthStart = [13]int{0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334, 365}

// MonthDayOf returns the day of the common year with the given day number,
// 1-365; other numbers are taken round the year.
func MonthDayOf(dayOfYear int) MonthDay {
	n := (dayOfYear - 1) % 365
	if n < 0 {
		n += 365
	}
	for m := 12; m >= 1; m-- {
		if n >= monthStart[m-1] {
			return MonthDay{m, n - monthStart[m-1] + 1}
		}
	}
	return MonthDay{1, 1}
}

// ParseMonthDay reads MM-DD. 29 February is read as 28 February.
func ParseMonthDay(s string) (MonthDay, error) {
	var m, d int
	if n, err := fmt.Sscanf(s, "%2d-%2d", &m, &d); err != nil || n != 2 || len(s) != 5 || m < 1 || m > 12 || d < 1 {
		return MonthDay{}, fmt.Errorf("%q is not a day of the year like 03-15", s)
	}
	if m == 2 && d == 29 {
		d = 28
	}
	if d > DaysInMonth(m) {
		return MonthDay{}, fmt.Errorf("%q is not a day of the year: month %d has %d days", s, m, DaysInMonth(m))
	}
	return MonthDay{m, d}, nil
}

// DaysInMonth returns the days of a month (1-12) in a common year.
func DaysInMonth(month int) int { return monthStart[month] - monthStart[month-1] }

// DayOfYear returns the day number in a common year, 1-365.
func (m MonthDay) DayOfYear() int { return monthStart[m.Month-1] + m.Day }

// In returns the date of this day in a year.
func (m MonthDay) In(year int) Date { return Of(year, m.Month, m.Day) }

// String returns MM-DD.
func (m MonthDay) String() string {
	if m.Month == 0 {
		return ""
	}
	return fmt.Sprintf("%02d-%02d", m.Month, m.Day)
}

// MarshalText writes MM-DD.
func (m MonthDay) MarshalText() ([]byte, error) { return []byte(m.String()), nil }

// UnmarshalText reads MM-DD; nothing gives the zero value.
func (m *MonthDay) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*m = MonthDay{}
		return nil
	}
	v, err := ParseMonthDay(string(text))
	if err != nil {
		return err
	}
	*m = v
	return nil
}
