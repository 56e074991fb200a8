package watering

import (
	"garner/internal/cal"
	"garner/internal/outlook"
	"garner/internal/water"
)

// course is a tract made ready for its balance, day by day.
type course struct {
	first  cal.Date
	soil   *water.Soil
	stands []water.Stand
	given  []water.Given // with nothing watered
	areaM2 []float64
}

// lay makes a tract ready, in the space of the one before.
func (c *course) lay(t *outlook.Tract) error {
	g, err := groundOf(&t.Bed)
	if err != nil {
		return err
	}
	leaves, err := newCanopy(t, g)
	if err != nil {
		return err
	}
	c.first, c.soil = t.First, g.soil
	c.stands, c.given, c.areaM2 = c.stands[:0], c.given[:0], c.areaM2[:0]
	for day := range t.Days {
		air := &t.Days[day]
		on, area := leaves.on(t, day, air)
		c.stands = append(c.stands, on)
		c.areaM2 = append(c.areaM2, area)
		c.given = append(c.given, water.Given{ReferenceMM: air.ReferenceMM, RainMM: air.RainMM, WindMS: air.WindMS, LeastPct: air.LeastPct})
	}
	return nil
}

func (c *course) at(d cal.Date) int { return max(0, min(len(c.given), int(d-c.first))) }

// day takes a balance through a day on which mm are watered.
func (c *course) day(b *water.Balance, i int, mm float64) water.Flux {
	g := c.given[i]
	g.IrrigationMM = mm
	return b.Day(c.soil, &c.stands[i], &g)
}

// due is what fills the ground on a day on which the crop would come to want [mm].
func (c *course) due(b *water.Balance, i int) float64 {
	return b.DueMM(c.soil, &c.stands[i], &c.given[i])
}

// past is the balance on the morning of a day: watered whenever it was due until the
// records tell, and as they tell from then on, and moved by what was read in the
// morning of a day. movedMM is by how much less the last reading left missing.
func (c *course) past(t *outlook.Tract, told *given, today int) (b water.Balance, read cal.Date, movedMM float64) {
	since, readings := told.since(t), told.read[t.Bed.ID]
	read = cal.None
	for i := range today + 1 {
		on := c.first + cal.Date(i)
		if list := readings[on]; len(list) > 0 && i < len(c.stands) {
			read, movedMM = on, 0
			for _, left := range list {
				movedMM += b.Correct(c.soil, &c.stands[i], left)
			}
		}
		if i == today {
			if i < len(c.stands) {
				b.Reach(&c.stands[i])
			}
			break
		}
		mm := 0.0
		if since.IsSet() && on >= since {
			mm = told.to(t, on, c.areaM2[i])
		} else {
			mm = c.due(&b, i)
		}
		c.day(&b, i, mm)
	}
	return b, read, movedMM
}

// keep waters whenever it is due on the days from one up to another, and returns
// the litres that takes, and those that soil and leaves lose.
func (c *course) keep(b *water.Balance, from, to int) (givenL, lostL float64) {
	for i := from; i < min(to, len(c.given)); i++ {
		mm := c.due(b, i)
		f := c.day(b, i, mm)
		givenL += mm * c.areaM2[i]
		lostL += f.LostMM() * c.areaM2[i]
	}
	return givenL, lostL
}

// alone gives nothing from one day up to another, and returns the first on which
// the crop is in want; -1: none.
func (c *course) alone(b water.Balance, from, to int) int {
	for i := from; i < min(to, len(c.given)); i++ {
		if f := c.day(&b, i, 0); f.Stress < 1 {
			return i
		}
	}
	return -1
}
