package leftout

import (
	"bytes"
	_ "embed" // the fits that are kept
	"encoding/csv"
	"encoding/hex"
	"strconv"

	"garner/internal/fault"
	"garner/internal/num"
	"garner/internal/printed"
	"garner/internal/table"
	"garner/internal/words"
)

//go:embed data/folds.csv
var foldsFile []byte

// Fold is one fit: to all dates, or to all but those of one region.
type Fold struct {
	LeftOut string    // id of the region; "" when none is left out
	Digest  string    // of the dates and the free numbers it was fitted with
	Values  []float64 // of the free numbers, in their order
}

// Folds reads the fits that are kept. Fits made with other free numbers are
// left out, so that they are made anew.
func Folds(free []Free) ([]Fold, error) { return readFolds(foldsFile, free) }

// foldColumns are the columns of data/folds.csv.
var foldColumns = []string{"left_out", "digest", "scope", "name", "parameter", "value"}

// everyRegion is written where no region is left out.
const everyRegion = "none"

func readFolds(text []byte, free []Free) ([]Fold, error) {
	t, err := table.Read(bytes.NewReader(text), "folds.csv", 4<<20)
	if err != nil {
		return nil, err
	}
	for _, column := range foldColumns {
		if t.Column(column) < 0 {
			return nil, fault.New(fault.Invalid, "leftout.column", words.Args{"column": column}).In(fault.Place{File: "folds.csv", Row: 1, Column: column})
		}
	}
	place := map[string]int{}
	for i, f := range free {
		place[f.Scope+"|"+f.Name+"|"+f.Parameter] = i
	}
	var out []Fold
	filled := map[string]int{}
	index := map[string]int{}
	for r := range t.Rows {
		cell := func(column string) string { return t.Rows[r][t.Column(column)] }
		id := cell("left_out")
		k, known := index[id]
		if !known {
			k = len(out)
			index[id] = k
			out = append(out, Fold{LeftOut: id, Digest: cell("digest"), Values: make([]float64, len(free))})
		}
		v, ok := t.Number(cell("value"))
		if !ok {
			return nil, fault.New(fault.Invalid, "leftout.number", words.Args{"given": cell("value")}).In(t.At(r, "value"))
		}
		if i, ok := place[cell("scope")+"|"+cell("name")+"|"+cell("parameter")]; ok {
			out[k].Values[i] = v
			filled[id]++
		}
	}
	var whole []Fold
	for _, f := range out {
		if filled[f.LeftOut] == len(free) {
			if f.LeftOut == everyRegion {
				f.LeftOut = ""
			}
			whole = append(whole, f)
		}
	}
	return whole, nil
}

// WriteFolds writes fits as the file that Folds reads.
func WriteFolds(free []Free, folds []Fold) []byte {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	_ = w.Write(foldColumns) // a buffer takes all
	for _, f := range folds {
		id := f.LeftOut
		if id == "" {
			id = everyRegion
		}
		for i, n := range free {
			_ = w.Write([]string{id, f.Digest, n.Scope, n.Name, n.Parameter, strconv.FormatFloat(f.Values[i], 'g', -1, 64)})
		}
	}
	w.Flush()
	return b.Bytes()
}

// digest is of all that decides a fit but the crop book, whose growth would
// make every fit stale with each crop that is added.
func digest(dates *printed.PlantingDates, free []Free) string {
	d := num.NewDigester("leftout")
	for _, f := range free {
		d.Text(f.Scope + f.Name + f.Parameter)
		for _, v := range []float64{f.Prior, f.Spread, f.Min, f.Max} {
			d.Float(v)
		}
	}
	for i := range dates.Dates {
		p := &dates.Dates[i]
		d.Text(p.Region + p.Crop + p.Method + p.Season + p.Precision)
		d.Float(float64(p.Start))
		d.Float(float64(p.End))
	}
	sum := d.Sum()
	return hex.EncodeToString(sum[:8])
}
