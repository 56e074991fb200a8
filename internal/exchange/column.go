package exchange

import (
	"math"
	"strconv"

	"garner/internal/cal"
)

// column joins one column of a table to the value it fills. set is given a cell
// that is not blank and tells whether it could be read; get returns the one way
// the value is written.
type column[T any] struct {
	name string
	set  func(entity *T, cell string, number numberReader) bool
	get  func(entity *T) string
	keep func(entity *T) bool // a zero is written, not left blank; may be nil
}

// numberReader reads a number in the way of the file's decimals.
type numberReader func(cell string) (float64, bool)

func text[T any, S ~string](name string, at func(*T) *S) column[T] {
	return column[T]{name: name,
		set: func(e *T, cell string, _ numberReader) bool { *at(e) = S(cell); return true },
		get: func(e *T) string { return string(*at(e)) },
	}
}

// number leaves what it cannot read as not-a-number, so that no later check
// finds fault with it again.
func number[T any](name string, at func(*T) *float64) column[T] {
	return column[T]{name: name,
		set: func(e *T, cell string, read numberReader) bool {
			v, ok := read(cell)
			if !ok {
				v = math.NaN()
			}
			*at(e) = v
			return ok
		},
		get: func(e *T) string { return writeNumber(*at(e)) },
	}
}

func whole[T any](name string, at func(*T) *int) column[T] {
	return column[T]{name: name,
		set: func(e *T, cell string, read numberReader) bool {
			v, ok := read(cell)
			if !ok || v != math.Trunc(v) || math.Abs(v) > 1e9 {
				return false
			}
			*at(e) = int(v)
			return true
		},
		get: func(e *T) string { return strconv.Itoa(*at(e)) },
	}
}

func date[T any](name string, at func(*T) *cal.Date) column[T] {
	return column[T]{name: name,
		set: func(e *T, cell string, _ numberReader) bool {
			d, err := cal.Parse(cell)
			*at(e) = d
			return err == nil
		},
		get: func(e *T) string { return at(e).String() },
	}
}

func monthDay[T any](name string, at func(*T) *cal.MonthDay) column[T] {
	return column[T]{name: name,
		set: func(e *T, cell string, _ numberReader) bool {
			d, err := cal.ParseMonthDay(cell)
			*at(e) = d
			return err == nil
		},
		get: func(e *T) string { return at(e).String() },
	}
}

// writeNumber writes the fewest digits that read back as the same number.
func writeNumber(v float64) string {
	if v == 0 {
		return "0" // also for -0
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}
