package crop

import (
	"slices"
	"strings"
	"unicode"

	"garner/internal/fault"
	"garner/internal/near"
	"garner/internal/words"
)

// target is what a name stands for: a crop, or one use of it.
type target struct {
	crop *Crop
	use  *Use // nil: the common use
}

// names finds crops by every name they have.
type names struct {
	targets map[string][]target // by normalised name
	printed []string            // the names as people write them, for nearest
	of      map[string][]Name   // by id of the crop, as people write them
}

// Name is one name of a crop.
type Name struct {
	Text string
	Use  string // the use it stands for; empty: the crop's common one
}

// normalise brings a name to the form under which it is looked up: lower case,
// words without punctuation and without a plural s, in alphabetical order. So
// "Beans, bush", "bush bean" and "bean (bush)" are one name.
func normalise(name string) string {
	parts := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r)
	})
	for i, part := range parts {
		parts[i] = singular(part)
	}
	slices.Sort(parts)
	return strings.Join(parts, " ")
}

// plurals are the endings of plurals and what they stand for, the longest first.
var plurals = []struct{ many, one string }{
	{"shes", "sh"}, {"ches", "ch"}, {"ies", "y"}, {"oes", "o"}, {"ss", "ss"}, {"s", ""},
}

// singular takes the plural's ending off a word.
func singular(word string) string {
	for _, p := range plurals {
		if stem, found := strings.CutSuffix(word, p.many); found && len(word) > 3 {
			return stem + p.one
		}
	}
	return word
}

// loadNames gathers the names of the crops and the synonyms; a use is found by
// its name before that of its crop too, as in "overwintered cauliflower". Two crops may
// share a botanical name, but no other.
func (l *loader) loadNames() {
	n := names{targets: map[string][]target{}, of: map[string][]Name{}}
	for _, c := range l.book.crops {
		r := l.rows[c.ID]
		for _, column := range []string{"id", "name", "plural"} {
			l.addName(&n, r, column, target{crop: c})
		}
	}
	for _, t := range l.folder("names", "name", "crop", "use") {
		for r := range t.rows {
			if !l.filled(r, "name") {
				continue
			}
			c := l.cropOf(r)
			if c == nil {
				continue
			}
			to := target{crop: c}
			if r.get("use") != "" {
				uses := l.usesOf(r, c)
				if len(uses) == 0 {
					continue
				}
				to.use = uses[0]
			}
			l.addName(&n, r, "name", to)
		}
	}
	for _, c := range l.book.crops {
		key := normalise(c.Botanical)
		if !slices.ContainsFunc(n.targets[key], func(t target) bool { return t.crop == c }) {
			n.targets[key] = append(n.targets[key], target{crop: c})
		}
	}
	for _, c := range l.book.crops {
		for _, u := range c.Uses {
			if key := normalise(u.Name + " " + c.Name); len(n.targets[key]) == 0 {
				n.targets[key] = []target{{crop: c, use: u}}
				n.printed = append(n.printed, u.Name+" "+c.Name)
			}
		}
	}
	slices.Sort(n.printed)
	n.printed = slices.Compact(n.printed)
	l.book.names = n
}

func (l *loader) addName(n *names, r row, column string, to target) {
	key := normalise(r.get(column))
	if old := n.targets[key]; len(old) > 0 {
		if old[0] != to && !(old[0].crop == to.crop && column != "name") {
			l.refuse(r.at(column), fault.Conflict, "crop.name_twice",
				words.Args{"name": r.get(column), "crop": to.crop.Name, "other": old[0].crop.Name})
		}
		return
	}
	n.targets[key] = []target{to}
	n.printed = append(n.printed, r.get(column))
	if column == "name" {
		name := Name{Text: r.get(column)}
		if to.use != nil {
			name.Use = to.use.Name
		}
		n.of[to.crop.ID] = append(n.of[to.crop.ID], name)
	}
}

// live drops targets whose crop or use has no numbers.
func (n *names) live() {
	for key, list := range n.targets {
		list = slices.DeleteFunc(list, func(t target) bool {
			return len(t.crop.Uses) == 0 || t.use != nil && t.use.resolved == nil
		})
		if len(list) == 0 {
			delete(n.targets, key)
		} else {
			n.targets[key] = list
		}
	}
}

// Find returns the crop a person means and the use: by id, name, plural,
// synonym or botanical name, whatever the case, punctuation and order of words.
// The use is the one the synonym stands for, else the crop's common one. An
// unknown name gives a NotFound fault with the nearest names; a botanical name
// that several crops share gives a Conflict fault that names them.
func (b *Book) Find(name string) (*Crop, *Use, error) {
	found := b.names.targets[normalise(name)]
	switch len(found) {
	case 0:
		return nil, nil, b.unknown(name)
	case 1:
		if found[0].use != nil {
			return found[0].crop, found[0].use, nil
		}
		u, err := found[0].crop.Use("")
		return found[0].crop, u, err
	}
	several := make([]string, len(found))
	for i, t := range found {
		several[i] = t.crop.Name
	}
	return nil, nil, fault.New(fault.Conflict, "crop.name_several", words.Args{"name": name, "crops": joined(several)})
}

// NamesOf returns the other names by which a crop is called, beside its own, its
// plural and its botanical one.
func (b *Book) NamesOf(id string) []Name { return slices.Clone(b.names.of[id]) }

// Called returns the crops that go by a name: none, one, or several that share a
// botanical name.
func (b *Book) Called(name string) []*Crop {
	var out []*Crop
	for _, t := range b.names.targets[normalise(name)] {
		out = append(out, t.crop)
	}
	return out
}

// Nearest returns up to n names of crops that are nearest to a name nobody knows,
// each of another crop.
func (b *Book) Nearest(name string, n int) []string {
	var out []string
	seen := map[*Crop]bool{}
	for _, found := range near.Names(name, b.names.printed, 4*n) {
		if c := b.Called(found); len(c) == 1 && !seen[c[0]] && len(out) < n {
			seen[c[0]] = true
			out = append(out, found)
		}
	}
	return out
}

// Knows tells whether Find would find a name, without looking for near ones.
func (b *Book) Knows(name string) bool { return len(b.names.targets[normalise(name)]) == 1 }

func (b *Book) unknown(name string) *fault.Error {
	nearest := near.Names(name, b.names.printed, 3)
	if len(nearest) == 0 {
		return fault.New(fault.NotFound, "crop.unknown_alone", words.Args{"name": name, "near": ""})
	}
	return fault.New(fault.NotFound, "crop.unknown", words.Args{"name": name, "near": joined(nearest)})
}
