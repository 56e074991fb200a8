package scoreboard

import (
	"strconv"
	"strings"

	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/sun"
	"garner/internal/table"
	"garner/internal/words"
)

// How far off the published figures of light and growth may be. Radiation use
// and extinction differ by as much between cultivars and seasons of one trial
// (potato: 3.1 to 4.2 g/MJ).
var lightSlack = map[string]float64{"radiation use": 0.6, "extinction": 0.15, "leaf growth": 0.03, "visible share": 0, "caught": 10}

// light holds how light is caught and turned into growth against published
// figures.
func (m *maker) light() (s Section, err error) {
	c, err := table.OpenCells(m.data, "light.csv", "crop", "measure", "low", "high", "unit", "source", "mark")
	if err != nil {
		return s, err
	}
	var h hulls
	for i := range c.Rows {
		measure := c.Text(i, "measure")
		u := m.find(c.Text(i, "crop"), "")
		if u == nil && c.Text(i, "crop") != "" {
			continue
		}
		l := Line{Published: span(c, i, "low", "high"), Unit: c.Text(i, "unit"), Sources: []string{m.work(c.Text(i, "source"))}, Mark: c.Text(i, "mark")}
		if u != nil {
			l.Crop = u.Crop
		}
		l.Check, l.Slack, l.Computed = lit(u, measure)
		h.add(l.Crop+measure, l)
	}
	for _, l := range h.lines {
		s.Lines = append(s.Lines, l.judge())
	}
	return s, c.Err()
}

// lit says what a measure of light is in the engine.
func lit(u *crop.Use, measure string) (words.Phrase, float64, Span) {
	switch measure {
	case "radiation use":
		return words.P("scoreboard.light_use", nil), lightSlack[measure], exactly(u.RadiationUse)
	case "extinction":
		return words.P("scoreboard.light_extinction", nil), lightSlack[measure], exactly(u.Extinction)
	case "leaf growth":
		return words.P("scoreboard.light_leaf", nil), lightSlack[measure], exactly(u.LeafGrowth)
	case "visible share":
		return words.P("scoreboard.light_visible", nil), lightSlack[measure], exactly(sun.PARShare)
	}
	leaf, _ := strconv.ParseFloat(strings.TrimPrefix(measure, "caught at "), 64)
	return words.P("scoreboard.light_caught", words.Args{"leaf": leaf}), lightSlack["caught"], exactly(100 * growth.Intercepted(u.Extinction, leaf))
}
