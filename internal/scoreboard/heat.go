package scoreboard

import (
	"garner/internal/crop"
	"garner/internal/table"
	"garner/internal/words"
)

// heatSlackC is one step of the printed table (5 F).
const heatSlackC = 2.8

// heat holds the mean temperature at which a crop's last weeks spoil it against
// the published highest monthly mean for good growth. The engine knows no such
// limit for perennials.
func (m *maker) heat() (s Section, err error) {
	c, err := table.OpenCells(m.data, "heat.csv", "crop", "monthly_mean_maximum_c", "source", "mark")
	if err != nil {
		return s, err
	}
	for i := range c.Rows {
		u := m.find(c.Text(i, "crop"), "")
		if u == nil {
			continue
		}
		l := Line{Crop: u.Crop, Check: words.P("scoreboard.heat_end", nil), Unit: "C", Slack: heatSlackC, Computed: unknown(),
			Published: exactly(c.Within(i, "monthly_mean_maximum_c", 0, 60)), Sources: []string{m.work(c.Text(i, "source"))}, Mark: c.Text(i, "mark")}
		if u.HeatEndC > 0 && u.Pattern != crop.Perennial {
			l.Computed = exactly(u.HeatEndC)
		}
		s.Lines = append(s.Lines, l.judge())
	}
	return s, c.Err()
}
