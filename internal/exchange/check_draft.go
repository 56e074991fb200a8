package exchange

import (
	"garner/internal/fault"
	"garner/internal/plan"
	"garner/internal/words"
)

// checkDrafts makes the changes of every draft and looks at what comes of them.
func (c *checker) checkDrafts() {
	c.sameOrder()
	for i, p := range c.h.Plans {
		if c.found.known(c.place("plans", i, "base")) {
			continue
		}
		if p.Base == "" {
			c.changesOfNoDraft(p.ID)
			continue
		}
		c.checkDraft(p.ID)
	}
}

// changesOfNoDraft finds changes of a plan that stands over no other.
func (c *checker) changesOfNoDraft(id string) {
	for i, change := range c.h.Changes {
		if change.Plan == id {
			c.wrong("changes", i, "plan", fault.New(fault.Conflict, "exchange.not_a_draft", words.Args{"plan": id}))
		}
	}
}

func (c *checker) checkDraft(id string) {
	for _, e := range c.draftFaults(id) {
		c.found.add(e)
	}
	resolved, _ := plan.Resolve(c.h.Plans, c.h.Plantings, c.h.Changes, id)
	standing := map[string]bool{}
	for _, p := range resolved {
		standing[p.ID] = true
	}
	find := among(resolved)
	touched := c.touched(id)
	for k := range resolved {
		p := &resolved[k]
		rows := touched[p.ID]
		if rows == nil {
			c.leftBeside(p, find, touched[p.To])
			continue
		}
		for _, w := range c.plantingFaults(p, func(id string) bool { return standing[id] }) {
			c.draftFault(rows, w)
		}
		for _, w := range c.besideFaults(p, find, always) {
			c.draftFault(rows, w)
		}
		for _, key := range plantingsSheet.table.ForeignKeys {
			c.draftReference(p, rows, key)
		}
		for _, w := range c.fieldFaults(p) {
			c.draftFault(rows, w)
		}
	}
}

// leftBeside tells of a planting that a draft leaves alone while it changes, in
// rows, the one that it stands by: at the change that parts them.
func (c *checker) leftBeside(p *plan.Planting, find func(string) *plan.Planting, rows map[string]int) {
	never := func([]string) bool { return false } // told at the one that was changed
	for _, w := range c.besideFaults(p, find, never) {
		if w.column == "to" {
			w.column = "bed"
		}
		if _, changed := rows[w.column]; changed {
			c.draftFault(rows, w)
		}
	}
}

// draftFaults are the changes that cannot be made, at their rows as read.
func (c *checker) draftFaults(id string) fault.List {
	_, faults := plan.Resolve(c.h.Plans, c.h.Plantings, c.h.Changes, id)
	var own fault.List
	for _, e := range faults {
		row := e.At.Row - 2
		if row >= 0 && row < len(c.h.Changes) && c.h.Changes[row].Plan == id {
			own = append(own, e.In(c.place("changes", row, e.At.Column)))
		}
	}
	return own
}

// touched lists by planting and column the last change of a draft to it; an
// added planting has its add under "".
func (c *checker) touched(id string) map[string]map[string]int {
	out := map[string]map[string]int{}
	for i, change := range c.h.Changes {
		if change.Plan != id {
			continue
		}
		rows := out[change.Planting]
		if rows == nil {
			rows = map[string]int{}
			out[change.Planting] = rows
		}
		rows[change.Field] = i
	}
	return out
}

// draftFault tells a fault of a changed planting at the change that made it. A
// fault in a column the draft leaves alone stands in the base plan already,
// unless another change caused it.
func (c *checker) draftFault(rows map[string]int, w inColumn) {
	row, ok := rows[w.column]
	if !ok {
		row, ok = rows[""]
	}
	if !ok {
		for _, cause := range causes[w.column] {
			if row, ok = rows[cause]; ok {
				break
			}
		}
	}
	if ok {
		c.wrong("changes", row, "value", w.fault)
	}
}

// causes are the other columns whose change may bring a fault into a column.
var causes = map[string][]string{
	"area_m2":     {"bed"},
	"clear_by":    {"date"},
	"variety":     {"crop", "use"},
	"use":         {"crop"},
	"method":      {"use", "crop"},
	"to":          {"relation", "bed"},
	"relation":    {"to"},
	"crop":        {"relation", "to"},
	"date":        {"relation", "to"},
	"strip_on":    {"strip_share"},
	"strip_share": {"strip_on"},
}

func (c *checker) draftReference(p *plan.Planting, rows map[string]int, key foreignKey) {
	id := plantingsSheet.write(p)[plantingsSheet.table.column(key.Fields)]
	if to := key.Reference.Resource; id != "" && !c.has(to, id) {
		c.draftFault(rows, inColumn{key.Fields, unknownID(id, to+".csv", c.idsOf(to))})
	}
}

// fieldFaults holds a planting to the schema of plantings.csv.
func (c *checker) fieldFaults(p *plan.Planting) []inColumn {
	var out []inColumn
	s := plantingsSheet.table
	cells := plantingsSheet.write(p)
	for i := range s.Fields {
		if e := s.Fields[i].check(cells[i]); e != nil {
			out = append(out, inColumn{s.Fields[i].Name, e})
		}
	}
	for _, pair := range s.Together {
		if e, column := s.half(pair, cells[s.column(pair[0])] != "", cells[s.column(pair[1])] != ""); e != nil {
			out = append(out, inColumn{column, e})
		}
	}
	return out
}
