package leftout

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math"
	"strconv"
)

// Rewrite returns the book's file of defaults with the numbers of the fit to all
// dates, each with what it was pulled toward and how far the fits with a region
// left out lie apart. Other rows stay as they are.
func Rewrite(file []byte, free []Free, folds []Fold) ([]byte, error) {
	rows, err := csv.NewReader(bytes.NewReader(file)).ReadAll()
	if err != nil {
		return nil, err
	}
	for _, row := range rows {
		for i, f := range free {
			if row[0] == f.Scope && row[1] == f.Name && row[2] == f.Parameter {
				copy(row[3:], fittedCells(f, i, folds, row[4]))
			}
		}
	}
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	err = w.WriteAll(rows)
	return b.Bytes(), err
}

// fittedCells are value, unit, source, where, mark and note of a fitted number.
func fittedCells(f Free, i int, folds []Fold, unit string) []string {
	value, low, high := f.Prior, math.Inf(1), math.Inf(-1)
	for _, fold := range folds {
		if fold.LeftOut == "" {
			value = fold.Values[i]
			continue
		}
		low, high = min(low, fold.Values[i]), max(high, fold.Values[i])
	}
	note := fmt.Sprintf("pulled toward %s; %s to %s over the fits with a region left out", short(f.Prior), short(low), short(high))
	return []string{short(value), unit, "own-window-fit", f.Name, "fitted", note}
}

func short(v float64) string { return strconv.FormatFloat(math.Round(v*1000)/1000, 'f', -1, 64) }
