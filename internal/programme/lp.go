package programme

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"strconv"
)

// WriteLP writes a linear programme as CPLEX LP text, as open solvers read it.
// Numbers are written with all their digits. Every column stands in the cost row,
// at nought if need be, so that a solver which numbers columns as they first appear
// numbers them as the programme does.
func WriteLP(to io.Writer, name string, l *Linear) error {
	if err := l.writable(); err != nil {
		return err
	}
	w := &lpText{out: bufio.NewWriter(to)}
	w.text("\\ " + title(name) + "\nMinimize\n COST:")
	for i := range l.Columns {
		w.term(i, l.Columns[i].Cost, l.Columns[i].Name)
	}
	w.text("\nSubject To\n")
	for i, terms := range l.byRow() {
		w.row(l, i, terms)
	}
	w.bounds(l)
	w.whole(l)
	w.text("End\n")
	return w.out.Flush()
}

// byRow lists the entries of each row; the number in an entry is its column.
func (l *Linear) byRow() [][]Entry {
	rows := make([][]Entry, len(l.Rows))
	for i := range l.Columns {
		for _, e := range l.Columns[i].Entries {
			rows[e.Row] = append(rows[e.Row], Entry{i, e.Value})
		}
	}
	return rows
}

type lpText struct{ out *bufio.Writer }

// termsPerLine keeps lines shorter than the 255 characters that some readers take.
const termsPerLine = 5

func (w *lpText) text(s string) { w.out.WriteString(s) }

// term writes one term of a sum, the at-th of it.
func (w *lpText) term(at int, factor float64, name string) {
	if at > 0 && at%termsPerLine == 0 {
		w.text("\n ")
	}
	sign := "+"
	if factor < 0 {
		sign = "-"
	}
	fmt.Fprintf(w.out, " %s %s %s", sign, full(math.Abs(factor)), name)
}

func (w *lpText) row(l *Linear, i int, terms []Entry) {
	w.text(" " + l.Rows[i].Name + ":")
	for at, t := range terms {
		w.term(at, t.Value, l.Columns[t.Row].Name)
	}
	if len(terms) == 0 {
		w.term(0, 0, l.Columns[0].Name)
	}
	relation := "<="
	if l.Rows[i].Sense == Equally {
		relation = "="
	}
	w.text(" " + relation + " " + full(l.Rows[i].Right) + "\n")
}

func (w *lpText) bounds(l *Linear) {
	w.text("Bounds\n")
	for i := range l.Columns {
		if c := &l.Columns[i]; c.Upper < Unbounded {
			w.text(" 0 <= " + c.Name + " <= " + full(c.Upper) + "\n")
		}
	}
}

// whole names the whole-number columns.
func (w *lpText) whole(l *Linear) {
	heading := "Generals\n"
	for i := range l.Columns {
		if l.Columns[i].Integer {
			w.text(heading + " " + l.Columns[i].Name + "\n")
			heading = ""
		}
	}
}

// full writes a number so that it is read back as the same number.
func full(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }
