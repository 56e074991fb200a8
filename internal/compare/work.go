package compare

import (
	"embed"
	"io/fs"
	"sync"

	"garner/internal/fault"
	"garner/internal/table"
	"garner/internal/words"
)

//go:embed data/work.csv
var data embed.FS

// Number is one number of the work, with where it comes from.
type Number struct {
	Name                string
	Value               float64
	Unit                string
	Source, Mark, Where string
}

// The numbers that are not named for a method of storing.
const (
	tend    = "tend"    // [h/m2 and year]
	pick    = "pick"    // [h/kg]
	kitchen = "kitchen" // [h/kg] by any method without a number of its own
)

// work is the numbers by name; it never changes.
type work map[string]Number

var known = sync.OnceValues(func() (work, error) { return readWork(data) })

// readWork reads the numbers. The error is of the package's own data.
func readWork(files fs.FS) (work, error) {
	w := work{}
	t, err := table.OpenCells(files, "data/work.csv", "name", "value", "unit", "low", "high", "source", "mark", "where")
	if err != nil {
		return nil, err
	}
	for r := range t.Rows {
		low, high := t.Within(r, "low", 0, 1e3), t.Within(r, "high", 0, 1e3)
		n := Number{t.Text(r, "name"), t.Within(r, "value", low, high), t.Text(r, "unit"), t.Text(r, "source"), t.Text(r, "mark"), t.Text(r, "where")}
		w[n.Name] = n
	}
	if err := t.Err(); err != nil {
		return nil, err
	}
	for _, name := range []string{tend, pick, kitchen} {
		if _, ok := w[name]; !ok {
			return nil, fault.New(fault.Internal, "compare.number_missing", words.Args{"name": name})
		}
	}
	return w, nil
}

// storing is the kitchen's work for a kilogram put away by a method [h/kg].
func (w work) storing(method string) float64 {
	if n, ok := w[method]; ok && method != tend && method != pick {
		return n.Value
	}
	return w[kitchen].Value
}
