package cover

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"

	"garner/internal/fault"
	"garner/internal/words"
)

//go:embed data/sides.csv
var sidesCSV string

// openSided are the covers with a closed top and open sides, read once: what
// data/sides.csv changes of the closed ones.
var openSided = sync.OnceValues(func() (map[Kind]*Cover, error) {
	covers, err := book()
	if err != nil {
		return nil, err
	}
	return readSides(covers, sidesCSV)
})

// Of returns the cover of a spell: with open sides where the spell has them and
// the kind can have them (a closed top sheds the rain and lets the light through
// as ever; air and wind pass below). Other kinds are as they are.
func Of(s Spell) (*Cover, error) {
	if s.Sides == OpenSided {
		covers, err := openSided()
		if err != nil {
			return nil, &fault.Error{Kind: fault.Internal, Phrase: words.P("cover.data_unreadable", nil), Err: err}
		}
		if c := covers[s.Kind]; c != nil {
			return c, nil
		}
	}
	return Lookup(s.Kind)
}

// CanOpen tells whether a kind of cover can have open sides.
func CanOpen(kind Kind) bool {
	covers, err := openSided()
	return err == nil && covers[kind] != nil
}

// Barrier returns the width of the gaps of the cover of a spell [mm], its own
// when it is told, and whether it keeps out what is wider.
func (s Spell) Barrier() (meshMM float64, keepsOut bool) {
	c, err := Of(s)
	if err != nil {
		return 0, false
	}
	meshMM, keepsOut = c.Barrier()
	if keepsOut && s.MeshMM > 0 {
		meshMM = s.MeshMM
	}
	return meshMM, keepsOut
}

// readSides makes covers with open sides from closed ones: numbers are taken
// times a share, or to a value.
func readSides(closed map[Kind]*Cover, text string) (map[Kind]*Cover, error) {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		return nil, err
	}
	out := map[Kind]*Cover{}
	for i, row := range rows[1:] {
		kind := Kind(row[0])
		from := closed[kind]
		if from == nil || from.open || from.outer != nil {
			return nil, fmt.Errorf("sides.csv row %d: no cover %q that could be opened", i+2, kind)
		}
		if out[kind] == nil {
			own := *from
			out[kind] = &own
		}
		if err := out[kind].own.change(row); err != nil {
			return nil, fmt.Errorf("sides.csv row %d: %w", i+2, err)
		}
		out[kind].light, out[kind].rain = out[kind].own.lightShare, out[kind].own.rainShare
	}
	return out, nil
}

// change changes one number as a row of data/sides.csv says.
func (f *facts) change(row []string) error {
	name, how, unit, source, mark := row[1], row[2], row[4], row[5], row[6]
	i := slices.IndexFunc(columns, func(c column) bool { return c.name == name })
	if i < 0 || columns[i].room {
		return fmt.Errorf("no such number: %q", name)
	}
	if source == "" || !slices.Contains(marks, mark) {
		return fmt.Errorf("%s has no source or mark", name)
	}
	value, err := strconv.ParseFloat(row[3], 64)
	if err != nil {
		return fmt.Errorf("%s is %q", name, row[3])
	}
	at := columns[i].into(f)
	switch {
	case how == "times" && unit == "1":
		value *= *at
	case how != "to" || unit != columns[i].unit:
		return fmt.Errorf("%s is changed by %q in %q", name, how, unit)
	}
	if !(value >= columns[i].low && value <= columns[i].high) {
		return fmt.Errorf("%s comes to %v, not within %v to %v", name, value, columns[i].low, columns[i].high)
	}
	*at = value
	return nil
}
