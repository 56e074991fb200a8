package scoreboard

import (
	"garner/internal/sun"
	"garner/internal/words"
)

// shortDaysSlack: the printed dates are rounded and start with the last long day
// in one list, the first short one in another [d].
const shortDaysSlack = 3

// shortDays holds the first and last day shorter than ten hours against printed
// dates.
func (m *maker) shortDays() (s Section, err error) {
	c, err := openCells(m.data, "winter_light.csv", "place", "lat", "hours", "from", "to", "source", "mark")
	if err != nil {
		return s, err
	}
	for i := range c.Rows {
		first, last := shorterThan(c.number(i, "lat", -66, 66), c.number(i, "hours", 0, 24))
		for _, end := range []struct {
			key, column string
			day         int
		}{{"scoreboard.short_first", "from", first}, {"scoreboard.short_last", "to", last}} {
			s.Lines = append(s.Lines, Line{Check: words.P(end.key, words.Args{"place": c.text(i, "place"), "hours": c.number(i, "hours", 0, 24)}),
				Published: exactly(float64(c.day(i, end.column))), Computed: exactly(float64(end.day)), Unit: "date", Slack: shortDaysSlack,
				Sources: []string{m.work(c.text(i, "source"))}, Mark: c.text(i, "mark")}.judge())
		}
	}
	return s, c.err()
}

// shorterThan are the first and last days of a northern winter shorter than some
// hours, as days of the common year.
func shorterThan(latitudeDeg, hours float64) (first, last int) {
	const midsummer = 172
	for i := range 365 {
		day := onCircle(midsummer + i)
		if sun.DayLengthH(latitudeDeg, day) < hours {
			if first == 0 {
				first = day
			}
			last = day
		}
	}
	return first, last
}
