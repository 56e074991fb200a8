package station

import (
	"bufio"
	"errors"
	"io"

	"garner/internal/fault"
	"garner/internal/words"
)

// longestLine is more than any line of the formats that are read [bytes].
const longestLine = 1 << 20

// lines reads a file line by line, so that a long record never lies in memory
// twice.
type lines struct {
	scan *bufio.Scanner
	name string
	row  int   // of the line last read, the first being 1
	read int64 // bytes so far
}

func newLines(r io.Reader, name string) *lines {
	s := bufio.NewScanner(r)
	s.Buffer(make([]byte, 0, 64<<10), longestLine)
	return &lines{scan: s, name: name}
}

// next goes to the next line.
func (l *lines) next() bool {
	if !l.scan.Scan() || l.read > MostBytes {
		return false
	}
	l.row++
	l.read += int64(len(l.scan.Bytes())) + 1
	return true
}

// text is the line, without what ends it.
func (l *lines) text() string {
	b := l.scan.Bytes()
	if n := len(b); n > 0 && b[n-1] == '\r' {
		b = b[:n-1]
	}
	return string(b)
}

// at is a place in the line.
func (l *lines) at(column string) fault.Place {
	return fault.Place{File: l.name, Row: l.row, Column: column}
}

// err is what ended the reading before its time.
func (l *lines) err() error {
	err := l.scan.Err()
	switch {
	case l.read > MostBytes:
		return fault.New(fault.Invalid, "station.too_large", words.Args{"limit": MostBytes / 1_000_000}).In(fault.Place{File: l.name})
	case errors.Is(err, bufio.ErrTooLong):
		return fault.New(fault.Invalid, "station.line_too_long", nil).In(fault.Place{File: l.name, Row: l.row + 1})
	case err != nil:
		f := fault.New(fault.Invalid, "station.unreadable", nil).In(fault.Place{File: l.name, Row: l.row + 1})
		f.Err = err
		return f
	}
	return nil
}
