package climate

import "garner/internal/sun"

// Estimated makes a whole day of one observation by the rules of FAO-56, chapter
// 3, for what was not measured: radiation from sunshine (eq. 35) or from the
// temperature range (eq. 50), never more than a clear sky's; a dew point at the
// minimum (eq. 48); wind of 2 m/s. Rain that nobody measured counts as none. False
// where a temperature is missing.
func Estimated(o *Observation, at sun.Location) (Day, bool) {
	if !o.TMinC.Known || !o.TMaxC.Known {
		return Day{}, false
	}
	low, high := o.TMinC.Value, o.TMaxC.Value
	d := Day{TMinC: low, TMaxC: high, HumidityPct: HumidityFromDew(low, low, high), WindMS: usualWindMS}
	d.take(o, at, o.Date)
	return d, true
}

// OnlyTemperatures tells whether a day has no more than its temperatures, beside
// rain.
func (o *Observation) OnlyTemperatures() bool {
	return !o.RadiationMJ.Known && !o.SunH.Known && !o.HumidityPct.Known && !o.DewC.Known && !o.WindMS.Known
}
