package climate

import (
	"math"

	"garner/internal/fault"
	"garner/internal/sun"
	"garner/internal/words"
)

// The temperatures that are taken for weather [C]: wider than the records of
// the Earth's farmed land.
const (
	LeastC = -80
	MostC  = 60
)

// mostMonthRainMM is beyond the wettest months on record.
const mostMonthRainMM = 10000

// spareSunH is how far a mean of sunshine may pass the possible hours, which
// sun recorders and rounding do [h].
const spareSunH = 0.3

// CheckAt returns every fault of the normals at a place; none when they are
// sound.
func (n *Normals) CheckAt(loc sun.Location) (faults fault.List) {
	faults = append(faults, loc.Check()...)
	for i := range n {
		faults = append(faults, n[i].check(i, loc)...)
	}
	return faults
}

// check looks at one month, 0-11.
func (m *MonthNormal) check(i int, loc sun.Location) (faults fault.List) {
	bad := func(key, column string, args words.Args) {
		args["month"] = i + 1
		faults = append(faults, fault.New(fault.Invalid, key, args).In(fault.Place{Column: column}))
	}
	for _, t := range []struct {
		column string
		value  float64
	}{{"tmin_c", m.TMinC}, {"tmax_c", m.TMaxC}} {
		if !(t.value >= LeastC && t.value <= MostC) {
			bad("climate.normal_temperature", t.column, words.Args{"value": t.value})
		}
	}
	if m.TMinC > m.TMaxC {
		bad("climate.normal_swapped", "tmin_c", words.Args{"tmin": m.TMinC, "tmax": m.TMaxC})
	}
	if !(m.RainMM >= 0 && m.RainMM <= mostMonthRainMM) {
		bad("climate.normal_rain", "rain_mm", words.Args{"value": m.RainMM})
	}
	most, above := lightOfMonth(i, loc)
	if m.SunH.Known && !(m.SunH.Value >= 0 && m.SunH.Value <= most+spareSunH) {
		bad("climate.normal_sun", "sun_h", words.Args{"value": m.SunH.Value, "most": most})
	}
	if m.RadiationMJ.Known && !(m.RadiationMJ.Value >= 0 && m.RadiationMJ.Value <= above) {
		bad("climate.normal_radiation", "rad_mj_m2", words.Args{"value": m.RadiationMJ.Value, "most": above})
	}
	if m.HumidityPct.Known && !(m.HumidityPct.Value >= 0 && m.HumidityPct.Value <= 100) {
		bad("climate.normal_humidity", "rh_pct", words.Args{"value": m.HumidityPct.Value})
	}
	if m.WindMS.Known && !(m.WindMS.Value >= 0 && m.WindMS.Value <= 40) {
		bad("climate.normal_wind", "wind_ms", words.Args{"value": m.WindMS.Value})
	}
	return faults
}

// lightOfMonth returns the longest day [h] and the most radiation above the air
// [MJ/m2/day] of a month, 0-11.
func lightOfMonth(i int, loc sun.Location) (daylightH, aboveMJ float64) {
	for d, m := range monthOf {
		if m == i {
			daylightH = math.Max(daylightH, sun.DaylightH(loc.LatitudeDeg, d+1))
			aboveMJ = math.Max(aboveMJ, sun.ExtraterrestrialMJ(loc.LatitudeDeg, d+1))
		}
	}
	return daylightH, aboveMJ
}
