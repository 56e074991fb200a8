package exchange

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"garner/internal/fault"
	"garner/internal/near"
	"garner/internal/words"
)

// checkSchemas holds every table to its schema.
func (c *checker) checkSchemas() {
	for _, s := range sheets {
		if s.schema().OneRow && c.unread[s.schema().Name] {
			continue // its one row was never read
		}
		c.checkTable(s.schema(), s.cells(c.h))
	}
}

func (c *checker) checkTable(s *tableSchema, rows [][]string) {
	for r, row := range rows {
		for i := range s.Fields {
			f := &s.Fields[i]
			if e := f.check(row[i]); e != nil {
				c.wrong(s.Name, r, f.Name, e)
			}
		}
		if first, known := c.ids[s.Name][row[0]]; known && first != r {
			at := c.place(s.Name, first, "")
			c.wrong(s.Name, r, "id", fault.New(fault.Conflict, "exchange.same_id", words.Args{"given": row[0], "row": strconv.Itoa(at.Row)}))
		}
		for _, pair := range s.Together {
			if e, column := s.half(pair, row[s.column(pair[0])] != "", row[s.column(pair[1])] != ""); e != nil {
				c.wrong(s.Name, r, column, e)
			}
		}
		for _, pair := range s.OneOf {
			if e, column := s.eitherOf(pair, row[s.column(pair[0])] != "", row[s.column(pair[1])] != ""); e != nil {
				c.wrong(s.Name, r, column, e)
			}
		}
		for _, key := range s.ForeignKeys {
			c.checkReference(s, r, key, row[s.column(key.Fields)])
		}
	}
}

func (c *checker) checkReference(s *tableSchema, row int, key foreignKey, id string) {
	to := key.Reference.Resource
	if to == "" {
		to = s.Name
	}
	if id != "" && !c.has(to, id) {
		c.wrong(s.Name, row, key.Fields, unknownID(id, to+".csv", c.idsOf(to)))
	}
}

// idsOf returns the ids of a table in order of the alphabet.
func (c *checker) idsOf(table string) []string {
	ids := make([]string, 0, len(c.ids[table]))
	for id := range c.ids[table] {
		ids = append(ids, id)
	}
	slices.Sort(ids)
	return ids
}

// unknownID says that a table has no such id, and which may have been meant.
func unknownID(id, file string, ids []string) *fault.Error {
	if found := near.Names(id, ids, 1); len(found) > 0 {
		return fault.New(fault.NotFound, "exchange.unknown_near", words.Args{"given": id, "file": file, "near": found[0]})
	}
	return fault.New(fault.NotFound, "exchange.unknown", words.Args{"given": id, "file": file})
}

// check holds one cell, as it is written, to its field.
func (f *field) check(cell string) *fault.Error {
	switch {
	case cell == "" && f.required():
		return blank(f)
	case cell == "":
		return nil
	case f.pattern != nil && !f.pattern.MatchString(cell):
		return fault.New(fault.Invalid, f.patternKey(), words.Args{"given": cell})
	case len(f.Constraints.Enum) > 0 && !slices.Contains(f.Constraints.Enum, cell):
		return f.notAllowed(cell)
	case f.isNumber():
		return f.checkNumber(cell)
	case f.Type == "date":
		return f.checkDate(cell)
	}
	return nil
}

// patternKey tells ids from days of the year, the two patterns there are.
func (f *field) patternKey() string {
	if strings.HasPrefix(f.Constraints.Pattern, "(0[1-9]") {
		return "exchange.not_a_day"
	}
	return "exchange.not_an_id"
}

func (f *field) notAllowed(cell string) *fault.Error {
	if found := near.Names(cell, f.Constraints.Enum, 1); len(found) > 0 {
		return fault.New(fault.Invalid, "exchange.not_allowed_near", words.Args{"given": cell, "field": f.label(), "near": found[0], "allowed": f.Constraints.Enum})
	}
	return fault.New(fault.Invalid, "exchange.not_allowed", words.Args{"given": cell, "field": f.label(), "allowed": f.Constraints.Enum})
}

func (f *field) checkNumber(cell string) *fault.Error {
	v, err := strconv.ParseFloat(cell, 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		return unreadable(f, cell)
	}
	least, bounded := f.Constraints.Minimum.(float64)
	greatest, capped := f.Constraints.Maximum.(float64)
	if bounded && v < least || capped && v > greatest {
		return f.outOfRange(cell)
	}
	return nil
}

// checkDate compares dates as they are written, year first.
func (f *field) checkDate(cell string) *fault.Error {
	least, bounded := f.Constraints.Minimum.(string)
	greatest, capped := f.Constraints.Maximum.(string)
	if bounded && cell < least || capped && cell > greatest {
		return f.outOfRange(cell)
	}
	return nil
}

func (f *field) outOfRange(cell string) *fault.Error {
	args := words.Args{"given": cell, "field": f.label(), "least": f.Constraints.Minimum, "greatest": f.Constraints.Maximum, "unit": f.unitSuffix()}
	if f.Constraints.Maximum == nil {
		return fault.New(fault.OutOfRange, "exchange.too_small", args)
	}
	return fault.New(fault.OutOfRange, "exchange.out_of_range", args)
}

// unitSuffix is the unit with the space before it, nothing when there is none.
func (f *field) unitSuffix() string {
	if f.Unit == "" || strings.HasPrefix(f.Unit, "share") || f.Unit == "factor" {
		return ""
	}
	return " " + strings.NewReplacer("m2", "m²", "C", "°C").Replace(f.Unit)
}
