package climate

import (
	"math"

	"garner/internal/sun"
)

// NewGenerator makes a generator from monthly normals alone. Normals hold no
// spread: it is estimated from the yearly range of the daily mean and the daily
// range by relations fitted on station series (see spread.go).
//
// Radiation comes from the normals, else from their sunshine (FAO-56 eq. 35),
// else from the temperature range (eq. 50). Without humidity the dew point is
// taken to be near the minimum, and without wind it blows at 2 m/s (FAO-56,
// pages 36 and 63).
func NewGenerator(n Normals, loc sun.Location) (*Generator, error) {
	if faults := n.CheckAt(loc); len(faults) > 0 {
		return nil, faults
	}
	return newGenerator(estimateMonths(&n, loc), loc), nil
}

// estimateMonths fills in what the generator needs from normals.
func estimateMonths(n *Normals, loc sun.Location) (months [12]month) {
	place := placeOf(n, loc)
	for i := range months {
		w := &n[i]
		m := &months[i]
		m.tMinC, m.tMaxC = w.TMinC, w.TMaxC
		m.rainMM = w.RainMM
		m.radiationMJ = radiationNormal(w, loc, i)
		m.elements[varSun].mean = sunShareOf(m.radiationMJ, loc, i)
		m.elements[varHumidity].mean = humidityNormal(w)
		m.elements[varWind].mean = usualWindMS
		if w.WindMS.Known {
			m.elements[varWind].mean = w.WindMS.Value
		}
		place.spread(m, i)
	}
	return months
}

// usualWindMS is the wind at 2 m where nothing is known [m/s] (FAO-56, page 63:
// the mean over 2,000 weather stations).
const usualWindMS = 2

// radiationNormal is a month's mean radiation [MJ/m2/day].
func radiationNormal(n *MonthNormal, loc sun.Location, i int) float64 {
	if n.RadiationMJ.Known {
		return n.RadiationMJ.Value
	}
	sum, days := 0.0, 0.0
	for d, m := range monthOf {
		if m != i {
			continue
		}
		ra := sun.ExtraterrestrialMJ(loc.LatitudeDeg, d+1)
		day := sun.HargreavesMJ(ra, n.TMinC, n.TMaxC, sun.Inland)
		if n.SunH.Known {
			day = sun.AngstromMJ(ra, n.SunH.Value, sun.DaylightH(loc.LatitudeDeg, d+1))
		}
		sum += math.Min(day, sun.ClearSkyMJ(ra, loc.ElevationM))
		days++
	}
	return sum / days
}

// sunShareOf returns where a month's mean radiation lies between the least and
// the most of its days.
func sunShareOf(radiationMJ float64, loc sun.Location, i int) float64 {
	low, high, days := 0.0, 0.0, 0.0
	for d, m := range monthOf {
		if m == i {
			l, h := skyBounds(loc, d+1)
			low, high, days = low+l, high+h, days+1
		}
	}
	return skyShare(radiationMJ, low/days, high/days)
}

// humidityNormal is a month's mean relative humidity [%]: measured, else from a
// dew point near the minimum (FAO-56 eq. 48, and eq. 11 and 12 for the mean
// saturation pressure).
func humidityNormal(n *MonthNormal) float64 {
	if n.HumidityPct.Known {
		return math.Max(5, math.Min(99, n.HumidityPct.Value))
	}
	return HumidityFromDew(n.TMinC, n.TMinC, n.TMaxC)
}

// HumidityFromDew returns the day's mean relative humidity [%, at most 100] from
// the dew point and the day's extremes [C].
//
// Source: FAO-56 eq. 14 (actual vapour pressure) over eq. 12 (mean saturation
// pressure).
func HumidityFromDew(dewC, tMinC, tMaxC float64) float64 {
	saturated := (SaturationKPa(tMinC) + SaturationKPa(tMaxC)) / 2 // eq. 12
	return math.Min(100, 100*SaturationKPa(dewC)/saturated)
}

// HumidityFromExtremes returns the day's mean relative humidity [%, at most 100]
// that stands for the vapour pressure of its most and its least [%]: the most comes
// at the night's minimum, the least at the day's maximum [C].
//
// Check: 82 and 54 % between 18 and 25 C: 1.70 kPa (FAO-56 example 5). Source: FAO-56
// eq. 17 over eq. 12.
func HumidityFromExtremes(mostPct, leastPct, tMinC, tMaxC float64) float64 {
	low, high := SaturationKPa(tMinC), SaturationKPa(tMaxC)
	return math.Min(100, (low*mostPct+high*leastPct)/(low+high)) // eq. 17
}

// SaturationKPa is the vapour pressure of saturated air at t [C] [kPa] (FAO-56
// eq. 11). Check: 24.5 C: 3.075 (example 3).
func SaturationKPa(t float64) float64 {
	return 0.6108 * math.Exp(17.27*t/(t+237.3)) // eq. 11
}

// RadiationMJ returns each month's mean radiation at a place [MJ/m2/day]: as
// known, else from its sunshine, else from its temperatures.
func (n *Normals) RadiationMJ(loc sun.Location) (out [12]float64) {
	for i := range n {
		out[i] = radiationNormal(&n[i], loc, i)
	}
	return out
}
