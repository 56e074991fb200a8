package crop

import (
	"bytes"
	"encoding/csv"
	"io"
	"io/fs"
	"path"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"garner/internal/fault"
	"garner/internal/words"
)

// table is one file of the book, read but not yet understood.
type table struct {
	file    string
	columns map[string]int
	records [][]string
}

// row is one record of a table. Number counts from 1 with the header as row 1.
type row struct {
	table  *table
	number int
	cells  []string
}

func (r row) get(column string) string { return r.cells[r.table.columns[column]] }

func (r row) at(column string) fault.Place {
	return fault.Place{File: r.table.file, Row: r.number, Column: column}
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

func (t *table) rows(yield func(row) bool) {
	for i, cells := range t.records {
		if !yield(row{t, i + 2, cells}) {
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

	refused map[told]bool
}

func (l *loader) refuse(at fault.Place, kind fault.Kind, key string, args words.Args) {
	l.faults = append(l.faults, fault.New(kind, key, args).In(at))
}

// folder reads every CSV file of a folder in the order of their names. A folder
// that is not there has no rows.
func (l *loader) folder(name string, columns ...string) []*table {
	entries, err := fs.ReadDir(l.fsys, name)
	if err != nil {
		return nil
	}
	var tables []*table
	for _, entry := range entries {
		if path.Ext(entry.Name()) == ".csv" {
			tables = append(tables, l.table(path.Join(name, entry.Name()), columns...))
		}
	}
	return tables
}

// table reads one file; what cannot be read is refused and gives no rows.
func (l *loader) table(file string, columns ...string) *table {
	t := &table{file: file, columns: map[string]int{}}
	text, err := fs.ReadFile(l.fsys, file)
	if err != nil {
		l.refuse(fault.Place{File: file}, fault.NotFound, "crop.file_missing", nil)
		return t
	}
	if !utf8.Valid(text) {
		l.refuse(fault.Place{File: file}, fault.Invalid, "crop.file_not_text", nil)
		return t
	}
	records, err := parse(text)
	if err != nil {
		l.refuse(fault.Place{File: file, Row: len(records) + 1}, fault.Invalid, "crop.file_unreadable", words.Args{"reason": err.Error()})
		return t
	}
	if len(records) == 0 {
		l.refuse(fault.Place{File: file, Row: 1}, fault.Invalid, "crop.file_empty", nil)
		return t
	}
	if l.header(t, records[0], columns) {
		l.records(t, records[1:], len(records[0]))
	}
	return t
}

// parse splits a file into records. On an error it gives those before it.
func parse(text []byte) ([][]string, error) {
	reader := csv.NewReader(bytes.NewReader(bytes.TrimPrefix(text, []byte("\ufeff"))))
	reader.FieldsPerRecord = -1
	var records [][]string
	for {
		record, err := reader.Read()
		if err == io.EOF {
			return records, nil
		}
		if err != nil {
			return records, err
		}
		records = append(records, record)
	}
}

// header takes the columns; false when the rows cannot be understood.
func (l *loader) header(t *table, names, columns []string) bool {
	ok := true
	for i, name := range names {
		at := fault.Place{File: t.file, Row: 1, Column: name}
		if _, twice := t.columns[name]; twice {
			l.refuse(at, fault.Invalid, "crop.column_twice", words.Args{"column": name})
			ok = false
		} else if !slices.Contains(columns, name) {
			l.refuse(at, fault.Invalid, "crop.column_unknown", words.Args{"column": name, "columns": joined(columns)})
		}
		t.columns[name] = i
	}
	for _, name := range columns {
		if _, there := t.columns[name]; !there {
			l.refuse(fault.Place{File: t.file, Row: 1, Column: name}, fault.Invalid, "crop.column_missing", words.Args{"column": name})
			ok = false
		}
	}
	return ok
}

// records keeps the rows of full width, with the cells trimmed.
func (l *loader) records(t *table, records [][]string, width int) {
	for i, cells := range records {
		if len(cells) != width {
			l.refuse(fault.Place{File: t.file, Row: i + 2}, fault.Invalid, "crop.row_width",
				words.Args{"cells": len(cells), "columns": width})
			cells = make([]string, width)
		}
		for k := range cells {
			cells[k] = strings.TrimSpace(cells[k])
		}
		t.records = append(t.records, cells)
	}
}

// blank reports whether a row was refused or left empty.
func (r row) blank() bool {
	return !slices.ContainsFunc(r.cells, func(cell string) bool { return cell != "" })
}

// number reads a plain decimal number from a cell.
func (l *loader) number(r row, column string) (float64, bool) {
	value, fine := parseNumber(r.get(column))
	if !fine {
		l.refuse(r.at(column), fault.Invalid, "crop.not_a_number", words.Args{"given": r.get(column)})
	}
	return value, fine
}

// parseNumber reads a plain decimal number: digits, sign, point. Infinities,
// hexadecimal and the like are no numbers here.
func parseNumber(text string) (float64, bool) {
	if strings.Trim(text, "+-.0123456789eE") != "" {
		return 0, false
	}
	value, err := strconv.ParseFloat(text, 64)
	return value, err == nil
}

// joined lists names with commas between.
func joined(names []string) string { return strings.Join(names, ", ") }
