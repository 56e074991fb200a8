package water

import (
	_ "embed"
	"fmt"
	"sync"
)

//go:embed data/response.csv
var responseCSV string

// usualResponse is that of crops that no table tells (FAO-56, page 177: for many crops
// it is nearly 1, and 1 may be used).
const usualResponse = 1

var responses = sync.OnceValues(func() (map[string]float64, error) {
	out := map[string]float64{}
	err := eachRow(responseCSV, 1, func(crop string, v []float64) bool {
		out[crop] = v[0]
		return v[0] >= 0.5 && v[0] <= 1.5
	})
	if err != nil {
		return nil, fmt.Errorf("response.csv %w", err)
	}
	return out, nil
})

// ResponseOf returns how a crop's yield answers to want of water over its whole season
// (Ky): the share of yield lost for the share of water missed.
//
// Source: data/response.csv, FAO-56 Table 24, after FAO Irrigation and Drainage Paper 33.
func ResponseOf(crop string) (float64, error) {
	all, err := responses()
	if err != nil {
		return 0, unreadableData(err)
	}
	if k, known := all[crop]; known {
		return k, nil
	}
	return usualResponse, nil
}
