package programme

import (
	"slices"
	"strings"
)

// glpkWritten reads lines that begin with a letter: c comment, s what was solved and
// how it came out, i a row, j a column by its number, e the end. The value of a
// column is the field after its number, but one later for a basic solution, which
// has a status before it.
func (r *reading) glpkWritten() {
	value := 0
	for {
		fields := strings.Fields(r.at)
		switch {
		case len(fields) == 0 || fields[0] == "c" || fields[0] == "i":
		case fields[0] == "e":
			if value == 0 {
				r.malformed("s mip 20 30 o 12.5")
			}
			r.complete()
			return
		case fields[0] == "s" && value == 0:
			if value = r.glpkSolved(fields); value == 0 {
				return
			}
		case fields[0] == "j" && value > 0 && len(fields) > value:
			r.takeNumbered(fields[1], fields[value])
		default:
			r.malformed("j 1 2")
		}
		if !r.next() {
			r.short("e o f")
			return
		}
	}
}

// glpkSolved reads the line of what was solved and returns where values stand in
// the lines of columns, or 0 when there is no going on.
func (r *reading) glpkSolved(fields []string) int {
	kinds := map[string]struct {
		length, value int
		found         string // statuses of a plan that can be carried out
	}{"mip": {6, 2, "of"}, "bas": {7, 3, "f"}, "ipt": {6, 2, "of"}}
	kind, known := kinds[fields[min(1, len(fields)-1)]]
	if !known || len(fields) != kind.length {
		r.malformed("s mip 20 30 o 12.5")
		return 0
	}
	if !r.count(fields[3]) {
		return 0
	}
	if len(fields[4]) != 1 || !strings.Contains(kind.found, fields[4]) {
		r.none(r.at)
		return 0
	}
	r.tell(fields[len(fields)-1])
	return kind.value
}

// glpkReport reads the report for people: headings with a colon, and a table of the
// rows and one of the columns. In a line of the columns a star marks a whole number,
// or a status a column of a basis; the value follows.
func (r *reading) glpkReport() {
	for r.next() {
		heading, text, _ := strings.Cut(r.at, ":")
		fields := strings.Fields(text)
		switch {
		case heading == "Columns" && len(fields) > 0:
			if !r.count(fields[0]) {
				return
			}
		case heading == "Status":
			if status := strings.TrimSpace(text); !slices.Contains(glpkFound, status) {
				r.none(status)
				return
			}
		case heading == "Objective":
			r.glpkObjective(text)
		case strings.HasPrefix(r.at, "No. Column name"):
			r.glpkTable()
			return
		}
	}
	r.short("No. Column name")
}

// glpkFound are the statuses of a report that has a plan in it.
var glpkFound = []string{"INTEGER OPTIMAL", "INTEGER NON-OPTIMAL", "OPTIMAL", "FEASIBLE"}

// glpkObjective reads "COST = 12.5 (MINimum)".
func (r *reading) glpkObjective(text string) {
	_, value, _ := strings.Cut(text, "=")
	if fields := strings.Fields(value); len(fields) > 0 {
		r.tell(fields[0])
		return
	}
	r.malformed("Objective: COST = 12.5 (MINimum)")
}

func (r *reading) glpkTable() {
	for r.next() && r.at != "" {
		fields := strings.Fields(r.at)
		if strings.HasPrefix(fields[0], "---") {
			continue
		}
		if len(fields) > 2 && slices.Contains([]string{"*", "B", "NL", "NU", "NS", "NF"}, fields[2]) {
			fields = slices.Delete(fields, 2, 3)
		}
		if len(fields) < 3 {
			r.malformed("1 S0000000 * 2 0 3")
			continue
		}
		r.takeNamed(fields[1], fields[2])
	}
	if r.ended {
		r.short("End of output")
		return
	}
	r.complete()
}
