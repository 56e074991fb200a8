package risk

import (
	"math"

	"garner/internal/climate"
)

// The hours of a made day at which it is coldest and warmest.
const (
	coldestHour = 5
	warmestHour = 15
)

// FromDays makes hours of a daily record: the temperature swings between the
// extremes along a cosine, coldest at five and warmest at fifteen; the vapour in the
// air stays the same all day, from the dew point, else from the mean humidity, else
// from a dew point at the night's minimum; rain falls evenly. Rules over such hours
// are weaker: with the mean humidity they find nine in ten of the Hutton days of real
// hourly records, and one in three that they tell is none; without it they tell more
// than twice too many (docs/models/risk.md).
//
// Source: own estimate; that the dew point is near the minimum is FAO-56 eq. 48.
func FromDays(r *climate.Record) *Weather {
	var hours []climate.Hour
	for i := range r.Days {
		o := &r.Days[i]
		if !o.TMinC.Known || !o.TMaxC.Known {
			continue
		}
		before, after := o.TMaxC.Value, o.TMinC.Value
		if i > 0 && r.Days[i-1].Date == o.Date-1 && r.Days[i-1].TMaxC.Known {
			before = r.Days[i-1].TMaxC.Value
		}
		if i+1 < len(r.Days) && r.Days[i+1].Date == o.Date+1 && r.Days[i+1].TMinC.Known {
			after = r.Days[i+1].TMinC.Value
		}
		pressure := vapourKPa(o)
		for h := range 24 {
			c := swing(h, before, o.TMinC.Value, o.TMaxC.Value, after)
			hour := climate.Hour{Date: o.Date, Hour: h, TempC: c, RainMM: math.NaN(), WindMS: math.NaN(), Row: o.Row,
				HumidityPct: min(100, 100*pressure/climate.SaturationKPa(c))}
			if o.RainMM.Known {
				hour.RainMM = o.RainMM.Value / 24
			}
			if o.WindMS.Known {
				hour.WindMS = o.WindMS.Value
			}
			hours = append(hours, hour)
		}
	}
	w := New(hours)
	w.Estimated = true
	return w
}

// swing is the temperature of an hour between yesterday's maximum, today's extremes
// and tomorrow's minimum [C].
func swing(h int, before, low, high, after float64) float64 {
	const night = 24 - warmestHour + coldestHour
	from, to, share := low, high, float64(h-coldestHour)/(warmestHour-coldestHour)
	switch {
	case h < coldestHour:
		from, to, share = before, low, float64(h+24-warmestHour)/night
	case h > warmestHour:
		from, to, share = high, after, float64(h-warmestHour)/night
	}
	return from + (to-from)*(1-math.Cos(math.Pi*share))/2
}

// vapourKPa is the pressure of the vapour in a day's air.
func vapourKPa(o *climate.Observation) float64 {
	switch {
	case o.DewC.Known:
		return climate.SaturationKPa(o.DewC.Value)
	case o.HumidityPct.Known:
		return o.HumidityPct.Value / 100 * climate.SaturationKPa((o.TMinC.Value+o.TMaxC.Value)/2)
	}
	return climate.SaturationKPa(o.TMinC.Value)
}
