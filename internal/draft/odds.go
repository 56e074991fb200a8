package draft

import (
	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/outlook"
)

// LeastOdds are the odds of a usable crop below which nothing is drafted.
const LeastOdds = leastOdds

// Odds tell how likely a sowing that was tried gives a usable crop, as a draft judges
// it; 0 where the soil is too cold for it to be sown. northern says in which half of
// the year it is cold.
func Odds(t *outlook.Tried, u *crop.Use, date cal.Date, northern bool) float64 {
	b := builder{northern: northern}
	return b.fares(t, u, date)
}

// Closer tells whether a use stands closer than what is planted out, and is sown.
func Closer(u *crop.Use) bool { return u.PlantsPerM2() > mostPlants }
