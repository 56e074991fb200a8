package table

import (
	"bytes"
	"encoding/csv"
	"errors"
	"io"
	"strings"

	"garner/internal/fault"
	"garner/internal/words"
)

// Read reads a table of at most limit bytes. The error is a *fault.Error when
// the whole file cannot be used: unreadable, too large, binary, empty, a faulty
// header, or quotes that do not close. Single rows that cannot be used are in
// Refused and the rest is kept.
func Read(r io.Reader, name string, limit int64) (*Table, error) {
	text, err := readText(r, limit)
	if err != nil {
		return nil, inFile(err, name)
	}
	t := &Table{Name: name}
	if err := t.parse(text); err != nil {
		return nil, inFile(err, name)
	}
	t.DecimalComma = usesDecimalComma(t.Rows, t.Delimiter)
	return t, nil
}

func inFile(err *fault.Error, name string) *fault.Error {
	at := err.At
	at.File = name
	return err.In(at)
}

func (t *Table) parse(text []byte) *fault.Error {
	skipped := 0
	t.Delimiter, skipped = delimiterOf(text)
	text = skipLines(text, skipped)
	reader := csv.NewReader(bytes.NewReader(text))
	reader.Comma = t.Delimiter
	reader.FieldsPerRecord = -1
	reader.ReuseRecord = true
	inside := 0 // line ends inside quoted cells so far
	for {
		cells, err := reader.Read()
		if err == io.EOF {
			break
		}
		if err != nil {
			return badQuotes(err, skipped-inside)
		}
		line, _ := reader.FieldPos(0)
		number := line + skipped - inside
		for _, c := range cells {
			inside += strings.Count(c, "\n")
		}
		if err := t.add(cells, number); err != nil {
			return err
		}
	}
	if t.Header == nil {
		return fault.New(fault.Invalid, "table.empty", nil)
	}
	return nil
}

func badQuotes(err error, offset int) *fault.Error {
	var parse *csv.ParseError
	row := 0
	if errors.As(err, &parse) {
		row = parse.StartLine + offset
	}
	f := fault.New(fault.Invalid, "table.bad_quotes", nil).In(fault.Place{Row: row})
	f.Err = err
	return f
}

// add takes one record: the first with a filled cell is the header.
func (t *Table) add(cells []string, number int) *fault.Error {
	trimmed, filled := trim(cells)
	if filled == 0 {
		return nil
	}
	if t.Header == nil {
		t.Header = trimmed[:filled]
		return checkHeader(t.Header, number)
	}
	if filled > len(t.Header) {
		t.Refused = append(t.Refused, fault.New(fault.Invalid, "table.too_many_cells",
			words.Args{"cells": filled, "columns": len(t.Header)}).In(fault.Place{File: t.Name, Row: number}))
		return nil
	}
	row := make([]string, len(t.Header))
	copy(row, trimmed)
	t.Rows = append(t.Rows, row)
	t.Numbers = append(t.Numbers, number)
	return nil
}

// trim returns a copy of the cells without blanks round them and the number of
// cells up to the last one filled.
func trim(cells []string) (out []string, filled int) {
	out = make([]string, len(cells))
	for i, c := range cells {
		out[i] = strings.TrimSpace(c)
		if out[i] != "" {
			filled = i + 1
		}
	}
	return out, filled
}

func checkHeader(header []string, number int) *fault.Error {
	seen := map[string]bool{}
	for i, h := range header {
		key := strings.ToLower(h)
		switch {
		case h == "":
			return fault.New(fault.Invalid, "table.unnamed_column", words.Args{"column": i + 1}).In(fault.Place{Row: number})
		case seen[key]:
			return fault.New(fault.Invalid, "table.column_twice", words.Args{"column": h}).In(fault.Place{Row: number, Column: h})
		}
		seen[key] = true
	}
	return nil
}
