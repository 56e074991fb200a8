package larder

// Importance is how much a household holds to a want. The list is closed.
type Importance string

// The importances. Blank is a want like any other.
const (
	Floor Importance = "floor" // never without it
	Nice  Importance = "nice"  // nice to have: when it lacks, little is said of it
)

// Wanted tells whether anything of it is wanted.
func (w *Want) Wanted() bool { return w.KgPerWeek > 0 || w.PortionsPerEater > 0 }

// ImportanceOf is what several wants for one thing come to: a floor when one of
// them is, nice to have only when all are.
func ImportanceOf(wants []Want, vegetable, group string) Importance {
	seen, nice := false, true
	for i := range wants {
		w := &wants[i]
		if w.Vegetable != vegetable || w.Group != group || !w.Wanted() {
			continue
		}
		if w.Importance == Floor {
			return Floor
		}
		seen, nice = true, nice && w.Importance == Nice
	}
	if seen && nice {
		return Nice
	}
	return ""
}

// Rank orders importances, what is held to most first.
func (i Importance) Rank() int {
	switch i {
	case Floor:
		return 0
	case Nice:
		return 2
	}
	return 1
}
