package crop

import (
	"io/fs"
	"path"
	"slices"
	"strings"

	"garner/internal/fault"
	"garner/internal/table"
	"garner/internal/words"
)

// largestFile is far above any file of the book [bytes].
const largestFile = 4 << 20

// sheet is one file of the book with its columns found.
type sheet struct {
	table   *table.Table
	columns map[string]int
}

// row is one record of a sheet.
type row struct {
	sheet  *sheet
	number int // header = 1
	cells  []string
}

func (r row) get(column string) string { return r.cells[r.sheet.columns[column]] }

func (r row) at(column string) fault.Place {
	return fault.Place{File: r.sheet.table.Name, Row: r.number, Column: column}
}

// list reads a cell of entries with semicolons between.
func (r row) list(column string) []string {
	var entries []string
	for entry := range strings.SplitSeq(r.get(column), ";") {
		if entry = strings.TrimSpace(entry); entry != "" {
			entries = append(entries, entry)
		}
	}
	return entries
}

func (s *sheet) rows(yield func(row) bool) {
	if s.columns == nil {
		return
	}
	for i, cells := range s.table.Rows {
		if !yield(row{s, s.table.Numbers[i], cells}) {
			return
		}
	}
}

// loader gathers the book and its faults.
type loader struct {
	fsys   fs.FS
	book   *Book
	faults fault.List
	rows   map[string]row // of the crops by id, for faults found later
	like   map[string]likeness

	refused map[told]bool
}

func (l *loader) refuse(at fault.Place, kind fault.Kind, key string, args words.Args) {
	l.faults = append(l.faults, fault.New(kind, key, args).In(at))
}

// folder reads every CSV file of a folder in the order of their names. A folder
// that is not there has no rows.
func (l *loader) folder(name string, columns ...string) []*sheet {
	entries, err := fs.ReadDir(l.fsys, name)
	if err != nil {
		return nil
	}
	var sheets []*sheet
	for _, entry := range entries {
		if path.Ext(entry.Name()) == ".csv" {
			sheets = append(sheets, l.sheet(path.Join(name, entry.Name()), columns...))
		}
	}
	return sheets
}

// sheet reads one file; what cannot be read is refused and gives no rows.
func (l *loader) sheet(name string, columns ...string) *sheet {
	s := &sheet{table: &table.Table{Name: name}}
	file, err := l.fsys.Open(name)
	if err != nil {
		l.refuse(fault.Place{File: name}, fault.NotFound, "crop.file_missing", nil)
		return s
	}
	defer file.Close()
	t, err := table.Read(file, name, largestFile)
	if err != nil {
		l.faults = append(l.faults, err.(*fault.Error))
		return s
	}
	l.faults = append(l.faults, t.Refused...)
	s.table = t
	l.header(s, columns)
	return s
}

// header finds the columns; a sheet that lacks one gives no rows.
func (l *loader) header(s *sheet, columns []string) {
	found := make(map[string]int, len(columns))
	for _, name := range s.table.Header {
		if !slices.Contains(columns, name) {
			l.refuse(fault.Place{File: s.table.Name, Row: 1, Column: name}, fault.Invalid, "crop.column_unknown",
				words.Args{"column": name, "columns": joined(columns)})
		}
	}
	for _, name := range columns {
		found[name] = s.table.Column(name)
		if found[name] < 0 {
			l.refuse(fault.Place{File: s.table.Name, Row: 1, Column: name}, fault.Invalid, "crop.column_missing",
				words.Args{"column": name})
			return
		}
	}
	s.columns = found
}

// value reads a plain number from a cell.
func (l *loader) value(r row, column string) (float64, bool) {
	value, fine := r.sheet.table.Number(r.get(column))
	if !fine {
		l.refuse(r.at(column), fault.Invalid, "crop.not_a_number", words.Args{"given": r.get(column)})
	}
	return value, fine
}

// joined lists names with commas between.
func joined(names []string) string { return strings.Join(names, ", ") }
