package printed

import (
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

// RuleRows holds the gardeners' rule against the dates of regions whose average
// frosts are known: weeks from the average last frost to the first date, the
// average first frost less the published days to maturity less a fortnight for
// the last.
func RuleRows(p *PlantingDates, book *crop.Book) (rows []Row) {
	regions := map[string]*Region{}
	for i := range p.Regions {
		regions[p.Regions[i].ID] = &p.Regions[i]
	}
	a := &asker{book: book}
	for i := range p.Dates {
		d := &p.Dates[i]
		r := regions[d.Region]
		if r == nil || r.LastFrost == 0 || r.FirstFrost == 0 || !d.asked() {
			continue
		}
		var readings [][]window.Window
		group := ""
		for _, method := range methods(d) {
			if q, ok := a.ask(d, method); ok {
				readings = append(readings, []window.Window{ruled(q.use, q.start, r)})
				group = q.use.Group
			}
		}
		rows = append(rows, rowsOf(d, r, group, readings)...)
	}
	return rows
}

// ruled is the window by the rule.
func ruled(u *crop.Use, start growth.Start, r *Region) window.Window {
	days := int(growth.Prepare(u, start, r.Location.LatitudeDeg >= 0).PublishedDays())
	return window.Window{First: OnCircle(r.LastFrost + 7*weeksFromFrost[u.Class]), Last: OnCircle(r.FirstFrost - days - spareDays)}
}

// asked tells whether a row is one the windows answer: not of a seedbed and not
// of sowing indoors.
func (d *Date) asked() bool {
	return !strings.Contains(d.Crop, "seedbed") && d.Method != "start indoors"
}
