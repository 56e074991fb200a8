package record

import (
	"slices"

	"garner/internal/cal"
)

// Units of a record that tell how much of a planting it is about.
const (
	ShareUnit  = "share"
	PlantsUnit = "plants"
	KgUnit     = "kg"
)

// Loss is a share of a planting that is gone from a day on, with the ground it
// held.
type Loss struct {
	On    cal.Date
	Share float64 // of what was there until then, 0-1
	Moved bool    // lifted to go on elsewhere
}

// Losses lists what went of a planting, in order of time and within a day in the
// order of the records. plants is how many were set out, against which records
// in plants are counted; 0 when that is not known, and then such records count
// for nothing. A planting that died or was moved with no amount told is gone as
// a whole; one that is failing with none has lost nothing yet. After all is lost
// nothing more can be.
func Losses(records []Record, planting string, plants float64) []Loss {
	var told []Record
	for _, r := range records {
		if r.Planting == planting && (r.What == Died || r.What == Failing || r.What == Moved) {
			told = append(told, r)
		}
	}
	slices.SortStableFunc(told, func(a, b Record) int { return int(a.Date) - int(b.Date) })
	var out []Loss
	left := 1.0
	for _, r := range told {
		share := r.lost(left, plants)
		if share <= 0 {
			continue
		}
		out = append(out, Loss{On: r.Date, Share: share, Moved: r.What == Moved})
		if left *= 1 - share; left <= 0 {
			break
		}
	}
	return out
}

// lost is the share of what is left that a record takes.
func (r *Record) lost(left, plants float64) float64 {
	switch {
	case r.Unit == ShareUnit:
		return min(1, max(0, r.Value))
	case r.Unit == PlantsUnit && plants <= 0:
		return 0
	case r.Unit == PlantsUnit:
		if gone := r.Value / plants; gone < left-leastLeft {
			return max(0, gone/left)
		}
		return 1
	case r.What == Failing:
		return 0
	}
	return 1
}

// leastLeft is the share of a planting under which counted plants leave none.
const leastLeft = 1e-9

// Left is the share of a planting that is there on a day, 0-1: what is lost on
// the day is gone already.
func Left(losses []Loss, day cal.Date) float64 {
	left := 1.0
	for _, l := range losses {
		if l.On <= day {
			left *= 1 - l.Share
		}
	}
	return left
}

// LostOn is the day from which nothing is left; None while something is.
func LostOn(losses []Loss) cal.Date {
	for _, l := range losses {
		if l.Share >= 1 {
			return l.On
		}
	}
	return cal.None
}
