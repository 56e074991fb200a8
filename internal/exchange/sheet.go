package exchange

import (
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/table"
	"garner/internal/words"
)

// sheet is one table of the holding, whatever its rows are.
type sheet interface {
	schema() *tableSchema
	// columnNames returns the columns joined to values.
	columnNames() []string
	// cells returns the rows as they are written.
	cells(h *holding.Holding) [][]string
	// fill puts the rows of a table into the holding and tells what is wrong.
	fill(h *holding.Holding, t *table.Table) fault.List
}

// sheets are all tables of a holding, in the order they are written.
var sheets = []sheet{
	holdingSheet, sitesSheet, bedsSheet, sourcesSheet, featuresSheet, coversSheet, gearSheet, cropsSheet, varietiesSheet,
	onhandSheet, plansSheet, plantingsSheet, changesSheet, wishesSheet, ownJobsSheet, answersSheet, wantsSheet, groupsSheet, membersSheet, visitsSheet, gapsLeftSheet, purchasesSheet, storesSheet, batchesSheet,
	recordsSheet, readingsSheet, weatherSheet, weatherReadingsSheet, forecastsSheet, addressesSheet, sensorsSheet, weatherFilesSheet, columnMapsSheet,
}

// rowsOf joins the rows of a table to a list of the holding.
type rowsOf[T any] struct {
	table   *tableSchema
	blank   T // a row before anything is filled in
	columns []column[T]
	list    func(*holding.Holding) []T
	put     func(*holding.Holding, []T)
	tidy    func(entity *T, delimiter rune) // numbers in columns of text; may be nil
}

func (s rowsOf[T]) schema() *tableSchema { return s.table }

func (s rowsOf[T]) columnNames() []string {
	names := make([]string, len(s.columns))
	for i, c := range s.columns {
		names[i] = c.name
	}
	return names
}

func (s rowsOf[T]) cells(h *holding.Holding) [][]string {
	list := s.list(h)
	out := make([][]string, len(list))
	for i := range list {
		out[i] = s.write(&list[i])
	}
	return out
}

// write leaves a zero blank in a column that may be blank and has no default.
func (s rowsOf[T]) write(e *T) []string {
	own := *e
	if s.tidy != nil {
		s.tidy(&own, ',')
	}
	e = &own
	row := make([]string, len(s.columns))
	for i, c := range s.columns {
		cell := canonical(c.get(e))
		f := &s.table.Fields[i]
		if cell == "0" && f.leavesZero() && (c.keep == nil || !c.keep(e)) {
			cell = ""
		}
		row[i] = cell
	}
	return row
}

func (s rowsOf[T]) fill(h *holding.Holding, t *table.Table) fault.List {
	var faults fault.List
	places := placesOf(s.table, t)
	read := numbersOf(t, s.table)
	list := make([]T, 0, len(t.Rows))
	for r, row := range t.Rows {
		e := s.blank
		for i, c := range s.columns {
			if wrong := s.cell(&e, c, i, places[i], row, read); wrong != nil {
				faults = append(faults, wrong.In(t.At(r, c.name)))
			}
		}
		if s.tidy != nil {
			s.tidy(&e, t.Delimiter)
		}
		list = append(list, e)
	}
	if len(list) > 0 {
		s.put(h, list)
	}
	return append(faults, notTogether(s.table, t)...)
}

// cell fills one column of an entity from the cell at a place of the row, -1
// when the table has no such column.
func (s rowsOf[T]) cell(e *T, c column[T], i, at int, row []string, read numberReader) *fault.Error {
	f := &s.table.Fields[i]
	cell := ""
	if at >= 0 {
		cell = closest(canonical(row[at]), f)
	}
	if cell == "" {
		cell = f.Default
	}
	switch {
	case cell == "" && f.required():
		return blank(f)
	case cell != "" && !c.set(e, cell, read):
		return unreadable(f, cell)
	case cell != "" && f.leavesZero():
		return f.checkZero(cell, read)
	}
	return nil
}

// checkZero refuses a zero that would be taken for a blank cell, which means
// something else.
func (f *field) checkZero(cell string, read numberReader) *fault.Error {
	least, bounded := f.Constraints.Minimum.(float64)
	if v, _ := read(cell); v == 0 && bounded && least > 0 {
		return f.outOfRange(cell)
	}
	return nil
}

// placesOf finds the columns of a table as read.
func placesOf(s *tableSchema, t *table.Table) []int {
	places := make([]int, len(s.Fields))
	for i := range s.Fields {
		places[i] = t.Column(s.Fields[i].Name)
	}
	return places
}

// blank says that a cell must be filled.
func blank(f *field) *fault.Error {
	return fault.New(fault.Invalid, "exchange.blank", words.Args{"column": f.Name, "meaning": f.Description})
}

// unreadable says what a cell of a type should look like.
func unreadable(f *field, cell string) *fault.Error {
	args := words.Args{"given": cell}
	switch f.Type {
	case "integer":
		return fault.New(fault.Invalid, "exchange.not_whole", args)
	case "number":
		return fault.New(fault.Invalid, "exchange.not_a_number", args)
	case "date":
		return fault.New(fault.Invalid, "exchange.not_a_date", args)
	}
	return fault.New(fault.Invalid, "exchange.not_a_day", args)
}

// notTogether finds rows with one filled cell of two that belong together, and
// with both or neither of two that exclude each other.
func notTogether(s *tableSchema, t *table.Table) fault.List {
	var faults fault.List
	filled := func(row []string, at int) bool { return at >= 0 && row[at] != "" }
	for r, row := range t.Rows {
		for _, pair := range s.Together {
			a, b := t.Column(pair[0]), t.Column(pair[1])
			if e, column := s.half(pair, filled(row, a), filled(row, b)); e != nil {
				faults = append(faults, e.In(fault.Place{File: t.Name, Row: t.Numbers[r], Column: column}))
			}
		}
		for _, pair := range s.OneOf {
			a, b := t.Column(pair[0]), t.Column(pair[1])
			if e, column := s.eitherOf(pair, filled(row, a), filled(row, b)); e != nil {
				faults = append(faults, e.In(fault.Place{File: t.Name, Row: t.Numbers[r], Column: column}))
			}
		}
	}
	return faults
}

// half says which column of a pair is blank while the other is filled; nil when
// both are or neither is.
func (s *tableSchema) half(pair [2]string, first, second bool) (e *fault.Error, blank string) {
	if first == second {
		return nil, ""
	}
	filled, blank := pair[0], pair[1]
	if second {
		filled, blank = blank, filled
	}
	return fault.New(fault.Invalid, "exchange.half_given", words.Args{
		"blank": s.Fields[s.column(blank)].label(), "filled": s.Fields[s.column(filled)].label()}), blank
}

// eitherOf says which column of a pair is wrong where not exactly one of them is
// filled: the first when both are blank, the second when both are filled.
func (s *tableSchema) eitherOf(pair [2]string, first, second bool) (e *fault.Error, column string) {
	if first != second {
		return nil, ""
	}
	key, column := "exchange.one_of", pair[0]
	if first {
		key, column = "exchange.both_of", pair[1]
	}
	return fault.New(fault.Invalid, key, words.Args{
		"first": s.Fields[s.column(pair[0])].label(), "second": s.Fields[s.column(pair[1])].label()}), column
}
