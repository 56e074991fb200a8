package climate

import (
	_ "embed"
	"math"
	"sync"

	"garner/internal/cal"
	"garner/internal/num"
)

// How far forecasts miss, by the days from the day they were made.
//
//go:embed data/forecast_misses.csv
var missesCSV []byte

// miss is how far forecasts of one day miss.
type miss struct {
	leadD   float64 // days from the day the forecast was made
	tMinC   float64 // standard deviation of the minimum [C]
	tMaxC   float64 // of the maximum [C]
	ownRain float64 // share of the futures whose rain, light and humidity are their own, not the forecast's
}

var misses = sync.OnceValue(func() (out []miss) {
	t := embedded(missesCSV, "forecast_misses.csv")
	for row := range t.Rows {
		c := cells{t, row}
		out = append(out, miss{leadD: c.number("lead_d"), tMinC: c.number("tmin_c"), tMaxC: c.number("tmax_c"), ownRain: c.number("own_rain")})
	}
	return out
})

// missAt is how far a forecast misses so many days ahead, along straight lines between
// the days that are told, and no further after the last of them.
func missAt(leadD int) miss {
	all := misses()
	lead := float64(max(0, leadD))
	k := 1
	for k < len(all)-1 && all[k].leadD < lead {
		k++
	}
	a, b := all[k-1], all[k]
	share := min(1, (lead-a.leadD)/(b.leadD-a.leadD))
	between := func(x, y float64) float64 { return x + (y-x)*share }
	return miss{leadD: lead, tMinC: between(a.tMinC, b.tMinC), tMaxC: between(a.tMaxC, b.tMaxC), ownRain: between(a.ownRain, b.ownRain)}
}

const (
	// missLag is how far a forecast's miss of one day is that of the day before, and
	// missShared the part that minimum and maximum of a day have in common (judgement:
	// a front that comes late is late for both, and for the next day).
	missLag    = 0.6
	missShared = 0.5
)

// foretold are the days that are forecast as one future has them: each misses the
// forecast by a draw of its own, the more the further ahead. None without a forecast.
func (f *Futures) foretold(k key) []Day {
	ahead := f.known.Days[f.seen:]
	if len(ahead) == 0 {
		return nil
	}
	own := f.own(nil, k, f.known.First+cal.Date(f.seen), len(ahead))
	out := make([]Day, len(ahead))
	draw := num.Keyed(k.seed, k.future, k.site, num.Key("what forecasts miss"))
	both, low, high := 0.0, 0.0, 0.0
	step := math.Sqrt(1 - missLag*missLag)
	for i := range ahead {
		next := func(x float64) float64 {
			z := draw.Normal()
			if i == 0 {
				return z
			}
			return missLag*x + step*z
		}
		both, low, high = next(both), next(low), next(high)
		m := missAt(f.lead + i)
		out[i] = ahead[i]
		if draw.Float64() < m.ownRain {
			out[i].RainMM, out[i].RadiationMJ, out[i].HumidityPct = own[i].RainMM, own[i].RadiationMJ, own[i].HumidityPct
		}
		of := func(x float64) float64 { return math.Sqrt(missShared)*both + math.Sqrt(1-missShared)*x }
		out[i].TMinC += m.tMinC * of(low)
		out[i].TMaxC = max(out[i].TMinC, out[i].TMaxC+m.tMaxC*of(high))
	}
	return out
}
