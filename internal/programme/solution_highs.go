package programme

import "strings"

// highs reads the raw style: headings, of which "# Primal solution values" is
// followed by the status of the plan, the objective, and as many lines of a name
// and a value as the heading of the columns says.
func (r *reading) highs() {
	status := ""
	for r.next() && r.at != highsPrimal {
		if status == "" {
			status = r.at
		}
	}
	if r.ended {
		r.short(highsPrimal)
		return
	}
	if !r.next() || r.at == "None" {
		r.none(status)
		return
	}
	if r.at == "Infeasible" {
		r.none(status + ", " + r.at)
		return
	}
	r.highsColumns()
}

const highsPrimal = "# Primal solution values"

func (r *reading) highsColumns() {
	for r.next() {
		fields := strings.Fields(r.at)
		switch {
		case len(fields) == 2 && fields[0] == "Objective":
			r.tell(fields[1])
		case len(fields) == 3 && fields[0] == "#" && fields[1] == "Columns":
			if r.count(fields[2]) {
				r.highsValues()
			}
			return
		default:
			r.malformed("# Columns 12")
		}
	}
	r.short("# Columns")
}

func (r *reading) highsValues() {
	for range r.programme.Columns {
		if !r.next() {
			r.short("# Rows")
			return
		}
		if fields := strings.Fields(r.at); len(fields) == 2 {
			r.takeNamed(fields[0], fields[1])
		} else {
			r.malformed("S0000000 2")
		}
	}
	r.complete()
}
