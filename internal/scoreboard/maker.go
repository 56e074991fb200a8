package scoreboard

import (
	"embed"
	"garner/internal/table"
	"io/fs"
	"math"
	"slices"
	"strings"

	"garner/internal/calibrate"
	"garner/internal/crop"
	"garner/internal/fault"
	"garner/internal/words"
)

// published are the figures the engine is held against: numbers with the key of
// their work and how they were got (data/README.md).
//
//go:embed data
var published embed.FS

// maker holds what the sections share.
type maker struct {
	book     *crop.Book
	workers  int
	data     fs.FS
	works    map[string]string // citation by key
	harvests []calibrate.Harvest
	home     *garden
}

func newMaker(book *crop.Book, workers int) (*maker, error) {
	data, err := fs.Sub(published, "data")
	if err != nil {
		return nil, &fault.Error{Kind: fault.Internal, Phrase: words.P("scoreboard.data", nil), Err: err}
	}
	m := &maker{book: book, workers: workers, data: data, works: map[string]string{}}
	c, err := table.OpenCells(data, "works.csv", "key", "citation")
	if err != nil {
		return nil, err
	}
	for i := range c.Rows {
		m.works[c.Text(i, "key")] = c.Text(i, "citation")
	}
	return m, nil
}

// work is the citation of a key; a source that is no key is its own citation.
func (m *maker) work(key string) string {
	if citation, ok := m.works[key]; ok {
		return citation
	}
	return key
}

// grown are the reference plantings, grown once.
func (m *maker) grown() ([]calibrate.Harvest, error) {
	if m.harvests == nil {
		var err error
		if m.harvests, err = calibrate.Harvests(m.book); err != nil {
			return nil, err
		}
	}
	return m.harvests, nil
}

// find resolves a printed crop name, without what stands in brackets if need be,
// and a use of it; nil when the book has none.
func (m *maker) find(name, use string) *crop.Use {
	short, _, _ := strings.Cut(name, " (")
	for _, n := range []string{name, short, strings.Split(short, "/")[0]} {
		c, u, err := m.book.Find(n)
		if err != nil {
			continue
		}
		if use == "" {
			return u
		}
		if u, err = c.Use(use); err == nil {
			return u
		}
		return nil
	}
	return nil
}

// span reads the two ends of a published range; a blank end is open.
func span(c *table.Cells, row int, low, high string) Span {
	s := Span{math.Inf(-1), math.Inf(1)}
	if c.Text(row, low) != "" {
		s.Low = c.Within(row, low, -1e6, 1e6)
	}
	if c.Text(row, high) != "" {
		s.High = c.Within(row, high, -1e6, 1e6)
	}
	return s
}

// hulls gathers published ranges of the same thing from several sources, in the
// order in which they were first met. Rows that were read are kept apart from
// those that were not.
type hulls struct {
	at    map[string]int
	lines []Line
}

// add widens the hull of a key, or begins it.
func (h *hulls) add(key string, l Line) {
	key += "|" + l.Mark
	if h.at == nil {
		h.at = map[string]int{}
	}
	i, ok := h.at[key]
	if !ok {
		h.at[key] = len(h.lines)
		h.lines = append(h.lines, l)
		return
	}
	known := &h.lines[i]
	known.Published = known.Published.join(l.Published)
	for _, s := range l.Sources {
		if !slices.Contains(known.Sources, s) {
			known.Sources = append(known.Sources, s)
		}
	}
}
