package desk

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/watering"
)

// AwayRound is the way of somebody who waters while you are away and no rain falls.
type AwayRound struct {
	EveryD int        `json:"every_d"` // 0: nobody need come for water
	Days   []cal.Date `json:"days"`
	Stops  []AwayStop `json:"stops"`  // along the route, those that want any
	Thirst []string   `json:"thirst"` // ids of beds that suffer even so
}

// AwayStop is a bed with the litres that it is given on each of the days.
type AwayStop struct {
	Bed    string    `json:"bed"`
	Name   string    `json:"name"`
	Site   string    `json:"site"`
	Kind   string    `json:"kind"`
	Litres []float64 `json:"litres"`
}

// roundOf is the round of every so many days; 0: the most seldom that keeps all beds
// from want.
func roundOf(r *WateringResult, every int) AwayRound {
	out := AwayRound{Days: []cal.Date{}, Stops: []AwayStop{}, Thirst: []string{}}
	wanted := false
	for i := range r.Beds {
		for _, round := range r.Beds[i].Rounds {
			wanted = wanted || !round.Lasts || sumOf(round.GiveL) > 0
		}
	}
	if !wanted {
		return out
	}
	days := watering.EveryDays()
	at := 0
	for k := range days {
		if every == 0 && lastsAll(r, k) || days[k] == every {
			at = k
		}
	}
	out.EveryD = days[at]
	for d := r.Away.Leave + cal.Date(out.EveryD); d < r.Away.Back; d += cal.Date(out.EveryD) {
		out.Days = append(out.Days, d)
	}
	for i := range r.Beds {
		b := &r.Beds[i]
		round := b.Rounds[at]
		if !round.Lasts {
			out.Thirst = append(out.Thirst, b.Bed)
		}
		if sumOf(round.GiveL) > 0 {
			stop := AwayStop{Bed: b.Bed, Name: b.Name, Site: b.Site, Kind: b.Kind, Litres: make([]float64, len(out.Days))}
			for k, litres := range round.GiveL[:min(len(round.GiveL), len(out.Days))] {
				stop.Litres[k] = wholeL(litres)
			}
			out.Stops = append(out.Stops, stop)
		}
	}
	return out
}

// withRound is a result that tells of each bed what the round brings it: the note's own
// figures. The result itself is left as it was, others hold it.
func (r WateringResult) withRound(round *AwayRound) WateringResult {
	brought := map[string]float64{}
	for i := range round.Stops {
		brought[round.Stops[i].Bed] = tenthOf(sumOf(round.Stops[i].Litres))
	}
	away := *r.Away
	away.HelperDryL = 0
	r.Away, r.Beds = &away, slices.Clone(r.Beds)
	for i := range r.Beds {
		b := &r.Beds[i]
		b.HelperDryL = brought[b.Bed]
		away.HelperDryL = tenthOf(away.HelperDryL + b.HelperDryL)
	}
	return r
}

func lastsAll(r *WateringResult, k int) bool {
	for i := range r.Beds {
		if !r.Beds[i].Rounds[k].Lasts {
			return false
		}
	}
	return true
}

func sumOf(values []float64) (sum float64) {
	for _, v := range values {
		sum += v
	}
	return sum
}

// AwayEvery are the rounds that somebody may make: every so many days.
func AwayEvery() []int { return watering.EveryDays() }
