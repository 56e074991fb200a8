package desk

import (
	"math"

	"garner/internal/climate"
	"garner/internal/crop"
	"garner/internal/holding"
	"garner/internal/larder"
)

// startStore is a store that most households can make, with how it follows the
// weather outside: so many degrees above the coldest month and below the
// warmest, within bounds. All judgement.
type startStore struct {
	id, method, name  string
	aboveC, belowC    float64
	leastC, mostC     float64 // in winter
	coolestC, warmest float64 // in summer [C]
	capacityKg        float64 // of each eater
}

var startStores = []startStore{
	{"shed", "cool shed", "desk.start_store_shed", 3, 4, 3, 14, 10, 24, 30},
	{"sand", "damp sand", "desk.start_store_sand", 2, 6, 2, 12, 8, 20, 20},
	{"strings", "hung", "desk.start_store_hung", 5, 3, 4, 16, 12, 26, 15},
}

// storeWhatKeeps gives every planting that is lifted at its end the store in
// which it keeps longest, and the holding the stores that are used.
func storeWhatKeeps(h *holding.Holding, b *crop.Book) {
	used := map[string]bool{}
	for i := range h.Plantings {
		p := &h.Plantings[i]
		if c, ok := b.Crop(p.Crop); ok {
			if u, err := c.Use(p.Use); err == nil {
				p.Store = storeFor(u)
				used[p.Store] = true
			}
		}
	}
	for _, s := range startStores {
		if used[s.id] {
			h.Stores = append(h.Stores, s.in(h.Weather[0].Normals, h.Eaters))
		}
	}
}

// storeFor returns the id of the store in which a use keeps longest; empty when
// it is not lifted, or keeps in none.
func storeFor(u *crop.Use) string {
	best, days := "", 0.0
	if u.LiftAtEnd == 0 {
		return best
	}
	for _, s := range startStores {
		for _, row := range u.Storage {
			if row.Method == s.method && row.LifeDays > days {
				best, days = s.id, row.LifeDays
			}
		}
	}
	return best
}

// in returns the store at a place and for a number of eaters.
func (s *startStore) in(n *climate.Normals, eaters float64) larder.Store {
	coldest, warmest := math.Inf(1), math.Inf(-1)
	for _, m := range n {
		mean := (m.TMinC + m.TMaxC) / 2
		coldest, warmest = math.Min(coldest, mean), math.Max(warmest, mean)
	}
	winter := math.Max(s.leastC, math.Min(s.mostC, coldest+s.aboveC))
	summer := math.Max(s.coolestC, math.Min(s.warmest, warmest-s.belowC))
	return larder.Store{ID: s.id, Name: inWords(s.name), Method: s.method, WinterC: tenthOf(winter),
		SummerC: tenthOf(math.Max(winter, summer)), CapacityKg: math.Ceil(s.capacityKg * eaters)}
}
