package risk

import (
	"embed"
	"io/fs"
	"math"
	"slices"
	"sync"

	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/table"
	"garner/internal/words"
)

//go:embed data
var data embed.FS

// The closed lists of the data files.
var (
	marks       = []string{"seen", "memory", "computed", "judgement", "practice"}
	kinds       = []string{"cultural", "watch", "chemical"}
	confidences = []string{"high", "medium", "low"}
	steps       = []string{"hourly", "daily"}
	begins      = []string{"", string(Standing), string(Sighting)}
	parts       = []string{string(FlightStart), string(FlightPeak), string(FlightEnd)}
	units       = []string{"C", "%", "h", "d", "mm", "1", "1/h", "1/(h C)", "1/(h C3)"}
)

// Book is all rules.
type Book struct {
	Rules    []*Rule // in the order of the file
	Blossoms []Blossom
	Heats    []Heat
	byID     map[string]*Rule
}

// Load reads the rules that are built in, once.
var Load = sync.OnceValues(func() (*Book, error) {
	root, err := fs.Sub(data, "data")
	if err != nil {
		return nil, err
	}
	return LoadFrom(root)
})

// Rule finds a rule by its id.
func (b *Book) Rule(id string) (*Rule, bool) {
	r, ok := b.byID[id]
	return r, ok
}

// Known tells whether any rule is about a disease or pest.
func Known(problem string) bool {
	b, err := Load()
	return err == nil && slices.ContainsFunc(b.Rules, func(r *Rule) bool { return r.Problem == problem })
}

// loader reads the files and gathers all that is wrong with them.
type loader struct {
	fsys     fs.FS
	book     *Book
	tables   map[string]severityTable
	cells    []cell
	measures map[string]Measure
	faults   fault.List
}

// LoadFrom reads rules from a folder and checks all of it: every number in its
// unit and with its mark, every table whole, every name known. All faults are told
// at once, with file, row and column.
func LoadFrom(fsys fs.FS) (*Book, error) {
	l := &loader{fsys: fsys, book: &Book{byID: map[string]*Rule{}}, tables: map[string]severityTable{}, measures: map[string]Measure{}}
	for _, part := range []struct {
		name    string
		columns []string
		read    func(*table.Cells)
	}{
		{"severity.csv", []string{"table", "to_c", "edge_in", "hours_from", "hours_to", "value", "mark", "source"}, l.severity},
		{"schedule.csv", []string{"rain_days_from", "rain_days_to", "severity_from", "severity_to", "message", "mark", "source"}, l.schedule},
		{"measures.csv", []string{"measure", "kind", "source", "mark"}, l.readMeasures},
		{"rules.csv", []string{"rule", "problem", "form", "table", "cause", "crops", "step", "source", "url", "mark", "confidence", "begins", "tender_d"}, l.rules},
		{"numbers.csv", []string{"rule", "name", "value", "unit", "mark", "source"}, l.numbers},
		{"pests.csv", []string{"rule", "event", "flight", "part", "base_c", "upper_c", "sum_cd", "spread_cd", "start", "method", "region", "source", "url", "mark", "confidence"}, l.events},
		{"advice.csv", []string{"rule", "measure"}, l.advice},
		{"blossom.csv", []string{"crop", "stage", "kill_10_c", "kill_90_c", "source", "mark", "sum_cd", "base_c", "sum_source", "sum_mark"}, l.blossom},
		{"heat.csv", []string{"heat", "crops", "measure", "from_c", "to_c", "covers", "source", "mark"}, l.heat},
	} {
		c, err := table.OpenCells(fsys, part.name, part.columns...)
		if err != nil {
			return nil, err
		}
		part.read(c)
		if list, ok := c.Err().(fault.List); ok {
			l.faults = append(l.faults, list...)
		}
	}
	l.whole()
	if len(l.faults) > 0 {
		return nil, l.faults
	}
	return l.book, nil
}

// oneOf reads a cell out of a closed list.
func oneOf(c *table.Cells, row int, column string, list []string) string {
	text := c.Text(row, column)
	if !slices.Contains(list, text) {
		c.Refuse(row, column, "risk.data_one_of", words.Args{"given": text, "names": list})
	}
	return text
}

// told reads a cell that may not be blank.
func told(c *table.Cells, row int, column string) string {
	text := c.Text(row, column)
	if text == "" {
		c.Refuse(row, column, "risk.data_blank", nil)
	}
	return text
}

// blankOr reads a number that may be blank.
func blankOr(c *table.Cells, row int, column string, from, to, blank float64) float64 {
	if c.Text(row, column) == "" {
		return blank
	}
	return c.Within(row, column, from, to)
}

// ruleOf finds the rule that a row belongs to, nil when there is none.
func (l *loader) ruleOf(c *table.Cells, row int) *Rule {
	r := l.book.byID[c.Text(row, "rule")]
	if r == nil {
		c.Refuse(row, "rule", "risk.data_no_rule", words.Args{"given": c.Text(row, "rule")})
	}
	return r
}

func (l *loader) rules(c *table.Cells) {
	for i := range c.Rows {
		r := &Rule{
			ID: told(c, i, "rule"), Problem: told(c, i, "problem"), Form: c.Text(i, "form"), Cause: told(c, i, "cause"), Crops: c.List(i, "crops"),
			Hourly: oneOf(c, i, "step", steps) == "hourly", Source: told(c, i, "source"), URL: c.Text(i, "url"),
			Mark: oneOf(c, i, "mark", marks), Confidence: oneOf(c, i, "confidence", confidences),
			Begins: Begin(oneOf(c, i, "begins", begins)), TenderD: int(blankOr(c, i, "tender_d", 1, 400, 0)),
			values: map[string]float64{}, cells: l.cells,
		}
		f, ok := forms[r.Form]
		if !ok {
			c.Refuse(i, "form", "risk.data_no_form", words.Args{"given": r.Form})
		}
		if r.table = l.tables[c.Text(i, "table")]; (r.table != nil) != f.table {
			c.Refuse(i, "table", "risk.data_no_table", words.Args{"given": c.Text(i, "table")})
		}
		if l.book.byID[r.ID] != nil {
			c.Refuse(i, "rule", "risk.data_twice", words.Args{"given": r.ID})
			continue
		}
		l.book.Rules = append(l.book.Rules, r)
		l.book.byID[r.ID] = r
	}
}

func (l *loader) numbers(c *table.Cells) {
	for i := range c.Rows {
		n := Number{Name: c.Text(i, "name"), Value: c.Within(i, "value", -1000, 1000), Unit: oneOf(c, i, "unit", units),
			Mark: oneOf(c, i, "mark", marks), Source: c.Text(i, "source")}
		r := l.ruleOf(c, i)
		if r == nil {
			continue
		}
		f := forms[r.Form]
		if _, twice := r.values[n.Name]; twice || !slices.Contains(f.needs, n.Name) && !slices.Contains(f.may, n.Name) {
			c.Refuse(i, "name", "risk.data_number", words.Args{"given": n.Name, "rule": r.ID})
			continue
		}
		r.values[n.Name] = n.Value
		r.Numbers = append(r.Numbers, n)
	}
}

func (l *loader) events(c *table.Cells) {
	for i := range c.Rows {
		e := Event{
			Name: told(c, i, "event"), BaseC: c.Within(i, "base_c", -5, 20), UpperC: blankOr(c, i, "upper_c", 10, 45, math.Inf(1)),
			SumCd: c.Within(i, "sum_cd", 1, 5000), SpreadCd: blankOr(c, i, "spread_cd", 0, 500, 0), Region: told(c, i, "region"),
			Source: told(c, i, "source"), URL: c.Text(i, "url"), Mark: oneOf(c, i, "mark", marks),
			Flight: int(c.Within(i, "flight", 1, 6)), Part: FlightPart(oneOf(c, i, "part", parts)),
		}
		methodNames := make([]string, len(methods))
		for k, m := range methods {
			methodNames[k] = string(m)
		}
		e.Method = Method(oneOf(c, i, "method", methodNames))
		if start := c.Text(i, "start"); start != "seen" {
			var err error
			if e.Start, err = cal.ParseMonthDay(start); err != nil {
				c.Refuse(i, "start", "risk.data_start", words.Args{"given": start})
			}
		}
		r := l.ruleOf(c, i)
		if r == nil {
			continue
		}
		if !forms[r.Form].byEvents {
			c.Refuse(i, "rule", "risk.data_no_events", words.Args{"rule": r.ID})
		}
		r.Events = append(r.Events, e)
	}
}

func (l *loader) readMeasures(c *table.Cells) {
	for i := range c.Rows {
		m := Measure{ID: told(c, i, "measure"), Kind: oneOf(c, i, "kind", kinds), Source: told(c, i, "source"), Mark: oneOf(c, i, "mark", marks)}
		if _, twice := l.measures[m.ID]; twice {
			c.Refuse(i, "measure", "risk.data_twice", words.Args{"given": m.ID})
		}
		l.measures[m.ID] = m
	}
}

func (l *loader) advice(c *table.Cells) {
	for i := range c.Rows {
		m, ok := l.measures[c.Text(i, "measure")]
		if !ok {
			c.Refuse(i, "measure", "risk.data_no_measure", words.Args{"given": c.Text(i, "measure")})
		}
		if r := l.ruleOf(c, i); r != nil {
			r.Measures = append(r.Measures, m)
		}
	}
}
