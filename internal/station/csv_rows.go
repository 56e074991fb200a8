package station

import (
	"bufio"
	"encoding/csv"
	"errors"
	"io"

	"garner/internal/fault"
	"garner/internal/words"
)

// csvRows reads a CSV file row by row, with the numbers a spreadsheet gives its
// rows.
type csvRows struct {
	name string
	in   *csv.Reader
	row  int
}

// newRows begins to read; a byte order mark is passed over.
func newRows(r io.Reader, name string) *csvRows {
	b := bufio.NewReader(r)
	if mark, err := b.Peek(3); err == nil && string(mark) == "\ufeff" {
		_, _ = b.Discard(3) // they were just seen
	}
	in := csv.NewReader(b)
	in.FieldsPerRecord, in.ReuseRecord, in.LazyQuotes = -1, true, true
	return &csvRows{name: name, in: in}
}

// next is the next row, which holds until the one after it; the error is io.EOF
// at the end, else a fault.
func (c *csvRows) next() ([]string, error) {
	row, err := c.in.Read()
	switch {
	case c.in.InputOffset() > MostBytes:
		return nil, fault.New(fault.Invalid, "station.too_large", words.Args{"limit": MostBytes / 1_000_000}).In(fault.Place{File: c.name})
	case errors.Is(err, io.EOF):
		return nil, err
	case err != nil:
		f := fault.New(fault.Invalid, "station.unreadable", nil).In(fault.Place{File: c.name, Row: c.row + 1})
		f.Err = err
		return nil, f
	}
	c.row, _ = c.in.FieldPos(0) // a row that was read has a first field
	return row, nil
}

// each gives every further row.
func (c *csvRows) each(take func(row []string)) error {
	for {
		row, err := c.next()
		if errors.Is(err, io.EOF) {
			return nil
		}
		if err != nil {
			return err
		}
		take(row)
	}
}

// at is a place in the row last read.
func (c *csvRows) at(column string) fault.Place {
	return fault.Place{File: c.name, Row: c.row, Column: column}
}
