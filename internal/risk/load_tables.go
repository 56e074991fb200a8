package risk

import (
	"math"

	"garner/internal/fault"
	"garner/internal/table"
	"garner/internal/words"
)

// unset marks an hour of a band that no row has filled.
const unset = -1

// severity reads the severity tables: bands in rising order, each filled for 0 to 24
// hours once.
func (l *loader) severity(c *table.Cells) {
	for i := range c.Rows {
		name := told(c, i, "table")
		to, in := blankOr(c, i, "to_c", -50, 60, math.Inf(1)), oneOf(c, i, "edge_in", []string{"yes", "no"}) == "yes"
		oneOf(c, i, "mark", marks)
		told(c, i, "source")
		t := l.tables[name]
		if n := len(t); n == 0 || t[n-1].toC != to || t[n-1].in != in {
			if n > 0 && (t[n-1].toC > to || t[n-1].toC == to && t[n-1].in) {
				c.Refuse(i, "to_c", "risk.data_band_order", words.Args{"given": c.Text(i, "to_c")})
			}
			b := band{toC: to, in: in}
			for h := range b.value {
				b.value[h] = unset
			}
			t = append(t, b)
			l.tables[name] = t
		}
		l.fill(c, i, &t[len(t)-1])
	}
}

// fill sets the hours of one row.
func (l *loader) fill(c *table.Cells, i int, b *band) {
	from, to := int(c.Within(i, "hours_from", 0, 24)), int(c.Within(i, "hours_to", 0, 24))
	value := int(c.Within(i, "value", 0, 10))
	for h := max(from, 0); h <= min(to, 24); h++ {
		if b.value[h] != unset {
			c.Refuse(i, "hours_from", "risk.data_hours", words.Args{"hour": h})
			return
		}
		b.value[h] = value
	}
}

// schedule reads the weekly schedule.
func (l *loader) schedule(c *table.Cells) {
	for i := range c.Rows {
		oneOf(c, i, "mark", marks)
		told(c, i, "source")
		l.cells = append(l.cells, cell{
			int(c.Within(i, "rain_days_from", 0, 7)), int(c.Within(i, "rain_days_to", 0, 7)),
			int(c.Within(i, "severity_from", 0, 28)), int(c.Within(i, "severity_to", 0, 28)), int(c.Within(i, "message", -1, 2)),
		})
	}
}

// whole refuses tables with hours or warm days left out and rules that lack
// numbers, events or measures, or whose measures do not begin with a cultural one.
func (l *loader) whole() {
	refuse := func(file, key string, args words.Args) {
		l.faults = append(l.faults, fault.New(fault.Invalid, key, args).In(fault.Place{File: file}))
	}
	for name, t := range l.tables {
		for i := range t {
			for h, v := range t[i].value {
				if v == unset {
					refuse("severity.csv", "risk.data_table_hole", words.Args{"table": name, "hour": h})
				}
			}
		}
		if !math.IsInf(t[len(t)-1].toC, 1) {
			refuse("severity.csv", "risk.data_table_end", words.Args{"table": name})
		}
	}
	for _, r := range l.book.Rules {
		f := forms[r.Form]
		for _, name := range f.needs {
			if _, ok := r.values[name]; !ok {
				refuse("numbers.csv", "risk.data_lacks_number", words.Args{"rule": r.ID, "name": name})
			}
		}
		if f.byEvents && len(r.Events) == 0 {
			refuse("pests.csv", "risk.data_lacks_events", words.Args{"rule": r.ID})
		}
		if len(r.Measures) == 0 || r.Measures[0].Kind == "chemical" {
			refuse("advice.csv", "risk.data_lacks_measures", words.Args{"rule": r.ID})
		}
	}
}
