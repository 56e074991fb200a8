package scoreboard

import (
	"io/fs"
	"strings"

	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/window"
)

// weeksFromFrost are the gardeners' rule for the first date: weeks from the
// average last frost by hardiness (common practice, no source).
var weeksFromFrost = map[string]int{"hardy": -4, "half-hardy": -2, "tender": 1, "very tender": 2}

// spareDays are taken off before the first frost besides the days to maturity,
// for slower growth in autumn (common practice, no source).
const spareDays = 14

// frostDates are a place's average last and first frosts, days of the common year.
type frostDates struct{ last, first int }

// ruleRows holds the gardeners' rule against the same dates as the windows: weeks
// from the average last frost to the first date, the average first frost less
// the printed days to maturity less a fortnight for the last.
func (m *maker) ruleRows(p *PlantingDates) ([]Row, error) {
	frosts, err := m.frosts()
	if err != nil {
		return nil, err
	}
	var rows []Row
	for i := range p.Dates {
		d := &p.Dates[i]
		at, region := frosts[d.Region], p.region(d.Region)
		if region == nil || at.last == 0 || !asked(d) {
			continue
		}
		var readings [][]window.Window
		group := ""
		for _, method := range methods(d) {
			if u, start, ok := m.started(d.Crop, method); ok {
				readings = append(readings, []window.Window{ruled(u, start, at)})
				group = u.Group
			}
		}
		for _, c := range claims(d, region) {
			row := Row{Date: d, End: c.end, Counted: c.counted, Group: group}
			row.Off, row.Answer = nearest(c, readings)
			rows = append(rows, row)
		}
	}
	return rows, nil
}

// ruled is the window by the rule.
func ruled(u *crop.Use, start growth.Start, at frostDates) window.Window {
	days := int(growth.Prepare(u, start, true).PublishedDays())
	return window.Window{First: onCircle(at.last + 7*weeksFromFrost[u.Class]), Last: onCircle(at.first - days - spareDays)}
}

// started resolves a printed crop and method as the windows do.
func (m *maker) started(name, method string) (*crop.Use, growth.Start, bool) {
	c, u, err := m.book.Find(name)
	if err != nil {
		return nil, 0, false
	}
	if method == "" {
		method = u.Methods[0]
	}
	for _, use := range append([]*crop.Use{u}, c.Uses...) {
		if use.Allows(method) {
			return use, growth.StartOf(method), true
		}
	}
	return nil, 0, false
}

// region is a region by its id, nil when there is none.
func (p *PlantingDates) region(id string) *Region {
	for i := range p.Regions {
		if p.Regions[i].ID == id {
			return &p.Regions[i]
		}
	}
	return nil
}

// frosts are the average frost dates that a gardener of each region would look
// up: what the rule is given, not what it is held against.
func (m *maker) frosts() (map[string]frostDates, error) {
	files, err := fs.Sub(m.data, "planting_dates")
	if err != nil {
		return nil, err
	}
	c, err := openCells(files, "regions.csv", "region_id", "last_frost", "first_frost")
	if err != nil {
		return nil, err
	}
	out := map[string]frostDates{}
	for i := range c.Rows {
		out[c.text(i, "region_id")] = frostDates{c.day(i, "last_frost"), c.day(i, "first_frost")}
	}
	return out, c.err()
}

// asked tells whether a row is one the windows answer: not of a seedbed and not
// of sowing indoors.
func asked(d *Date) bool {
	return !strings.Contains(d.Crop, "seedbed") && d.Method != "start indoors"
}
