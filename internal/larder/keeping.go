package larder

import (
	"math"

	"garner/internal/crop"
)

// lookAhead is how far beyond the table lives are followed day by day [d];
// after it the year's mean rate is used. Only the order of eating sees it.
const lookAhead = 366

// wearSlack keeps a life of whole days whole against rounding in the sums.
const wearSlack = 1e-9

// keeping is one crop and use in one store.
type keeping struct {
	crop, use string
	store     int32
	lossShare float64   // lost on preparing
	wear      []float64 // wear[j]: lives used up from day 0 to the start of day j
	yearWear  float64   // lives used up on a mean day of the year
	remain    []float64 // remain[n]: share left after n days of small losses
}

// newKeeping tabulates how a crop keeps in a store over the table's days.
// temperatureC is the store's course from the first day on [C].
func newKeeping(row crop.Storage, of keepingKey, air Humidity, temperatureC []float64, days int) keeping {
	end := len(temperatureC)
	k := keeping{
		crop:      of.crop,
		use:       of.use,
		store:     of.store,
		lossShare: row.LossShare,
		wear:      make([]float64, end+1),
		remain:    make([]float64, days+1),
	}
	for j, at := range temperatureC {
		k.wear[j+1] = k.wear[j] + 1/LifeDays(row, at)
	}
	k.yearWear = (k.wear[end] - k.wear[end-lookAhead]) / lookAhead
	daily := math.Pow(1-row.LossMonth, air.LossFactor(row)/daysInMonth)
	k.remain[0] = 1
	for n := range days {
		k.remain[n+1] = k.remain[n] * daily
	}
	return k
}

// lastDay returns the day on which a lot that lies in the store from the start
// of day from has used up lives (1 is a whole life): the last on which it is
// eaten, counted from the table's first day.
func (k *keeping) lastDay(from int, lives float64) int {
	end := len(k.wear) - 1
	goal := k.wear[from] + lives - wearSlack
	if k.wear[end] < goal {
		days := math.Ceil((goal - k.wear[end]) / k.yearWear)
		return end - 1 + int(min(days, 1<<20))
	}
	low, high := from, end // wear[high] >= goal
	for low < high {
		mid := (low + high) / 2
		if k.wear[mid] >= goal {
			high = mid
		} else {
			low = mid + 1
		}
	}
	return high - 1
}
