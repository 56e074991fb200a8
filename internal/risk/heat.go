package risk

import (
	"slices"

	"garner/internal/cover"
	"garner/internal/table"
	"garner/internal/words"
)

// Heat is a rule for days that are too hot.
type Heat struct {
	ID           string
	Crops        []string // ids in the crop book; none: all
	Covers       []cover.Kind
	Measure      string // maximum of the air, the same with the cover shut, or soil
	FromC, ToC   float64
	Source, Mark string
}

// measures of heat.
const (
	ofAir  = "maximum"
	ofShut = "shut"
	ofSoil = "soil"
)

// For tells whether the rule is of a crop under a cover.
func (h *Heat) For(crop string, kind cover.Kind) bool {
	return (len(h.Crops) == 0 || slices.Contains(h.Crops, crop)) && (len(h.Covers) == 0 || slices.Contains(h.Covers, kind))
}

// Degree is how far a temperature goes into the rule's range: 0 below it, 1 at its
// end and beyond.
func (h *Heat) Degree(c float64) float64 {
	if h.ToC == h.FromC {
		if c >= h.FromC {
			return 1
		}
		return 0
	}
	return min(1, max(0, (c-h.FromC)/(h.ToC-h.FromC)))
}

// OfSoil tells whether the rule looks at the soil round the seed, not at the air.
func (h *Heat) OfSoil() bool { return h.Measure == ofSoil }

// OfShut tells whether the rule looks at the air under a cover that nobody opens.
func (h *Heat) OfShut() bool { return h.Measure == ofShut }

// Fires tells whether it is too hot at a temperature of what the rule looks at [C].
func (h *Heat) Fires(c float64) bool { return c >= h.FromC }

// Does says what growers do on such a day.
func (h *Heat) Does() words.Phrase { return words.P("risk.heat_"+h.ID, nil) }

// heat reads the rules of heat.
func (l *loader) heat(c *table.Cells) {
	var known []string
	for _, k := range cover.Kinds() {
		known = append(known, string(k))
	}
	for i := range c.Rows {
		h := Heat{ID: told(c, i, "heat"), Crops: c.List(i, "crops"), Measure: oneOf(c, i, "measure", []string{ofAir, ofShut, ofSoil}),
			FromC: c.Within(i, "from_c", 15, 45), ToC: c.Within(i, "to_c", 15, 50), Source: told(c, i, "source"), Mark: oneOf(c, i, "mark", marks)}
		for _, k := range c.List(i, "covers") {
			if !slices.Contains(known, k) {
				c.Refuse(i, "covers", "risk.data_one_of", words.Args{"given": k, "names": known})
			}
			h.Covers = append(h.Covers, cover.Kind(k))
		}
		if h.ToC < h.FromC {
			c.Refuse(i, "to_c", "risk.data_heat_order", words.Args{"low": h.FromC, "high": h.ToC})
		}
		l.book.Heats = append(l.book.Heats, h)
	}
}
