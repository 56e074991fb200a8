package crop

import (
	"garner/internal/fault"
	"garner/internal/words"
)

// Crop is one crop of the book with its uses.
type Crop struct {
	ID        string
	Name      string
	Plural    string
	Botanical string
	Family    string // botanical, e.g. "Brassicaceae"
	Vegetable string // the name under which the table counts it
	Class     string
	Group     string
	CommonUse string
	Uses      []*Use // in the order of the book
	Cautions  []string

	FamilyName    string // as a gardener says it, e.g. "cabbage family"
	RotationGroup string // see Family
}

// Use returns a use of the crop by its name; "" is the common use. An unknown
// one gives a NotFound fault that names those there are.
func (c *Crop) Use(name string) (*Use, error) {
	if name == "" {
		name = c.CommonUse
	}
	key := normalise(name)
	for _, u := range c.Uses {
		if normalise(u.Name) == key {
			return u, nil
		}
	}
	return nil, fault.New(fault.NotFound, "crop.use_unknown",
		words.Args{"crop": c.Name, "use": name, "uses": c.useNames()})
}

func (c *Crop) useNames() string {
	names := make([]string, len(c.Uses))
	for i, u := range c.Uses {
		names[i] = u.Name
	}
	return joined(names)
}

// PlantsPerM2 returns the plants in a square metre at the use's distances
// [1/m2]: one over the distance in the row times the distance between rows.
func (u *Use) PlantsPerM2() float64 { return 1 / (u.InRowM * u.BetweenRowM) }

// Feeds reports whether the use gives food; a green manure does not, and the
// table counts nothing of it.
func (u *Use) Feeds() bool { return u.Pattern != GroundCover }

// Allows reports whether the use can be begun by the method (seed, plant, set,
// crown, cutting).
func (u *Use) Allows(method string) bool {
	for _, m := range u.Methods {
		if m == method {
			return true
		}
	}
	return false
}
