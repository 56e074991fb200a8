package exchange

import (
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/table"
	"garner/internal/words"
)

// Tables names the tables of a holding in the order they are written.
func Tables() []string {
	names := make([]string, len(schemas.Tables))
	for i := range schemas.Tables {
		names[i] = schemas.Tables[i].Name
	}
	return names
}

// Columns names the columns of a table in their order, the id first; nil when
// there is no such table.
func Columns(name string) []string {
	s := tableNamed(name)
	if s == nil {
		return nil
	}
	return s.names()
}

// Rows returns every row of a holding as it is written, by table: a cell for
// each column, the id first.
func Rows(h *holding.Holding) map[string][][]string {
	rows := make(map[string][][]string, len(sheets))
	for _, s := range sheets {
		rows[s.schema().Name] = s.cells(h)
	}
	return rows
}

// WeatherFiles returns the weather files of a holding by name, as Write writes
// them. The error is a fault.List.
func WeatherFiles(h *holding.Holding) (map[string][]byte, error) {
	found := newFindings()
	files := map[string][]byte{}
	for _, w := range weatherTables(h, found) {
		files[w.path] = w.content
	}
	if faults := found.all(); len(faults) > 0 {
		return nil, faults
	}
	return files, nil
}

// Tidy reads one row as a person may have written it and returns it as it is
// written in the files. Faults have their column; a cell at fault is returned as
// it was given.
func Tidy(name string, cells []string) ([]string, fault.List) {
	for _, s := range sheets {
		if s.schema().Name == name {
			return tidyRow(s, cells)
		}
	}
	return nil, fault.List{fault.New(fault.NotFound, "exchange.no_such_table", words.Args{"given": name})}
}

func tidyRow(s sheet, cells []string) ([]string, fault.List) {
	schema := s.schema()
	var h holding.Holding
	t := &table.Table{Name: schema.file(), Header: schema.names(), Rows: [][]string{cells}, Numbers: []int{2}, Delimiter: ','}
	found := newFindings()
	found.add(s.fill(&h, t)...)
	row := s.cells(&h)[0]
	for i := range schema.Fields {
		at := t.At(0, schema.Fields[i].Name)
		if found.known(at) {
			row[i] = canonical(cells[i])
			continue
		}
		if e := schema.Fields[i].check(row[i]); e != nil {
			found.add(e.In(at))
		}
	}
	return row, found.all()
}
