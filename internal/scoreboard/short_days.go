package scoreboard

import (
	"garner/internal/printed"
	"garner/internal/sun"
	"garner/internal/table"
	"garner/internal/words"
)

// shortDaysSlack: the printed dates are rounded and start with the last long day
// in one list, the first short one in another [d].
const shortDaysSlack = 3

// shortDays holds the first and last day shorter than ten hours against printed
// dates.
func (m *maker) shortDays() (s Section, err error) {
	c, err := table.OpenCells(m.data, "winter_light.csv", "place", "lat", "hours", "from", "to", "source", "mark")
	if err != nil {
		return s, err
	}
	for i := range c.Rows {
		first, last := shorterThan(c.Within(i, "lat", -66, 66), c.Within(i, "hours", 0, 24))
		for _, end := range []struct {
			key, column string
			day         int
		}{{"scoreboard.short_first", "from", first}, {"scoreboard.short_last", "to", last}} {
			s.Lines = append(s.Lines, Line{Check: words.P(end.key, words.Args{"place": c.Text(i, "place"), "hours": c.Within(i, "hours", 0, 24)}),
				Published: exactly(float64(c.Day(i, end.column))), Computed: exactly(float64(end.day)), Unit: "date", Slack: shortDaysSlack,
				Sources: []string{m.work(c.Text(i, "source"))}, Mark: c.Text(i, "mark")}.judge())
		}
	}
	return s, c.Err()
}

// shorterThan are the first and last days of a northern winter shorter than some
// hours, as days of the common year.
func shorterThan(latitudeDeg, hours float64) (first, last int) {
	const midsummer = 172
	for i := range 365 {
		day := printed.OnCircle(midsummer + i)
		if sun.DayLengthH(latitudeDeg, day) < hours {
			if first == 0 {
				first = day
			}
			last = day
		}
	}
	return first, last
}
