package crop

import (
	"maps"
	"slices"

	"garner/internal/fault"
	"garner/internal/table"
	"garner/internal/words"
)

// With returns a book with the grower's own numbers in place of the book's; the
// book itself stays as it is. Each override is checked as a row of the book is;
// one at fault is told, with its id as the row's name, and not applied. When the
// numbers of a use contradict each other after it, the use keeps the book's.
func (b *Book) With(overrides []Override) (*Book, fault.List) {
	var faults fault.List
	changes := map[*Use]map[int]*Fact{}
	for i := range overrides {
		if bad := b.gather(&overrides[i], changes); bad != nil {
			bad.Phrase.Args["id"] = overrides[i].ID
			faults = append(faults, bad)
		}
	}
	swapped := map[*Use]*Use{}
	for _, c := range b.crops {
		for _, u := range c.Uses {
			if changes[u] == nil {
				continue
			}
			changed := u.changed(changes[u])
			if bad, _ := contradiction(changed); bad != nil {
				bad.Phrase.Args["id"] = b.blame(bad, changes[u])
				faults = append(faults, bad.In(fault.Place{Column: "value"}))
				continue
			}
			swapped[u] = changed
		}
	}
	return b.swap(swapped), faults
}

// gather checks one override and adds it to the changes of the uses it speaks
// of; the fault's column is the one at fault.
func (b *Book) gather(o *Override, changes map[*Use]map[int]*Fact) *fault.Error {
	c, _, err := b.Find(o.Crop)
	if err != nil {
		bad := *err.(*fault.Error)
		return bad.In(fault.Place{Column: "crop"})
	}
	uses := c.Uses
	if o.Use != "" {
		u, err := c.Use(o.Use)
		if err != nil {
			return err.(*fault.Error).In(fault.Place{Column: "use"})
		}
		uses = []*Use{u}
	}
	p := b.parameter(o.Parameter)
	if p == nil {
		return fault.New(fault.NotFound, "crop.parameter_unknown", words.Args{"parameter": o.Parameter}).In(fault.Place{Column: "parameter"})
	}
	value, fine := new(table.Table).Number(o.Value)
	if !fine {
		return fault.New(fault.Invalid, "crop.not_a_number", words.Args{"given": o.Value}).In(fault.Place{Column: "value"})
	}
	if bad := p.check(value, o.Unit); bad != nil {
		column := "value"
		if bad.Kind == fault.Invalid {
			column = "unit"
		}
		return bad.In(fault.Place{Column: column})
	}
	uses = slices.DeleteFunc(slices.Clone(uses), func(u *Use) bool { return !applies(p.Name, u) })
	if len(uses) == 0 {
		return fault.New(fault.Invalid, "crop.parameter_not_needed", words.Args{"parameter": p.label(), "crop": c.Name}).In(fault.Place{Column: "parameter"})
	}
	for _, u := range uses {
		if changes[u] == nil {
			changes[u] = map[int]*Fact{}
		}
		changes[u][b.index[p.Name]] = &Fact{Value: value, Unit: o.Unit, Source: o.Source, Mark: markOwn, Note: o.ID}
	}
	return nil
}

// blame returns the id of the override behind a contradiction: the one that
// gave the number that is too high, else the one that is too low.
func (b *Book) blame(bad *fault.Error, changes map[int]*Fact) string {
	for _, name := range []string{"low", "high"} {
		if fact := changes[b.index[bad.Phrase.Args[name].(string)]]; fact != nil {
			return fact.Note
		}
	}
	return ""
}

// changed returns a copy of the use with some of its numbers changed.
func (u *Use) changed(changes map[int]*Fact) *Use {
	c := *u
	facts, from := slices.Clone(u.resolved.facts), slices.Clone(u.resolved.from)
	for i, fact := range changes {
		facts[i], from[i] = fact, scope{}
		u.resolved.parameters[i].set(&c, fact.Value)
	}
	c.resolved = &resolved{parameters: u.resolved.parameters, index: u.resolved.index, facts: facts, from: from}
	return &c
}

// swap returns a copy of the book with some uses in place of others.
func (b *Book) swap(uses map[*Use]*Use) *Book {
	if len(uses) == 0 {
		return b
	}
	n := *b
	n.crops, n.byID = slices.Clone(b.crops), maps.Clone(b.byID)
	crops := map[*Crop]*Crop{}
	for i, c := range n.crops {
		if !slices.ContainsFunc(c.Uses, func(u *Use) bool { return uses[u] != nil }) {
			continue
		}
		changed := *c
		changed.Uses = slices.Clone(c.Uses)
		for k, u := range changed.Uses {
			if uses[u] != nil {
				changed.Uses[k] = uses[u]
			}
		}
		n.crops[i], n.byID[c.ID], crops[c] = &changed, &changed, &changed
	}
	n.names.targets = make(map[string][]target, len(b.names.targets))
	for key, list := range b.names.targets {
		n.names.targets[key] = retarget(list, crops, uses)
	}
	return &n
}

// retarget points names at the crops and uses of a changed book.
func retarget(list []target, crops map[*Crop]*Crop, uses map[*Use]*Use) []target {
	if !slices.ContainsFunc(list, func(t target) bool { return crops[t.crop] != nil }) {
		return list
	}
	list = slices.Clone(list)
	for i, t := range list {
		if crops[t.crop] != nil {
			list[i].crop = crops[t.crop]
		}
		if uses[t.use] != nil {
			list[i].use = uses[t.use]
		}
	}
	return list
}
