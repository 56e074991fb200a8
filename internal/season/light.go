package season

import "garner/internal/sun"

// Shade is what stands round a bed as it dims the light: the shares of the open
// beam and of the open diffuse light that are left, 0-1, by day of the common
// year from 1 on.
type Shade struct{ Beam, Diffuse [commonYear + 1]float64 }

// LightOn returns the share of a day's open light that reaches the bed's plants,
// 0-1: beam and diffuse are put together by the day's own diffuse share, so that
// a wall takes more of a bright day than of a dull one. day is an index of the
// sky, radiationMJ the open radiation of that day [MJ/m2].
//
// Source: the daily correlation of Erbs, Klein & Duffie 1982 (package sun).
func (g *Ground) LightOn(sky *Sky, day int, radiationMJ float64) float64 {
	if g.Shade == nil {
		return g.Light
	}
	diffuse := sun.DiffuseShare(sun.Clearness(sky.ExtraterrestrialMJ[day], radiationMJ), sky.sunset[day])
	at := sky.dayOfYear[day]
	return g.Light * (diffuse*g.Shade.Diffuse[at] + (1-diffuse)*g.Shade.Beam[at])
}
