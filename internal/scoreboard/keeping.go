package scoreboard

import (
	"garner/internal/crop"
	"garner/internal/larder"
	"garner/internal/table"
	"garner/internal/words"
)

// keepingSlack is how far off a ratio of lives may be, as a share of the published one:
// tables of the same crop differ by as much.
const keepingSlack = 0.25

// keeping holds how long food keeps, and how that changes with temperature, against
// published lives and rates of respiration (life is taken as inverse to the rate).
func (m *maker) keeping() (s Section, err error) {
	c, err := table.OpenCells(m.data, "keeping.csv", "crop", "use", "method", "measure", "at_c", "than_c", "low", "high", "source", "mark")
	if err != nil {
		return s, err
	}
	for i := range c.Rows {
		l := Line{Crop: c.Text(i, "crop"), Published: span(c, i, "low", "high"), Computed: unknown(), Unit: "1",
			Sources: []string{m.work(c.Text(i, "source"))}, Mark: c.Text(i, "mark")}
		at := c.Within(i, "at_c", -30, 40)
		measure := c.Text(i, "measure")
		args := words.Args{"use": c.Text(i, "use"), "method": c.Text(i, "method"), "at": at}
		than := at
		if measure != "days" {
			than = c.Within(i, "than_c", -30, 40)
			args["than"] = than
		}
		l.Slack = keepingSlack * l.Published.High
		if measure == "days" {
			l.Unit = "d"
		}
		if u := m.find(l.Crop, c.Text(i, "use")); u != nil {
			l.Crop, args["use"] = u.Crop, u.Label
			if row, keeps := u.Way(c.Text(i, "method")); keeps {
				l.Computed = exactly(kept(measure, row, at, than))
			}
		}
		l.Check = words.P("scoreboard.keeping_"+measure, args)
		s.Lines = append(s.Lines, l.judge())
	}
	return s, c.Err()
}

// kept is what the larder makes of a measure: days at a temperature, the life as a share
// of that at another, or how many times longer it is at the other.
func kept(measure string, row crop.Storage, at, than float64) float64 {
	life, other := larder.LifeDays(row, at), larder.LifeDays(row, than)
	switch measure {
	case "life":
		return life / other
	case "respiration":
		return other / life
	}
	return life
}
