package programme

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"garner/internal/fault"
	"garner/internal/words"
)

// WriteMPS writes a linear programme in the MPS format with fixed columns, as IBM
// laid it down for MPSX: fields begin in columns 2, 5, 15, 25, 40 and 50, names
// have at most eight characters and numbers at most twelve. The cost row is COST.
// A number with more digits than go in is rounded: to within 1e-10 up to one, and up
// to 1e10 to within 1e-9 of itself.
func WriteMPS(to io.Writer, name string, l *Linear) error {
	if err := l.writable(); err != nil {
		return err
	}
	w := &mpsText{out: bufio.NewWriter(to)}
	w.line("NAME          %s", title(name))
	w.line("ROWS")
	w.line(" N  COST")
	for i := range l.Rows {
		w.line(" %c  %s", l.Rows[i].Sense, l.Rows[i].Name)
	}
	w.columns(l)
	w.line("RHS")
	for i := range l.Rows {
		if l.Rows[i].Right != 0 {
			w.pair("RHS", l.Rows[i].Name, l.Rows[i].Right)
		}
	}
	w.bounds(l)
	w.line("ENDATA")
	return w.out.Flush()
}

// writable tells whether the formats can say the programme: it has a column, names
// fit, and all numbers are finite.
func (l *Linear) writable() error {
	if len(l.Columns) == 0 {
		return fault.New(fault.Invalid, "programme.write_nothing", nil)
	}
	unfit := func(name string, number float64) error {
		if len(name) > 8 || math.IsNaN(number) || math.IsInf(number, 0) {
			return fault.New(fault.Internal, "programme.write_unfit", words.Args{"name": name, "number": strconv.FormatFloat(number, 'g', -1, 64)})
		}
		return nil
	}
	for i := range l.Rows {
		if err := unfit(l.Rows[i].Name, l.Rows[i].Right); err != nil {
			return err
		}
	}
	for i := range l.Columns {
		c := &l.Columns[i]
		if err := unfit(c.Name, c.Cost+c.Upper); err != nil {
			return err
		}
		for _, e := range c.Entries {
			if err := unfit(c.Name, e.Value); err != nil {
				return err
			}
		}
	}
	return nil
}

type mpsText struct{ out *bufio.Writer }

func (w *mpsText) line(format string, args ...any) { fmt.Fprintf(w.out, format+"\n", args...) }

func (w *mpsText) pair(first, second string, x float64) {
	w.line("    %-8s  %-8s  %12s", first, second, twelve(x))
}

func (w *mpsText) columns(l *Linear) {
	w.line("COLUMNS")
	whole := false
	for i := range l.Columns {
		c := &l.Columns[i]
		if c.Integer != whole {
			whole = c.Integer
			w.marker(i, whole)
		}
		if c.Cost != 0 || len(c.Entries) == 0 {
			w.pair(c.Name, "COST", c.Cost)
		}
		for _, e := range c.Entries {
			w.pair(c.Name, l.Rows[e.Row].Name, e.Value)
		}
	}
	if whole {
		w.marker(len(l.Columns), false)
	}
}

// marker opens or closes a run of whole-number columns.
func (w *mpsText) marker(n int, opens bool) {
	kind := "'INTEND'"
	if opens {
		kind = "'INTORG'"
	}
	w.line("    %-8s  %-8s                 %-8s", "M"+strconv.Itoa(n), "'MARKER'", kind)
}

// bounds writes the upper bounds. One of zero is written as a fixed value, since
// some readers take an upper bound that is not above zero to free the column below.
func (w *mpsText) bounds(l *Linear) {
	w.line("BOUNDS")
	for i := range l.Columns {
		c := &l.Columns[i]
		switch {
		case c.Upper == 0:
			w.line(" FX %-8s  %-8s  %12s", "BOUND", c.Name, "0")
		case c.Upper < Unbounded:
			w.line(" UP %-8s  %-8s  %12s", "BOUND", c.Name, twelve(c.Upper))
		}
	}
}

// twelve writes a number in at most twelve characters, as near to it as goes.
func twelve(x float64) string {
	if s := terse(full(x)); len(s) <= 12 {
		return s
	}
	best, off := "0", math.Inf(1)
	for _, form := range []byte{'g', 'f', 'e'} {
		for digits := 17; digits >= 0; digits-- {
			s := terse(strconv.FormatFloat(x, form, digits, 64))
			if len(s) > 12 {
				continue
			}
			if y, err := strconv.ParseFloat(s, 64); err == nil && math.Abs(y-x) < off {
				best, off = s, math.Abs(y-x)
			}
			break
		}
	}
	return best
}

// terse leaves out of a number what says nothing: a zero before the point, zeros at
// the end of the fraction, and plus and zeros in the exponent.
func terse(s string) string {
	mantissa, exponent, scientific := strings.Cut(s, "e")
	if strings.Contains(mantissa, ".") {
		mantissa = strings.TrimRight(strings.TrimRight(mantissa, "0"), ".")
	}
	switch {
	case strings.HasPrefix(mantissa, "0."):
		mantissa = mantissa[1:]
	case strings.HasPrefix(mantissa, "-0."):
		mantissa = "-" + mantissa[2:]
	}
	power := strings.TrimLeft(strings.TrimLeft(exponent, "+-"), "0")
	switch {
	case !scientific || power == "":
		return mantissa
	case exponent[0] == '-':
		return mantissa + "e-" + power
	}
	return mantissa + "e" + power
}

// title is a name of at most eight plain characters.
func title(name string) string {
	plain := strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' {
			return r
		}
		return -1
	}, name)
	if plain == "" {
		return "PROBLEM"
	}
	return plain[:min(8, len(plain))]
}
