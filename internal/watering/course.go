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

	rainless bool // no rain counts
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
	g := c.on(i)
	g.IrrigationMM = mm
	return b.Day(c.soil, &c.stands[i], &g)
}

// on is what a day gives.
func (c *course) on(i int) water.Given {
	g := c.given[i]
	if c.rainless {
		g.RainMM = 0
	}
	return g
}

// due is what fills the ground on a day on which the crop would come to want [mm].
func (c *course) due(b *water.Balance, i int) float64 {
	g := c.on(i)
	return b.DueMM(c.soil, &c.stands[i], &g)
}

// lately is what the days before told.
type lately struct {
	read    cal.Date // the last reading; None: there was none
	movedMM float64  // by how much less it left missing
	lostL   float64  // in the seven days before
}

// past is the balance on the morning of a day, with what the records tell of that day
// itself: watered whenever it was due until the records tell, and as they tell from
// then on, and moved by what was read in the morning of a day.
func (c *course) past(t *outlook.Tract, told *given, today int) (b water.Balance, l lately) {
	since, readings := told.since(t), told.read[t.Bed.ID]
	l.read = cal.None
	for i := range min(today+1, len(c.stands)) {
		on := c.first + cal.Date(i)
		if list := readings[on]; len(list) > 0 {
			l.read, l.movedMM = on, 0
			for _, left := range list {
				l.movedMM += b.Correct(c.soil, &c.stands[i], left)
			}
		}
		if i == today {
			b.Reach(&c.stands[i])
			b.Water(c.recorded(t, told, &b, i))
			break
		}
		mm := 0.0
		if since.IsSet() && on >= since {
			mm = c.recorded(t, told, &b, i)
		} else {
			mm = c.due(&b, i)
		}
		f := c.day(&b, i, mm)
		if i >= today-weekDays {
			l.lostL += f.LostMM() * c.areaM2[i]
		}
	}
	return b, l
}

// recorded is what the records tell that a tract was given on a day [mm]; without an
// amount, what filled it.
func (c *course) recorded(t *outlook.Tract, told *given, b *water.Balance, i int) float64 {
	mm, filled := told.to(t, c.first+cal.Date(i), c.areaM2[i])
	if filled {
		b.Reach(&c.stands[i])
		mm = max(mm, b.MissingMM)
	}
	return mm
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
