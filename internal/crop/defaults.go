package crop

import "slices"

// Default is a number of a class or a group of crops that holds for every use
// without a number of its own: what the windows are fitted by.
type Default struct {
	Scope     string // class or group
	Name      string // of the class or group
	Parameter string
	Value     float64
}

// WithDefaults returns a book with other defaults; the book itself stays as it
// is. The numbers keep their provenance, so it is for fitting, not for showing.
func (b *Book) WithDefaults(defaults []Default) *Book {
	swapped := map[*Use]*Use{}
	for _, c := range b.crops {
		for _, u := range c.Uses {
			if changed := u.withDefaults(defaults); changed != nil {
				swapped[u] = changed
			}
		}
	}
	return b.swap(swapped)
}

// withDefaults returns a changed copy of the use, nil when nothing changes.
func (u *Use) withDefaults(defaults []Default) *Use {
	var c *Use
	for _, d := range defaults {
		i, ok := u.resolved.index[d.Parameter]
		if !ok || u.resolved.facts[i] == nil || u.resolved.from[i] != (scope{d.Scope, d.Name}) {
			continue
		}
		p := u.resolved.parameters[i]
		if p.get(u) == d.Value {
			continue
		}
		if c == nil {
			copied := *u
			copied.resolved = &resolved{parameters: u.resolved.parameters, index: u.resolved.index,
				facts: slices.Clone(u.resolved.facts), from: u.resolved.from}
			c = &copied
		}
		fact := *u.resolved.facts[i]
		fact.Value = d.Value
		c.resolved.facts[i] = &fact
		p.set(c, d.Value)
	}
	return c
}
