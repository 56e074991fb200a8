package plan

import (
	"sort"
	"strings"

	"garner/internal/fault"
	"garner/internal/words"
)

// changesFile is where the changes of drafts are kept; faults name it with the
// row, the first change being row 2.
const changesFile = "changes.csv"

// Resolve returns the plantings of a plan: its own, and for a draft those of the
// plan it stands over with its changes made, in order; none where there is no plan yet.
// Nothing given is altered.
// Changes that cannot be made are all reported, and the rest is made.
func Resolve(plans []Plan, plantings []Planting, changes []Change, id string) ([]Planting, fault.List) {
	if id == "" {
		return nil, nil
	}
	line, err := lineage(plans, id)
	if err != nil {
		return nil, fault.List{err}
	}
	var out []Planting
	var faults fault.List
	for _, planID := range line {
		for _, p := range plantings {
			if p.Plan == planID {
				out = append(out, p)
			}
		}
		var found fault.List
		out, found = apply(out, planID, changes)
		faults = append(faults, found...)
	}
	return out, faults
}

// lineage returns the ids from the plan without a base down to the one asked for.
func lineage(plans []Plan, id string) ([]string, *fault.Error) {
	base := make(map[string]string, len(plans))
	for _, p := range plans {
		base[p.ID] = p.Base
	}
	var line []string
	seen := map[string]bool{}
	for at := id; at != ""; at = base[at] {
		if _, known := base[at]; !known {
			return nil, fault.New(fault.NotFound, "plan.unknown", words.Args{"given": at})
		}
		if seen[at] {
			return nil, fault.New(fault.Conflict, "plan.base_cycle", words.Args{"plan": at})
		}
		seen[at] = true
		line = append([]string{at}, line...)
	}
	return line, nil
}

// apply makes the changes of one draft. It may reuse the slice it is given.
func apply(plantings []Planting, draft string, changes []Change) ([]Planting, fault.List) {
	var steps []int
	for i, c := range changes {
		if c.Plan == draft {
			steps = append(steps, i)
		}
	}
	sort.SliceStable(steps, func(a, b int) bool { return changes[steps[a]].Order < changes[steps[b]].Order })
	var faults fault.List
	for _, i := range steps {
		var err *fault.Error
		if plantings, err = step(plantings, changes[i]); err != nil {
			faults = append(faults, err.In(fault.Place{File: changesFile, Row: i + 2, Column: err.At.Column}))
		}
	}
	return plantings, faults
}

// step makes one change. A fault's place holds the column only.
func step(plantings []Planting, c Change) ([]Planting, *fault.Error) {
	at := indexOf(plantings, c.Planting)
	switch {
	case c.Action == "add":
		if at >= 0 {
			return plantings, inColumn("planting", fault.New(fault.Conflict, "plan.planting_exists", words.Args{"planting": c.Planting}))
		}
		added, err := listed(c)
		if err != nil {
			return plantings, inColumn("value", err)
		}
		return append(plantings, added), nil
	case c.Action != "set" && c.Action != "remove":
		return plantings, inColumn("action", fault.New(fault.Invalid, "plan.action_unknown", words.Args{"given": c.Action}))
	case at < 0:
		return plantings, inColumn("planting", fault.New(fault.NotFound, "plan.planting_unknown", words.Args{"planting": c.Planting}))
	case c.Action == "remove":
		return append(plantings[:at], plantings[at+1:]...), nil
	}
	return plantings, set(&plantings[at], c)
}

func set(p *Planting, c Change) *fault.Error {
	err := SetField(p, c.Field, c.Value)
	if err == nil {
		return nil
	}
	if err.Kind == fault.NotFound {
		return inColumn("field", err)
	}
	return inColumn("value", err)
}

func inColumn(column string, err *fault.Error) *fault.Error {
	return err.In(fault.Place{Column: column})
}

func indexOf(plantings []Planting, id string) int {
	for i := range plantings {
		if plantings[i].ID == id {
			return i
		}
	}
	return -1
}

// listed makes the planting of an add from its list, column=value;column=value.
func listed(c Change) (Planting, *fault.Error) {
	p := New(c.Planting, c.Plan)
	given := map[string]bool{}
	for _, piece := range strings.Split(c.Value, ";") {
		if strings.TrimSpace(piece) == "" {
			continue
		}
		name, value, found := strings.Cut(piece, "=")
		name = strings.TrimSpace(name)
		if !found {
			return p, fault.New(fault.Invalid, "plan.list_piece", words.Args{"given": name})
		}
		if given[name] {
			return p, fault.New(fault.Invalid, "plan.list_twice", words.Args{"field": name})
		}
		given[name] = true
		if err := SetField(&p, name, value); err != nil {
			return p, err
		}
	}
	for _, f := range fields {
		if f.required && !given[f.name] {
			return p, fault.New(fault.Invalid, "plan.list_incomplete", words.Args{"field": f.name})
		}
	}
	return p, nil
}
