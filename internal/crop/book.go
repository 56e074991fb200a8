package crop

import (
	"cmp"
	"maps"
	"slices"
)

// Book is the crop book. It does not change after loading and may be read from
// many places at once.
type Book struct {
	parameters []*Parameter
	index      map[string]int // of parameters by name
	sources    map[string]Source
	cautions   map[string]Caution
	families   map[string]Family // by botanical name
	preparing  map[wayOf][]Preparing
	crops      []*Crop // sorted by name
	byID       map[string]*Crop
	names      names
}

// Caution is a warning that goes with a crop.
type Caution struct {
	Key, Text string
	Source    string // key of a Source
}

// Crops returns the crops sorted by name.
func (b *Book) Crops() []*Crop { return slices.Clone(b.crops) }

// Crop returns the crop with the id.
func (b *Book) Crop(id string) (*Crop, bool) {
	c, ok := b.byID[id]
	return c, ok
}

// Parameters returns what each number of the book means, in the book's order.
func (b *Book) Parameters() []Parameter {
	list := make([]Parameter, len(b.parameters))
	for i, p := range b.parameters {
		list[i] = *p
	}
	return list
}

// Source returns the work behind a source key.
func (b *Book) Source(key string) (Source, bool) {
	s, ok := b.sources[key]
	return s, ok
}

// Sources returns every source sorted by key.
func (b *Book) Sources() []Source {
	list := make([]Source, 0, len(b.sources))
	for _, s := range b.sources {
		list = append(list, s)
	}
	slices.SortFunc(list, func(a, b Source) int { return cmp.Compare(a.Key, b.Key) })
	return list
}

// Caution returns the text behind a caution key.
func (b *Book) Caution(key string) (Caution, bool) {
	c, ok := b.cautions[key]
	return c, ok
}

// Families returns every family of the book sorted by its botanical name, those
// of which it has no crop among them.
func (b *Book) Families() []Family {
	return slices.SortedFunc(maps.Values(b.families), func(x, y Family) int { return cmp.Compare(x.Botanical, y.Botanical) })
}

// parameter returns a parameter by name, nil when there is none.
func (b *Book) parameter(name string) *Parameter {
	if i, ok := b.index[name]; ok {
		return b.parameters[i]
	}
	return nil
}
