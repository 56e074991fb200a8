package cal

import (
	"fmt"
	"time"
)

// Date is a calendar day, counted in days from 1970-01-01.
// Adding and subtracting whole days is ordinary arithmetic.
type Date int32

// None is the date that is not set. It lies far outside any holding's years.
const None Date = -1 << 31

// Of returns the date of a year, month (1-12) and day (1-31). Out-of-range
// days and months roll over as in the time package.
func Of(year, month, day int) Date {
	t := time.Date(year, time.Month(month), day, 0, 0, 0, 0, time.UTC)
	return Date(t.Unix() / 86400)
}

// Parse reads an ISO 8601 calendar date, YYYY-MM-DD, and refuses days that do
// not exist.
func Parse(s string) (Date, error) {
	t, err := time.Parse("2006-01-02", s)
	if err != nil {
		return None, fmt.Errorf("%q is not a date like 2027-03-15", s)
	}
	return fromTime(t), nil
}

func fromTime(t time.Time) Date {
	seconds := t.Unix()
	days := seconds / 86400
	if seconds%86400 < 0 {
		days--
	}
	return Date(days)
}

func (d Date) time() time.Time { return time.Unix(int64(d)*86400, 0).UTC() }

// IsSet tells whether d is a real date.
func (d Date) IsSet() bool { return d != None }

// String returns the date as YYYY-MM-DD, or nothing when it is not set.
func (d Date) String() string {
	if d == None {
		return ""
	}
	return d.time().Format("2006-01-02")
}

// YMD returns year, month (1-12) and day of the month.
func (d Date) YMD() (year, month, day int) {
	y, m, dd := d.time().Date()
	return y, int(m), dd
}

// Year returns the calendar year.
func (d Date) Year() int { y, _, _ := d.YMD(); return y }

// Month returns the month of the year, 1-12.
func (d Date) Month() int { _, m, _ := d.YMD(); return m }

// DayOfYear returns 1 for 1 January up to 365 or 366 for 31 December.
func (d Date) DayOfYear() int { return d.time().YearDay() }

// Weekday returns 0 for Monday up to 6 for Sunday.
func (d Date) Weekday() int {
	w := (int(d) + 3) % 7 // 1970-01-01 was a Thursday
	if w < 0 {
		w += 7
	}
	return w
}

// Monday returns the Monday of the date's week.
func (d Date) Monday() Date { return d - Date(d.Weekday()) }

// MarshalText writes the ISO form.
func (d Date) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// UnmarshalText reads the ISO form; nothing gives None.
func (d *Date) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*d = None
		return nil
	}
	v, err := Parse(string(text))
	if err != nil {
		return err
	}
	*d = v
	return nil
}
