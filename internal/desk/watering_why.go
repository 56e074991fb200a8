package desk

import (
	"cmp"
	"slices"

	"garner/internal/cal"
	"garner/internal/holding"
	"garner/internal/place"
	"garner/internal/record"
	"garner/internal/watering"
)

// bedsOnRoute is the place of each bed on the walking route, by id: by site, by its
// order there, then by id.
func bedsOnRoute(h *holding.Holding) map[string]int {
	sites := map[string]int{}
	for i := range h.Sites {
		sites[h.Sites[i].ID] = i
	}
	beds := slices.Clone(h.Beds)
	slices.SortStableFunc(beds, func(a, b place.Bed) int {
		return cmp.Or(cmp.Compare(sites[a.Site], sites[b.Site]), cmp.Compare(a.Order, b.Order), cmp.Compare(a.ID, b.ID))
	})
	at := map[string]int{}
	for i := range beds {
		at[beds[i].ID] = i
	}
	return at
}

// tell adds what the holding tells of a bed: its name and sort, what was recorded, how
// far the weather of its site is known.
func (b *BedThirst) tell(h *holding.Holding, now cal.Date) {
	for i := range h.Beds {
		bed := &h.Beds[i]
		if bed.ID != b.Bed {
			continue
		}
		b.Name, b.Kind, b.Site = cmp.Or(bed.Name, bed.ID), bed.Kind, bed.Site
		if depth, guessed := watering.DepthM(bed); guessed {
			b.Guessed = wholeL(1000 * depth * bed.AreaM2())
		}
		b.Why.KnownTo = dateOrNone(knownTo(h, bed.Site, now))
	}
	b.Why.watered(h, b.Bed, now)
	if b.Why.KnownTo == nil || *b.Why.KnownTo < now-staleDays || b.Why.RainOn != nil && *b.Why.RainOn > *b.Why.KnownTo {
		b.Why.RainOn, b.Why.RainMM = nil, 0 // it is of a year that stands in
	}
}

// knownTo is the last day before today of which the weather of a site is on file.
func knownTo(h *holding.Holding, site string, now cal.Date) cal.Date {
	known := cal.None
	for _, s := range h.Sites {
		w := h.WeatherAt(s) // with what gauges and instruments tell
		if s.ID != site || w == nil || w.Record == nil {
			continue
		}
		for _, d := range w.Record.Days {
			if d.Date < now && d.Date > known {
				known = d.Date
			}
		}
	}
	return known
}

// watered finds the last watering of a bed or of what stands there.
func (w *WaterWhy) watered(h *holding.Holding, bed string, now cal.Date) {
	in := map[string]string{}
	for i := range h.Plantings {
		in[h.Plantings[i].ID] = h.Plantings[i].Bed
	}
	last, litres := cal.None, 0.0
	for i := range h.Records {
		r := &h.Records[i]
		if r.What != record.Watered || r.Date > now || cmp.Or(r.Bed, in[r.Planting]) != bed {
			continue
		}
		switch {
		case !last.IsSet() || r.Date > last:
			last, litres = r.Date, r.Value
		case r.Date == last:
			litres += r.Value
		}
	}
	w.WateredOn, w.WateredL = dateOrNone(last), wholeL(litres)
}
