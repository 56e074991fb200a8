package scoreboard

import (
	"math"

	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/table"
	"garner/internal/words"
)

// temperatureSlackC is as far off the published cardinal temperatures may be:
// sources for one crop differ by as much.
const temperatureSlackC = 2.5

// temperature holds the response of development to temperature against published
// limits: where it begins, where it is best and where it ends. The engine's
// values are read off its own response, not off the book.
func (m *maker) temperature() (s Section, err error) {
	c, err := table.OpenCells(m.data, "temperature_response.csv", "crop", "measure", "low_c", "high_c", "source", "mark")
	if err != nil {
		return s, err
	}
	var h hulls
	uses := map[string]*crop.Use{}
	for i := range c.Rows {
		u := m.find(c.Text(i, "crop"), "")
		if u == nil {
			continue
		}
		uses[u.Crop] = u
		measure := c.Text(i, "measure")
		h.add(u.Crop+measure, Line{Crop: u.Crop, Check: words.P("scoreboard.temperature_"+measure, nil), Unit: "C", Slack: temperatureSlackC,
			Published: span(c, i, "low_c", "high_c"), Sources: []string{m.work(c.Text(i, "source"))}, Mark: c.Text(i, "mark")})
	}
	for _, l := range h.lines {
		u := uses[l.Crop]
		base, best, ceiling := landmarks(growth.NewResponse(u.BaseC, u.OptimumC, u.CeilingC))
		l.Computed = exactly(map[string]float64{"scoreboard.temperature_base": base, "scoreboard.temperature_optimum": best,
			"scoreboard.temperature_ceiling": ceiling}[l.Check.Key])
		s.Lines = append(s.Lines, l.judge())
	}
	return s, c.Err()
}

// landmarks are where a response begins, is best and ends [C], to a tenth.
func landmarks(r *growth.Response) (base, best, ceiling float64) {
	top := 0.0
	base, ceiling = math.NaN(), math.NaN()
	for i := -100; i <= 500; i++ {
		t := float64(i) / 10
		v := r.At(t)
		if v > 0 {
			if math.IsNaN(base) {
				base = t - 0.1
			}
			ceiling = t + 0.1
		}
		if v > top {
			top, best = v, t
		}
	}
	return base, best, ceiling
}
