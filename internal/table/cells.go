package table

import (
	"io/fs"
	"strings"

	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/words"
)

// fileLimit is the largest file that is read [bytes].
const fileLimit = 16 << 20

// Cells reads the rows of one file and gathers what is wrong with them.
type Cells struct {
	*Table
	faults fault.List
}

// OpenCells reads a file of a folder that must have the given columns.
func OpenCells(files fs.FS, name string, columns ...string) (*Cells, error) {
	f, err := files.Open(name)
	if err != nil {
		return nil, fault.New(fault.NotFound, "table.file", words.Args{"file": name})
	}
	defer f.Close()
	t, err := Read(f, name, fileLimit)
	if err != nil {
		return nil, err
	}
	c := &Cells{Table: t, faults: t.Refused}
	for _, column := range columns {
		if t.Column(column) < 0 {
			c.faults = append(c.faults, fault.New(fault.Invalid, "table.column_missing", words.Args{"file": name, "column": column}).In(fault.Place{File: name, Row: 1, Column: column}))
		}
	}
	return c, c.Err()
}

// Err is all that was wrong, nil for nothing.
func (c *Cells) Err() error {
	if len(c.faults) == 0 {
		return nil
	}
	return c.faults
}

func (c *Cells) Text(row int, column string) string { return c.Rows[row][c.Column(column)] }

// List reads the entries of a cell, parted by semicolons; nil for a blank one.
func (c *Cells) List(row int, column string) []string {
	text := c.Text(row, column)
	if text == "" {
		return nil
	}
	entries := strings.Split(text, ";")
	for i := range entries {
		entries[i] = strings.TrimSpace(entries[i])
	}
	return entries
}

// Within reads a cell that must lie between two values.
func (c *Cells) Within(row int, column string, from, to float64) float64 {
	v, ok := c.Number(c.Text(row, column))
	if !ok || v < from || v > to {
		c.Refuse(row, column, "table.number_within", words.Args{"value": c.Text(row, column), "from": from, "to": to})
	}
	return v
}

// Day reads MM-DD as a day of the common year (1-365); blank is 0.
func (c *Cells) Day(row int, column string) int {
	text := c.Text(row, column)
	if text == "" {
		return 0
	}
	day, ok := dayOfYear(text)
	if !ok {
		c.Refuse(row, column, "table.day_of_year", words.Args{"value": text})
	}
	return day
}

func (c *Cells) Refuse(row int, column, key string, args words.Args) {
	c.faults = append(c.faults, fault.New(fault.Invalid, key, args).In(c.At(row, column)))
}

// dayOfYear reads MM-DD as a day of the common year; 29 February is the 28th.
func dayOfYear(s string) (int, bool) {
	d, err := cal.ParseMonthDay(s)
	if err != nil {
		return 0, false
	}
	return d.DayOfYear(), true
}
