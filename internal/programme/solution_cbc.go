package programme

import "strings"

// cbcObjective stands in the first line of a solution of cbc, after the status.
const cbcObjective = " - objective value "

// cbc reads lines of a number, a name, a value and a reduced cost. Two stars before
// them mark what overruns a row. Without being asked for more, cbc leaves out
// columns at nought.
func (r *reading) cbc() {
	status, objective, _ := strings.Cut(r.at, cbcObjective)
	if low := strings.ToLower(status); strings.Contains(low, "infeasible") || strings.Contains(low, "unbounded") || strings.Contains(low, "no integer solution") {
		r.none(status)
		return
	}
	r.tell(strings.TrimSpace(objective))
	for r.next() {
		fields := strings.Fields(strings.TrimPrefix(r.at, "**"))
		switch len(fields) {
		case 0:
		case 4:
			r.takeNamed(fields[1], fields[2])
		default:
			r.malformed("0 S0000000 2 0.15")
		}
	}
}
