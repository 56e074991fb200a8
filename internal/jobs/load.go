package jobs

import (
	"embed"
	"io/fs"
	"slices"
	"sync"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/table"
	"garner/internal/words"
)

//go:embed data/*.csv
var data embed.FS

// kindFacts is what is known of a kind of work.
type kindFacts struct {
	before, after                               cal.Date // days before and after its best day on which it still makes sense
	minutes, perM2, perM, perPlant, perKg, perL float64
	litresM2                                    float64 // it takes, of what is no water for the bed [L/m2]
	tools                                       []string
	who                                         Who
	dry, still                                  bool // it waits for a dry day, for one without wind
	barred                                      Barred
	instead                                     Kind   // what is done where a site does not allow it
	round                                       bool   // it is done at all its places in one go
	asked                                       string // the work under which it is asked after; empty: it is told until it is too late
	rank                                        int
}

// careRule is care of plantings.
type careRule struct {
	id                                     string
	kind                                   Kind
	crops, groups, uses, methods, patterns []string
	sky                                    string // open: not under a cover that day; empty: anywhere
	anchor                                 string
	offset                                 cal.Date
	every                                  int // 0: once
	until                                  string
	untilOffset                            cal.Date
	from, to                               int  // days of the year in the north; 0: all of it
	byRow                                  bool // its minutes go by the metres of row, not by plants and ground
	why                                    string
}

// groundRule is care of beds, covers and sites.
type groundRule struct {
	id           string
	kind         Kind
	at           string
	beds, covers []string
	need         string
	every        int // 0: once a year
	from, to     int
	why          string
}

// pickRule is how often a crop is picked.
type pickRule struct {
	crops, groups, patterns []string
	every                   int
}

// countRule is how often a store of some methods is counted.
type countRule struct {
	methods []string
	every   int
}

// toolFacts is a tool that a site may not allow and what takes its place.
type toolFacts struct {
	barred  Barred
	instead string
	times   float64 // as long as with what it takes the place of
}

type facts struct {
	limits limits
	kinds  map[Kind]kindFacts
	order  []Kind
	tools  map[string]toolFacts
	care   []careRule
	ground []groundRule
	picks  []pickRule
	stores []countRule
}

var known = sync.OnceValues(func() (*facts, error) { return read(data) })

// The names that the columns of the data may hold.
var (
	anchors  = []string{"raised", "planted", "emerged", "ready", "pick", "over", "lifted", "calendar"}
	ends     = []string{"", "planted", "emerged", "ready", "pick", "over"}
	skies    = []string{"", "open"}
	grounds  = []string{"bed", "cover", "site"}
	needs    = []string{"standing", "any"}
	patterns = []string{string(crop.Pull), string(crop.Picking), string(crop.Cut), string(crop.LeafThenHead), string(crop.Perennial), string(crop.GroundCover)}
	barred   = []string{"", string(Fires), string(Hoses), string(Heights)}
	weathers = []string{"dry", "still"}
	counted  = []string{"", "row"}
	yes      = []string{"", "yes"}
)

// loader reads the package's files and gathers what is wrong with them.
type loader struct {
	*facts
	files fs.FS
}

// read reads a folder of data strictly: every column is there, every name is known,
// every number lies within its range.
func read(files fs.FS) (*facts, error) {
	l := loader{&facts{kinds: map[Kind]kindFacts{}, tools: map[string]toolFacts{}}, files}
	for _, part := range []func() error{l.readTools, l.readKinds, l.readLimits, l.readCare, l.readGround, l.readPicks, l.readStores} {
		if err := part(); err != nil {
			return nil, err
		}
	}
	return l.facts, nil
}

// open opens a file with its own columns and those that say where a row comes from.
func (l loader) open(name string, columns ...string) (*table.Cells, error) {
	return table.OpenCells(l.files, "data/"+name+".csv", append(columns, "source", "mark", "where")...)
}

// oneOf refuses a cell that is not of a list.
func oneOf(c *table.Cells, row int, column string, allowed []string) string {
	text := c.Text(row, column)
	if !slices.Contains(allowed, text) {
		c.Refuse(row, column, "jobs.data_name", words.Args{"value": text, "allowed": allowed})
	}
	return text
}

// each refuses entries of a cell that are not of a list.
func each(c *table.Cells, row int, column string, allowed []string) []string {
	list := c.List(row, column)
	for _, entry := range list {
		if !slices.Contains(allowed, entry) {
			c.Refuse(row, column, "jobs.data_name", words.Args{"value": entry, "allowed": allowed})
		}
	}
	return list
}

// once refuses a name that stands in two rows.
func once(c *table.Cells, row int, column string, seen map[string]bool) string {
	text := c.Text(row, column)
	if text == "" || seen[text] {
		c.Refuse(row, column, "jobs.data_twice", words.Args{"value": text})
	}
	seen[text] = true
	return text
}

func whole(c *table.Cells, row int, column string, from, to float64) int {
	return int(c.Within(row, column, from, to))
}

func days(c *table.Cells, row int, column string, from, to float64) cal.Date {
	return cal.Date(whole(c, row, column, from, to))
}

func (l loader) kindNames() []string {
	names := make([]string, len(l.order))
	for i, k := range l.order {
		names[i] = string(k)
	}
	return names
}
