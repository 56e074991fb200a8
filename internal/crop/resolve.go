package crop

import (
	"garner/internal/fault"
	"garner/internal/words"
)

// resolve gives every use its numbers. A use that lacks one or whose numbers
// contradict each other is told and gets none.
func (l *loader) resolve(uses []useRow, defaults map[scope]numbers, facts map[about]numbers) {
	for _, ur := range uses {
		u := ur.use
		layers := []numbers{
			defaults[scope{"all", ""}],
			defaults[scope{"class", u.Class}],
			defaults[scope{"group", u.Group}],
		}
		layers = append(layers, l.lent(u, facts)...)
		layers = append(layers, facts[about{u.Crop, ""}], facts[about{u.Crop, u.Name}])
		found := l.merge(layers)
		if !l.complete(ur, found) {
			continue
		}
		r := &resolved{parameters: l.book.parameters, index: l.book.index, facts: make([]*Fact, len(found)), from: make([]scope, len(found))}
		for i, number := range found {
			if number != nil {
				r.facts[i], r.from[i] = &number.Fact, number.from
				l.book.parameters[i].set(u, number.Value)
			}
		}
		if bad, parameter := contradiction(u); bad != nil {
			at := ur.row.at(parameter)
			if i, listed := l.book.index[parameter]; listed && found[i] != nil {
				at = found[i].at()
			}
			l.faults = append(l.faults, bad.In(at))
			continue
		}
		u.resolved = r
	}
}

// merge takes each number from the last layer that has it.
func (l *loader) merge(layers []numbers) numbers {
	found := make(numbers, len(l.book.parameters))
	for _, layer := range layers {
		for i, number := range layer {
			if number != nil {
				found[i] = number
			}
		}
	}
	return found
}

// complete tells every number that the use needs and lacks, and drops those
// that do not apply to it.
func (l *loader) complete(ur useRow, found numbers) bool {
	fine := true
	for i, p := range l.book.parameters {
		if !applies(p.Name, ur.use) {
			found[i] = nil
		} else if found[i] == nil && !needs[p.Name].optional {
			fine = false
			if l.toldBefore(ur.use.Crop, p.Name) {
				continue
			}
			l.refuse(ur.row.at("use"), fault.Invalid, "crop.fact_missing",
				words.Args{"crop": ur.use.Crop, "use": ur.use.Name, "parameter": p.Name})
		}
	}
	return fine
}
