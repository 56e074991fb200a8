package rotation

import (
	"embed"
	"io/fs"
	"slices"
	"strings"
	"sync"

	"garner/internal/crop"
	"garner/internal/near"
	"garner/internal/table"
)

//go:embed data/*.csv
var data embed.FS

// Problem is a disease or pest that stays in the ground.
type Problem struct {
	ID     string
	Name   string // as a gardener says it, within a sentence
	Cause  string
	Hosts  []string // families and ids of crops
	Source string   // key of a source of the crop book
	Mark   string
}

// Interval is a published time between hosts of a problem.
type Interval struct {
	Problem   string
	Crops     []string // families and ids of the crops it is told of
	Across    []string // crops of other families that count as hosts every year
	YearsLow  int      // 99: never again
	YearsHigh int      // 0: no upper end
	Kind      string   // rest, partial, lasts
	Source    string   // key of a source of the crop book
	Mark      string
	Where     string
}

// The kinds of interval.
const (
	rest    = "rest"    // recommended
	partial = "partial" // brought a part of the good
	lasts   = "lasts"   // how long the disease lives without hosts
)

// facts are the data of the package; they never change.
type facts struct {
	problems  []Problem
	intervals []Interval
}

// known reads the data once.
var known = sync.OnceValues(func() (*facts, error) { return read(data) })

func read(files fs.FS) (*facts, error) {
	var f facts
	p, err := table.OpenCells(files, "data/problems.csv", "id", "name", "cause", "hosts", "source", "mark")
	if err != nil {
		return nil, err
	}
	for r := range p.Rows {
		f.problems = append(f.problems, Problem{p.Text(r, "id"), p.Text(r, "name"), p.Text(r, "cause"), p.List(r, "hosts"), p.Text(r, "source"), p.Text(r, "mark")})
	}
	i, err := table.OpenCells(files, "data/intervals.csv", "problem", "crops", "across", "years_low", "years_high", "kind", "source", "mark", "where")
	if err != nil {
		return nil, err
	}
	for r := range i.Rows {
		high := 0
		if i.Text(r, "years_high") != "" {
			high = int(i.Within(r, "years_high", 1, never))
		}
		f.intervals = append(f.intervals, Interval{i.Text(r, "problem"), i.List(r, "crops"), i.List(r, "across"),
			int(i.Within(r, "years_low", 1, never)), high, i.Text(r, "kind"), i.Text(r, "source"), i.Text(r, "mark"), i.Text(r, "where")})
	}
	return &f, i.Err()
}

// never is the number of years that stands for never again.
const never = 99

// Problems are the diseases and pests that can be recorded, by name.
func Problems() []Problem {
	f, err := known()
	if err != nil {
		return nil
	}
	out := slices.Clone(f.problems)
	slices.SortFunc(out, func(a, b Problem) int { return strings.Compare(strings.ToLower(a.Name), strings.ToLower(b.Name)) })
	return out
}

// Find returns a problem by its id or name, however its words are joined. When
// there is none it returns the nearest id, empty when none is near.
func Find(given string) (p Problem, nearest string, ok bool) {
	f, err := known()
	if err != nil {
		return Problem{}, "", false
	}
	var names []string
	ids := map[string]string{}
	for _, p := range f.problems {
		if plain(given) == plain(p.ID) || plain(given) == plain(p.Name) {
			return p, "", true
		}
		names = append(names, p.ID, p.Name)
		ids[p.ID], ids[p.Name] = p.ID, p.ID
	}
	if found := near.Names(given, names, 1); len(found) > 0 {
		nearest = ids[found[0]]
	}
	return Problem{}, nearest, false
}

func plain(s string) string {
	return strings.NewReplacer("-", "", " ", "", "_", "").Replace(strings.ToLower(s))
}

// Strikes tells whether a crop is a host of the problem.
func (p *Problem) Strikes(c *crop.Crop) bool { return among(p.Hosts, c) }

// among tells whether a list of families and crops holds a crop.
func among(list []string, c *crop.Crop) bool {
	return slices.Contains(list, c.ID) || slices.Contains(list, c.Family)
}
