package watering

import (
	"garner/internal/cal"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/place"
	"garner/internal/record"
	"garner/internal/water"
)

// given are the waterings of the records, by day, of beds and of plantings.
type given struct {
	beds, plantings map[string]map[cal.Date]dose
	planted         map[string]map[cal.Date]float64 // ground that is planted [m2], of beds that were watered as a whole
	read            map[string]map[cal.Date][]water.Left
}

// told gathers what a household has told of its beds' water.
func told(h *holding.Holding, today cal.Date) (given, error) {
	g := givenIn(h.Records, today)
	beds := map[string]*place.Bed{}
	for i := range h.Beds {
		beds[h.Beds[i].ID] = &h.Beds[i]
	}
	for i := range h.Readings {
		r := &h.Readings[i]
		b := beds[r.Bed]
		if b == nil {
			continue
		}
		reading := water.Reading{Way: string(r.Way), Value: r.Value, Felt: r.Felt, Sure: r.Sure}
		left, err := reading.In(water.TextureOf(b.Texture, b.OwnSoil()))
		if err != nil {
			return g, err
		}
		if g.read[r.Bed] == nil {
			g.read[r.Bed] = map[cal.Date][]water.Left{}
		}
		g.read[r.Bed][r.Date] = append(g.read[r.Bed][r.Date], left)
	}
	return g, nil
}

// dose is what was given on a day.
type dose struct {
	litres float64
	filled bool // without an amount: as much as the ground took
}

// givenIn gathers what was watered in the time that the balance looks back on: what
// was recorded in a year before tells nothing of whoever waters now. A record without an
// amount counts as having filled the ground; feed without one, or by weight, was none to
// speak of.
func givenIn(records []record.Record, today cal.Date) given {
	g := given{beds: map[string]map[cal.Date]dose{}, plantings: map[string]map[cal.Date]dose{}, planted: map[string]map[cal.Date]float64{}, read: map[string]map[cal.Date][]water.Left{}}
	for i := range records {
		r := &records[i]
		if r.What != record.Watered && !fedWithWater(r) || r.Date > today || r.Date < today-pastDays {
			continue
		}
		of, id := g.beds, r.Bed
		if r.Planting != "" {
			of, id = g.plantings, r.Planting
		}
		if of[id] == nil {
			of[id] = map[cal.Date]dose{}
		}
		d := of[id][r.Date]
		d.litres += r.Value
		d.filled = d.filled || r.Unit == ""
		of[id][r.Date] = d
	}
	return g
}

// fedWithWater tells whether a record is of feed that came as so many litres.
func fedWithWater(r *record.Record) bool {
	return r.What == record.Fed && r.Value > 0 && r.Unit != record.KgUnit
}

// plant notes the ground of a tract on the days on which its bed was watered.
func (g *given) plant(t *outlook.Tract, c *course) {
	for on := range g.beds[t.Bed.ID] {
		i := int(on - c.first)
		if i < 0 || i >= len(c.areaM2) {
			continue
		}
		if g.planted[t.Bed.ID] == nil {
			g.planted[t.Bed.ID] = map[cal.Date]float64{}
		}
		g.planted[t.Bed.ID][on] += c.areaM2[i]
	}
}

// to tells the litres on a square metre of a tract on a date [mm]: what was given to
// its plantings, and its share of what was given to the bed, spread over the ground that
// is planted; over all of it where nothing is. Or it was filled.
func (g *given) to(t *outlook.Tract, on cal.Date, areaM2 float64) (mm float64, filled bool) {
	whole := g.planted[t.Bed.ID][on]
	if whole <= 0 {
		whole = t.Bed.AreaM2()
	}
	bed := g.beds[t.Bed.ID][on]
	if whole > 0 {
		mm = bed.litres / whole
	}
	filled = bed.filled
	if areaM2 <= 0 {
		return mm, filled
	}
	for i := range t.Growing {
		own := g.plantings[t.Growing[i].Planting.ID][on]
		mm += own.litres / areaM2
		filled = filled || own.filled
	}
	return mm, filled
}

// since is the first day from which the records tell what a tract was given; None
// where they do not.
func (g *given) since(t *outlook.Tract) cal.Date {
	first := cal.None
	see := func(days map[cal.Date]dose) {
		for on := range days {
			if !first.IsSet() || on < first {
				first = on
			}
		}
	}
	see(g.beds[t.Bed.ID])
	for i := range t.Growing {
		see(g.plantings[t.Growing[i].Planting.ID])
	}
	return first
}
