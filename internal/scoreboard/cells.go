package scoreboard

import (
	"io/fs"

	"garner/internal/fault"
	"garner/internal/table"
	"garner/internal/words"
)

// fileLimit is the largest file that is read [bytes].
const fileLimit = 16 << 20

// cells reads the rows of one file and gathers what is wrong with them.
type cells struct {
	*table.Table
	faults fault.List
}

// openCells reads a file of a folder that must have the given columns.
func openCells(files fs.FS, name string, columns ...string) (*cells, error) {
	f, err := files.Open(name)
	if err != nil {
		return nil, fault.New(fault.NotFound, "scoreboard.file", words.Args{"file": name})
	}
	defer f.Close()
	t, err := table.Read(f, name, fileLimit)
	if err != nil {
		return nil, err
	}
	c := &cells{Table: t, faults: t.Refused}
	for _, column := range columns {
		if t.Column(column) < 0 {
			c.faults = append(c.faults, fault.New(fault.Invalid, "scoreboard.column", words.Args{"file": name, "column": column}).In(fault.Place{File: name, Row: 1, Column: column}))
		}
	}
	return c, c.err()
}

// err is all that was wrong, nil for nothing.
func (c *cells) err() error {
	if len(c.faults) == 0 {
		return nil
	}
	return c.faults
}

func (c *cells) text(row int, column string) string { return c.Rows[row][c.Column(column)] }

// number reads a cell that must lie between two values.
func (c *cells) number(row int, column string, from, to float64) float64 {
	v, ok := c.Number(c.text(row, column))
	if !ok || v < from || v > to {
		c.refuse(row, column, "scoreboard.number", words.Args{"value": c.text(row, column), "from": from, "to": to})
	}
	return v
}

// day reads MM-DD as a day of the common year (1-365); blank is 0.
func (c *cells) day(row int, column string) int {
	text := c.text(row, column)
	if text == "" {
		return 0
	}
	day, ok := dayOf(text)
	if !ok {
		c.refuse(row, column, "scoreboard.day", words.Args{"value": text})
	}
	return day
}

func (c *cells) refuse(row int, column, key string, args words.Args) {
	c.faults = append(c.faults, fault.New(fault.Invalid, key, args).In(c.At(row, column)))
}
