package shade

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"

	"garner/internal/place"
)

//go:embed data/through.csv
var throughCSV string

// marks say how a number was come by.
var marks = []string{"seen", "memory", "judgement"}

// through is what usually comes through a kind of thing, as a share of the
// light; of a tree, on a way as long as its crown is wide in the mean.
type through struct {
	leaf, bare float64
	drops      bool // it drops its leaves
}

// usual reads the data once; it never changes afterwards.
var usual = sync.OnceValues(func() (map[place.FeatureKind]through, error) { return readUsual(throughCSV) })

// readUsual refuses a number without source and mark or outside 0-1.
func readUsual(text string) (map[place.FeatureKind]through, error) {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		return nil, err
	}
	out := map[place.FeatureKind]through{}
	for i, row := range rows[1:] {
		kind, name, source, mark := place.FeatureKind(row[0]), row[1], row[4], row[5]
		value, err := strconv.ParseFloat(row[2], 64)
		if err != nil || !(value >= 0 && value <= 1) || row[3] != "1" || source == "" || !slices.Contains(marks, mark) {
			return nil, fmt.Errorf("through.csv row %d: no share with source and mark", i+2)
		}
		t := out[kind]
		switch name {
		case "through_leaf":
			t.leaf = value
		case "through_bare":
			t.bare, t.drops = value, true
		default:
			return nil, fmt.Errorf("through.csv row %d: no such number: %q", i+2, name)
		}
		out[kind] = t
	}
	return out, nil
}
