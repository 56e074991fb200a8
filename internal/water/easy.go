package water

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
	"sync"

	"garner/internal/fault"
	"garner/internal/words"
)

//go:embed data/easy.csv
var easyCSV string

// usualEasy is the share of crops that no table tells. judgement: the middle of the
// vegetables of FAO-56 Table 22.
const usualEasy = 0.4

var easies = sync.OnceValues(func() (map[string]float64, error) { return readEasies(easyCSV) })

// EasyOf returns the share of the water within reach that a crop of the book takes
// without want, on a day on which 5 mm are lost (p).
//
// Source: data/easy.csv, FAO-56 Table 22.
func EasyOf(crop string) (float64, error) {
	all, err := easies()
	if err != nil {
		return 0, &fault.Error{Kind: fault.Internal, Phrase: words.P("water.data_unreadable", nil), Err: err}
	}
	if share, known := all[crop]; known {
		return share, nil
	}
	return usualEasy, nil
}

func readEasies(text string) (map[string]float64, error) {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		return nil, err
	}
	out := map[string]float64{}
	for i, row := range rows[1:] {
		share, err := strconv.ParseFloat(row[1], 64)
		if err != nil || share < 0.1 || share > 0.8 || row[2] == "" || row[3] == "" {
			return nil, fmt.Errorf("easy.csv row %d: %s cannot be", i+2, row[0])
		}
		out[row[0]] = share
	}
	return out, nil
}
