package draft

import (
	"math"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/larder"
)

// keeping is how a use keeps in one of the household's stores.
type keeping struct {
	store string
	row   crop.Storage
	wear  []float64 // wear[j]: lives used up from the table's first day to the start of day j
}

// wellKept is how long a crop has to keep as it is for nobody to freeze or bottle it
// [d]. judgement.
const wellKept = 60

// keepingOf is how a use keeps where it keeps longest, and as it is sooner than
// preserved when it keeps well so; nil when it keeps nowhere.
func (b *builder) keepingOf(u *crop.Use) *keeping {
	var best *keeping
	for i := range b.Holding.Stores {
		s := &b.Holding.Stores[i]
		if !(s.Holds() > 0) {
			continue
		}
		for _, row := range u.Storage {
			if row.Method == s.Method && row.LifeDays > 0 && (best == nil || better(row, best.row)) {
				best = &keeping{store: s.ID, row: row, wear: wearIn(s, row, b.From, b.Days(), b.northern)}
			}
		}
	}
	return best
}

func better(a, b crop.Storage) bool {
	if larder.Preserves(a.Method) != larder.Preserves(b.Method) {
		asItIs := a
		if larder.Preserves(a.Method) {
			asItIs = b
		}
		return (asItIs.LifeDays >= wellKept) == (asItIs.Method == a.Method)
	}
	return a.LifeDays > b.LifeDays
}

func wearIn(s *larder.Store, row crop.Storage, from cal.Date, days int, northern bool) []float64 {
	out := make([]float64, days+1)
	for j := range days {
		out[j+1] = out[j] + 1/larder.LifeDays(row, s.TemperatureC(from+cal.Date(j), northern))
	}
	return out
}

// until is the first day on which what was brought in on a day is no longer good,
// counted from the table's first day; the number of its days when it outlasts it.
func (k *keeping) until(day int) int {
	end := len(k.wear) - 1
	for j := day + 1; j <= end; j++ {
		if k.wear[j]-k.wear[min(day, end)] > 1 {
			return j - 1
		}
	}
	return end
}

// left is the share that is left of what is brought in to be eaten evenly over some
// days: after preparing, and after the small losses of half of them.
func (k *keeping) left(days int) float64 {
	return (1 - k.row.LossShare) * math.Pow(1-k.row.LossMonth, float64(days)/2/daysMonth)
}
