package crop

import (
	"path"
	"strings"

	"garner/internal/fault"
	"garner/internal/words"
)

// numbers are facts in the order of the book's parameters, each with the row
// it comes from.
type numbers []*placed

type placed struct {
	Fact
	row    row
	column string // of the row, where a fault of the number is told

	from scope // whose default it is; empty for a number of a crop's own
}

func (p *placed) at() fault.Place { return p.row.at(p.column) }

// scope is whom a default speaks for: the whole book, a class or a group.
type scope struct{ kind, name string }

// about is whom a fact speaks for: a use of a crop, or all of them when use is
// empty.
type about struct{ crop, use string }

// told is a number that was given and refused, so that its lack need not be
// told as well. The crop is empty for a default.
type told struct{ crop, parameter string }

func (l *loader) loadDefaults() map[scope]numbers {
	defaults := map[scope]numbers{}
	t := l.sheet("defaults.csv", "scope", "name", "parameter", "value", "unit", "source", "where", "mark", "note")
	for r := range t.rows {
		if !l.oneOf(r, "scope", []string{"all", "class", "group"}) {
			continue
		}
		key := scope{r.get("scope"), r.get("name")}
		if key.kind == "class" && !l.oneOf(r, "name", classes) || key.kind == "group" && !l.oneOf(r, "name", groups) {
			continue
		}
		defaults[key] = l.take(defaults[key], r, "")
	}
	for key, list := range defaults {
		for _, number := range list {
			if number != nil {
				number.from = key
			}
		}
	}
	return defaults
}

func (l *loader) loadFacts() map[about]numbers {
	facts := map[about]numbers{}
	for _, t := range l.folder("facts", "use", "parameter", "value", "unit", "source", "where", "mark", "note") {
		id := strings.TrimSuffix(path.Base(t.table.Name), ".csv")
		c, ok := l.book.byID[id]
		if !ok {
			l.refuse(fault.Place{File: t.table.Name}, fault.NotFound, "crop.crop_unknown", words.Args{"crop": id})
			continue
		}
		for r := range t.rows {
			if len(l.usesOf(r, c)) == 0 {
				continue
			}
			key := about{id, r.get("use")}
			facts[key] = l.take(facts[key], r, id)
		}
	}
	return facts
}

// take adds the number of a row to a list, when there is nothing wrong with it.
// The crop is empty for a default.
func (l *loader) take(list numbers, r row, crop string) numbers {
	if list == nil {
		list = make(numbers, len(l.book.parameters))
	}
	p := l.book.parameter(r.get("parameter"))
	if p == nil {
		l.refuse(r.at("parameter"), fault.NotFound, "crop.parameter_unknown", words.Args{"parameter": r.get("parameter")})
		return list
	}
	fact := l.fact(p, r)
	if fact == nil {
		l.refused[told{crop, p.Name}] = true
		return list
	}
	i := l.book.index[p.Name]
	if list[i] != nil {
		l.refuse(r.at("parameter"), fault.Invalid, "crop.fact_twice", words.Args{"parameter": p.Name, "row": list[i].row.number})
		return list
	}
	list[i] = &placed{Fact: *fact, row: r, column: "value"}
	return list
}

// fact reads a row's number and checks its unit, range, source and mark.
func (l *loader) fact(p *Parameter, r row) *Fact {
	before := len(l.faults)
	fact := &Fact{Unit: r.get("unit"), Source: r.get("source"), Where: r.get("where"), Mark: r.get("mark"), Note: r.get("note")}
	fact.Value, _ = l.value(r, "value")
	if len(l.faults) == before {
		if bad := p.check(fact.Value, fact.Unit); bad != nil {
			column := "value"
			if bad.Kind == fault.Invalid {
				column = "unit"
			}
			l.faults = append(l.faults, bad.In(r.at(column)))
		}
	}
	l.provenance(r)
	if len(l.faults) > before {
		return nil
	}
	return fact
}

// provenance checks source, mark and place of a number.
func (l *loader) provenance(r row) {
	l.sourced(r)
	if l.oneOf(r, "mark", marks) && r.get("mark") == "seen" && r.get("where") == "" {
		l.refuse(r.at("where"), fault.Invalid, "crop.where_missing", nil)
	}
}

// label names the number as people do, who are told of their own numbers too.
func (p *Parameter) label() words.Phrase { return words.P("words.parameter_"+p.Name, nil) }

// check tells what is wrong with a value of the parameter: another unit
// (Invalid) or beyond the range (OutOfRange); nil when nothing is.
func (p *Parameter) check(value float64, unit string) *fault.Error {
	if unit != p.Unit {
		return fault.New(fault.Invalid, "crop.unit_differs", words.Args{"parameter": p.label(), "given": unit, "unit": p.Unit})
	}
	if !(value >= p.Min && value <= p.Max) {
		return fault.New(fault.OutOfRange, "crop.out_of_range",
			words.Args{"parameter": p.label(), "given": value, "unit": p.Unit, "min": p.Min, "max": p.Max})
	}
	return nil
}
