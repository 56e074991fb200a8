package desk

import (
	"slices"
	"strings"

	"garner/internal/crop"
	"garner/internal/holding"
	"garner/internal/plan"
)

// CropLine is one crop of the book as the list tells it.
type CropLine struct {
	ID, Name, Plural, Botanical string
	Family                      string   // botanical
	FamilyName                  string   // as a gardener says it
	Kind                        string   // heads, leaves, roots, onions, legumes, fruit, potatoes, perennials
	Vegetable                   string   // the name under which the table counts it; "" for a green manure
	Names                       []string // other names, as people say them
	Search                      string   // all names, to be looked in
	Uses                        []UseName
	Plantings                   int  // of the plan in force
	OnTable                     bool // it is grown or wanted, so that its vegetable has a page
}

// UseName is a use of a crop with what it is in words.
type UseName struct{ Name, Label string }

// CropList returns every crop of the book by name.
func (o *Office) CropList() ([]CropLine, error) {
	h, err := o.Holding()
	if err != nil {
		return nil, err
	}
	b, err := bookOf(h)
	if err != nil {
		return nil, err
	}
	g := grownIn(h)
	var out []CropLine
	for _, c := range b.Crops() {
		out = append(out, cropLine(b, c, g))
	}
	slices.SortStableFunc(out, func(a, b CropLine) int { return strings.Compare(strings.ToLower(a.Name), strings.ToLower(b.Name)) })
	return out, nil
}

// grown counts what a household grows by crop, and knows what it wants.
type grown struct {
	plantings map[string]int
	wanted    map[string]bool // vegetables
}

func grownIn(h *holding.Holding) grown {
	g := grown{map[string]int{}, map[string]bool{}}
	list, _ := plan.Resolve(h.Plans, h.Plantings, h.Changes, h.Plan)
	for _, p := range list {
		g.plantings[p.Crop]++
	}
	for _, w := range h.Wants {
		g.wanted[w.Vegetable] = true
		for _, m := range h.Members {
			if m.Group == w.Group {
				g.wanted[m.Vegetable] = true
			}
		}
	}
	return g
}

func cropLine(b *crop.Book, c *crop.Crop, g grown) CropLine {
	l := CropLine{ID: c.ID, Name: c.Name, Plural: c.Plural, Botanical: c.Botanical, Family: c.Family,
		FamilyName: c.FamilyName, Kind: c.Group,
		Vegetable: c.Vegetable, Plantings: g.plantings[c.ID]}
	if c.Uses[0].Feeds() {
		l.OnTable = l.Plantings > 0 || g.wanted[c.Vegetable]
	} else {
		l.Vegetable = ""
	}
	l.Names, l.Search = otherNames(b, c), SearchText(c.Name, c.Plural, c.Botanical, namesIn(b, c.ID))
	for _, u := range c.Uses {
		l.Uses = append(l.Uses, UseName{u.Name, u.Label})
	}
	return l
}

// CropsFound is what a name leads to: one crop with a use, or several crops, or
// none and the nearest names.
type CropsFound struct {
	Crop, Use string   // ids; empty: not one alone
	Several   []string // ids of the crops that share the name or hold it in theirs
	Nearest   []string // names, when no crop answers
}

// FindCrop looks a crop up by any of its names: whole, else by the beginnings of
// its words, else by what is nearest.
func (o *Office) FindCrop(name string) (CropsFound, error) {
	b, err := book()
	if err != nil {
		return CropsFound{}, err
	}
	if c, u, err := b.Find(name); err == nil {
		found := CropsFound{Crop: c.ID}
		if u.Name != c.CommonUse {
			found.Use = u.Name
		}
		return found, nil
	}
	var found CropsFound
	for _, c := range b.Called(name) {
		found.Several = append(found.Several, c.ID)
	}
	if len(found.Several) == 0 {
		found.Several = begunBy(b, name)
	}
	if len(found.Several) == 0 {
		found.Nearest = b.Nearest(name, nearestNames)
	}
	return found, nil
}

// nearestNames is how many names are offered for one that nobody knows.
const nearestNames = 5

// begunBy lists the crops with a name in which every word given begins a word.
func begunBy(b *crop.Book, given string) []string {
	wanted := strings.Fields(strings.ToLower(given))
	if len(wanted) == 0 {
		return nil
	}
	var out []string
	for _, c := range b.Crops() {
		held := strings.Fields(strings.ToLower(SearchText(c.Name, c.Plural, c.Botanical, namesIn(b, c.ID))))
		if !slices.ContainsFunc(wanted, func(w string) bool {
			return !slices.ContainsFunc(held, func(has string) bool { return strings.HasPrefix(has, w) })
		}) {
			out = append(out, c.ID)
		}
	}
	return out
}

// otherNames are a crop's other names as people say them: turned as in "bean,
// scarlet runner", and without those that are its own with a word more.
func otherNames(b *crop.Book, c *crop.Crop) []string {
	own := strings.Fields(strings.ToLower(c.Name))
	var out []string
	for _, n := range b.NamesOf(c.ID) {
		name := n.Text
		if last, first, turned := strings.Cut(name, ", "); turned {
			name = first + " " + last
		}
		has := strings.Fields(strings.ToLower(SearchText(name)))
		if !slices.ContainsFunc(own, func(w string) bool { return !slices.Contains(has, w) && !slices.Contains(has, w+"s") }) {
			continue
		}
		if !slices.ContainsFunc(out, func(known string) bool { return strings.EqualFold(known, name) }) {
			out = append(out, name)
		}
	}
	return out
}

func namesIn(b *crop.Book, id string) string {
	var all []string
	for _, n := range b.NamesOf(id) {
		all = append(all, n.Text)
	}
	return strings.Join(all, " ")
}

// SearchText is the text in which a crop's names are looked for, without marks.
func SearchText(names ...string) string {
	return strings.Join(strings.FieldsFunc(strings.Join(names, " "), func(r rune) bool {
		return r == ' ' || r == ',' || r == '(' || r == ')'
	}), " ")
}
