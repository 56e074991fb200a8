package climate

import (
	"math"

	"garner/internal/cal"
)

// Usual is the mean weather of each day of the year, from monthly normals: smooth
// curves whose monthly means are the normals.
type Usual struct {
	tMin, tMax, rain    yearCurve
	sun, rad, rh, wind  yearCurve
	kSun, kRad, kRH, kW bool
}

// Usual lays the curves.
func (n *Normals) Usual() *Usual {
	u := &Usual{}
	days := [12]float64{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}
	curve := func(of func(m int) float64) yearCurve {
		var months [12]float64
		for m := range months {
			months[m] = of(m)
		}
		return smooth(months)
	}
	known := func(of func(m *MonthNormal) Maybe) (c yearCurve, all bool) {
		all = true
		for m := range n {
			all = all && of(&n[m]).Known
		}
		if all {
			c = curve(func(m int) float64 { return of(&n[m]).Value })
		}
		return c, all
	}
	u.tMin = curve(func(m int) float64 { return n[m].TMinC })
	u.tMax = curve(func(m int) float64 { return n[m].TMaxC })
	u.rain = curve(func(m int) float64 { return n[m].RainMM / days[m] })
	u.sun, u.kSun = known(func(m *MonthNormal) Maybe { return m.SunH })
	u.rad, u.kRad = known(func(m *MonthNormal) Maybe { return m.RadiationMJ })
	u.rh, u.kRH = known(func(m *MonthNormal) Maybe { return m.HumidityPct })
	u.wind, u.kW = known(func(m *MonthNormal) Maybe { return m.WindMS })
	return u
}

// On is the mean weather of a date: its rain is the mean of all years, wet and dry
// [mm].
func (u *Usual) On(d cal.Date) Observation {
	_, month, day := d.YMD()
	i := dayIndex(month, day)
	o := Observation{Date: d, TMinC: Is(u.tMin[i]), TMaxC: Is(u.tMax[i]), RainMM: Is(math.Max(0, u.rain[i]))}
	for _, f := range []struct {
		known bool
		curve *yearCurve
		to    *Maybe
		most  float64
	}{{u.kSun, &u.sun, &o.SunH, 24}, {u.kRad, &u.rad, &o.RadiationMJ, 50}, {u.kRH, &u.rh, &o.HumidityPct, 100}, {u.kW, &u.wind, &o.WindMS, 100}} {
		if f.known {
			*f.to = Is(math.Max(0, math.Min(f.most, f.curve[i])))
		}
	}
	return o
}
