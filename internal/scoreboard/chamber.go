package scoreboard

import (
	"garner/internal/climate"
	"garner/internal/crop"
	"garner/internal/growth"
)

// chamber is a growth chamber: the same day again and again.
type chamber struct {
	meanC, halfC float64 // mean and half the daily range [C]
	radiationMJ  float64 // [MJ/m2/day]
	dayLengthH   float64
}

func (c chamber) air() growth.Air {
	day := climate.Day{TMinC: c.meanC - c.halfC, TMaxC: c.meanC + c.halfC, RadiationMJ: c.radiationMJ}
	return growth.NewAir(day, c.meanC, 1, c.meanC, c.dayLengthH)
}

// keep grows plants for some days, or until a condition holds; it tells after how
// many days, and false when it never did.
func (c chamber) keep(p *growth.Parameters, s *growth.Plants, days int, until func() bool) (int, bool) {
	a := c.air()
	for day := 1; day <= days; day++ {
		s.Rates(p, &a, a.PARMJ, 1)
		s.Integrate(p)
		if until != nil && until() {
			return day, true
		}
	}
	return days, false
}

// endless is a use whose harvest never ends by itself, so that the plants can be
// watched.
func endless(u *crop.Use) *crop.Use {
	trial := *u
	trial.StandDays, trial.PickDays, trial.Cuts, trial.UsableG = 1e6, 1e6, 1e6, 0
	trial.SlowFactor, trial.HeatStartC, trial.HeatEndC = 0, 0, 0
	return &trial
}
