package jobs

import (
	"cmp"
	"math"
	"slices"

	"garner/internal/holding"
	"garner/internal/place"
)

// walk puts jobs in the order in which they are met on the way: by site, store, raising
// place, the site as a whole, beds by their place on the route, then by kind and day.
func (d *deriver) walk(jobs []Job) {
	slices.SortStableFunc(jobs, func(a, b Job) int {
		return cmp.Or(a.Stop.compare(b.Stop), cmp.Compare(d.kinds[a.Kind].rank, d.kinds[b.Kind].rank), cmp.Compare(a.Best, b.Best), cmp.Compare(a.ID, b.ID))
	})
}

// compare orders stops along the way.
func (s Stop) compare(o Stop) int {
	return cmp.Or(cmp.Compare(s.site, o.site), cmp.Compare(s.Part, o.Part), cmp.Compare(s.Order, o.Order), cmp.Compare(s.Bed, o.Bed), cmp.Compare(s.Store, o.Store))
}

// Leg is a stop with its jobs and the way to it from the stop before.
type Leg struct {
	Stop  Stop
	Works []Work
	WalkM float64 // as the crow flies, where both are drawn on one plan; 0: not known
}

// Route gathers works by stop, along the way.
func Route(h *holding.Holding, works []Work) []Leg {
	var legs []Leg
	var before *place.Bed
	beds := map[string]*place.Bed{}
	for i := range h.Beds {
		beds[h.Beds[i].ID] = &h.Beds[i]
	}
	for _, w := range works {
		if n := len(legs); n == 0 || legs[n-1].Stop != w.Stop {
			leg := Leg{Stop: w.Stop}
			bed := beds[w.Stop.Bed]
			if bed != nil && before != nil && bed.Site == before.Site && bed.At.IsSet() && before.At.IsSet() {
				leg.WalkM = math.Hypot(bed.At.XM-before.At.XM, bed.At.YM-before.At.YM)
			}
			if bed != nil {
				before = bed
			}
			legs = append(legs, leg)
		}
		last := &legs[len(legs)-1]
		last.Works = append(last.Works, w)
	}
	return legs
}
