package watering

import (
	"garner/internal/cal"
	"garner/internal/water"
)

// Level is how full the ground within reach of the roots is on a morning [mm, which
// is litres on a square metre].
type Level struct {
	HeldMM    float64 // it holds when it has drained
	EasyMM    float64 // may be gone of that before the crop is in want
	MissingMM float64 // is gone
}

// Gone is the share of what may be gone that is: 1 and more is want.
func (l Level) Gone() float64 {
	if l.EasyMM <= 0 {
		return 0
	}
	return l.MissingMM / l.EasyMM
}

// drier is the drier of two pieces of ground.
func drier(a, b Level) Level {
	if b.Gone() > a.Gone() || a.HeldMM <= 0 {
		return b
	}
	return a
}

// level is how full a tract is on the morning of a day, judged by what the day asks.
// Of seed that is not through, the surface counts.
func (c *course) level(b water.Balance, i int) Level {
	on := &c.stands[i]
	if on.Basal <= 0 && !on.Seed {
		return Level{}
	}
	missing := b.MissingMM
	if on.Seed && on.Basal <= 0 {
		missing = b.DryMM
		return Level{HeldMM: c.soil.SurfaceMM, EasyMM: c.soil.ReadyMM, MissingMM: missing}
	}
	f := c.day(&b, i, 0)
	return Level{HeldMM: c.soil.HeldWithinReachMM(on), EasyMM: c.soil.TakenWithEaseMM(on, f.LostMM()), MissingMM: missing}
}

// Rain is the last rain that reached a bed.
type Rain struct {
	On     cal.Date // None: none in half a year
	MM     float64
	WeekMM float64 // in the seven days before today
}

// toldRainMM is the least rain of a day that is told as rain. judgement.
const toldRainMM = 1

// lastRain is the last rain on a tract before a day, or that of ground beside it which
// came later.
func (c *course) lastRain(today int, beside Rain) Rain {
	r := Rain{On: cal.None}
	for i := max(0, today-weekDays); i < today; i++ {
		r.WeekMM += c.given[i].RainMM
	}
	for i := today - 1; i >= 0; i-- {
		if c.given[i].RainMM >= toldRainMM {
			r.On, r.MM = c.date(i), c.given[i].RainMM
			break
		}
	}
	if beside.On.IsSet() && beside.On >= r.On {
		return beside
	}
	return r
}
