package cal

import (
	"testing"
	"time"

	"pgregory.net/rapid"
)

// The standard library's calendar is the reference: ISO 8601 dates in the
// proleptic Gregorian calendar, weeks from Monday.
func TestDatesAgreeWithTheStandardLibrary(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := Date(rapid.IntRange(-200000, 200000).Draw(t, "day"))
		want := time.Unix(int64(d)*86400, 0).UTC()
		y, m, day := d.YMD()
		if y != want.Year() || m != int(want.Month()) || day != want.Day() || d.DayOfYear() != want.YearDay() {
			t.Fatalf("%d is %d-%d-%d, want %s", d, y, m, day, want)
		}
		if got := (int(want.Weekday()) + 6) % 7; d.Weekday() != got {
			t.Fatalf("%s: weekday %d, want %d", d, d.Weekday(), got)
		}
		if d.Monday().Weekday() != 0 || d-d.Monday() > 6 || d < d.Monday() {
			t.Fatalf("%s: Monday %s", d, d.Monday())
		}
		if Of(y, m, day) != d {
			t.Fatalf("%s does not come back", d)
		}
	})
}

func TestParse(t *testing.T) {
	for _, s := range []string{"1970-01-01", "2000-02-29", "2027-12-31", "1931-01-01"} {
		d, err := Parse(s)
		if err != nil || d.String() != s {
			t.Errorf("%s reads as %s, %v", s, d, err)
		}
	}
	for _, s := range []string{"", "2027-02-29", "2027-13-01", "27-01-01", "2027-1-1", "tomorrow", "2027-01-01T00:00"} {
		if _, err := Parse(s); err == nil {
			t.Errorf("%q was taken for a date", s)
		}
	}
}

func TestMonthDays(t *testing.T) {
	for n := 1; n <= 365; n++ {
		m := MonthDayOf(n)
		back, err := ParseMonthDay(m.String())
		if err != nil || back != m || m.DayOfYear() != n || m.In(2027).DayOfYear() != n {
			t.Fatalf("day %d is %s", n, m)
		}
	}
	if MonthDayOf(366) != MonthDayOf(1) || MonthDayOf(0) != MonthDayOf(365) {
		t.Error("the year is not a circle")
	}
	for _, s := range []string{"02-30", "13-01", "0-1", "1-1", "04-31"} {
		if _, err := ParseMonthDay(s); err == nil {
			t.Errorf("%q was taken for a day of the year", s)
		}
	}
}
