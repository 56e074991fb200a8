package crop

import (
	"garner/internal/fault"
	"garner/internal/words"
)

// rotationGroups are the parts of a garden that change places from year to
// year. Anywhere is for families that may stand wherever there is room,
// permanent for those that stay where they are. The list is closed and
// documented.
var rotationGroups = []string{"brassicas", "legumes", "onions", "roots", "potatoes", "anywhere", "permanent"}

// Family is a botanical family as a gardener knows it.
type Family struct {
	Botanical     string // e.g. "Brassicaceae"
	Name          string // e.g. "cabbage family"
	RotationGroup string // brassicas, legumes, onions, roots, potatoes, anywhere, permanent
	Source        string // key of a Source
	Mark          string // how the group came about, as of a number
	Note          string
}

func (l *loader) loadFamilies() {
	t := l.sheet("families.csv", "family", "name", "rotation_group", "source", "mark", "note")
	for r := range t.rows {
		f := Family{r.get("family"), r.get("name"), r.get("rotation_group"), r.get("source"), r.get("mark"), r.get("note")}
		fine := l.filled(r, "family", "name")
		fine = l.oneOf(r, "rotation_group", rotationGroups) && fine
		fine = l.sourced(r) && fine
		fine = l.oneOf(r, "mark", marks) && fine
		if _, twice := l.book.families[f.Botanical]; twice {
			l.refuse(r.at("family"), fault.Invalid, "crop.family_twice", words.Args{"family": f.Botanical})
			fine = false
		}
		if fine {
			l.book.families[f.Botanical] = f
		}
	}
}

// familyOf gives a crop the names of its family; false when the row names one
// that is not in the book.
func (l *loader) familyOf(r row, c *Crop) bool {
	f, ok := l.book.families[c.Family]
	if !ok {
		l.refuse(r.at("family"), fault.NotFound, "crop.family_unknown", words.Args{"family": c.Family})
		return false
	}
	c.FamilyName, c.RotationGroup = f.Name, f.RotationGroup
	return true
}
