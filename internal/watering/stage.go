package watering

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
	"sync"

	"garner/internal/crop"
	"garner/internal/fault"
	"garner/internal/growth"
	"garner/internal/outlook"
	"garner/internal/words"
)

//go:embed data/at_stake.csv
var stakesCSV string

// stageWeights are how much heavier than in the mean of its season a crop's want of
// water weighs at a stage.
var stageWeights = sync.OnceValues(func() (map[string]float64, error) {
	rows, err := csv.NewReader(strings.NewReader(stakesCSV)).ReadAll()
	if err != nil {
		return nil, err
	}
	out := map[string]float64{}
	for i, row := range rows[1:] {
		weight, err := strconv.ParseFloat(row[1], 64)
		if err != nil || weight <= 0 || row[2] == "" || row[3] == "" {
			return nil, fmt.Errorf("at_stake.csv row %d: %s cannot be", i+2, row[0])
		}
		out[row[0]] = weight
	}
	return out, nil
})

func weightsOfStages() (map[string]float64, error) {
	out, err := stageWeights()
	if err != nil {
		err = &fault.Error{Kind: fault.Internal, Phrase: words.P("water.data_unreadable", nil), Err: err}
	}
	return out, err
}

// From so much of the way to its first use a crop that is picked for fruit or pods
// flowers, and one that is pulled fills its root, bulb or head. judgement.
const (
	flowersFrom = 0.7
	fillsFrom   = 0.6
)

// stageOf names the stage of a planting on a day; "" where it has no leaves yet, or
// no more.
func stageOf(u *crop.Use, d *outlook.GrowingDay) string {
	switch d.Stage {
	case growth.Waiting, growth.Germinating, growth.Over, growth.Dead:
		return ""
	case growth.Young:
		return "young"
	case growth.Resting:
		return "resting"
	}
	ready := d.Stage == growth.Ready
	switch u.Pattern {
	case crop.Picking:
		return ofFruit(d.Development, ready)
	case crop.Pull:
		return ofRoot(d.Development, ready)
	case crop.GroundCover:
		return "growing"
	}
	return "leafy"
}

func ofFruit(development float64, ready bool) string {
	switch {
	case ready:
		return "filling"
	case development >= flowersFrom:
		return "flowering"
	}
	return "growing"
}

func ofRoot(development float64, ready bool) string {
	switch {
	case ready:
		return "ripening"
	case development >= fillsFrom:
		return "filling"
	}
	return "growing"
}
