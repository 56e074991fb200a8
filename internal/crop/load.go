package crop

import (
	"cmp"
	"embed"
	"io/fs"
	"slices"

	"garner/internal/fault"
)

//go:embed data
var data embed.FS

// Load reads the book that is built in. It is parsed anew on each call: keep
// what it returns.
func Load() (*Book, error) {
	root, err := fs.Sub(data, "data")
	if err != nil {
		return nil, err
	}
	book, faults := LoadFrom(root)
	if len(faults) > 0 {
		return book, faults
	}
	return book, nil
}

// LoadFrom reads a book from a folder and checks all of it. Each fault tells
// file, row and column; what is not at fault is loaded all the same. A use that
// lacks a number it needs, or whose numbers contradict each other, is told and
// left out.
func LoadFrom(fsys fs.FS) (*Book, fault.List) {
	l := &loader{fsys: fsys, book: &Book{
		index:     map[string]int{},
		sources:   map[string]Source{},
		cautions:  map[string]Caution{},
		families:  map[string]Family{},
		preparing: map[wayOf][]Preparing{},
		byID:      map[string]*Crop{},
	}, rows: map[string]row{}, like: map[string]likeness{}, refused: map[told]bool{}}
	l.loadParameters()
	l.loadSources()
	l.loadCautions()
	l.loadFamilies()
	defaults := l.loadDefaults()
	l.loadCrops()
	uses := l.loadUses()
	l.loadLike()
	l.resolve(uses, defaults, l.withFitted(l.loadFacts()))
	l.loadStorage()
	l.loadPreparing()
	l.loadNames()
	l.settle()
	l.book.names.live()
	slices.SortStableFunc(l.faults, func(a, b *fault.Error) int {
		return cmp.Or(cmp.Compare(a.At.File, b.At.File), cmp.Compare(a.At.Row, b.At.Row))
	})
	return l.book, l.faults
}

// settle drops uses without numbers and crops without uses, and sorts the rest.
func (l *loader) settle() {
	b := l.book
	b.crops = slices.DeleteFunc(b.crops, func(c *Crop) bool {
		c.Uses = slices.DeleteFunc(c.Uses, func(u *Use) bool { return u.resolved == nil })
		if len(c.Uses) == 0 {
			delete(b.byID, c.ID)
			return true
		}
		if !slices.ContainsFunc(c.Uses, func(u *Use) bool { return u.Name == c.CommonUse }) {
			c.CommonUse = c.Uses[0].Name
		}
		return false
	})
	slices.SortFunc(b.crops, func(x, y *Crop) int { return cmp.Compare(x.Name, y.Name) })
}
