package observed

import (
	"cmp"
	"slices"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/sun"
)

// MostAhead is how many days of a forecast count, from the day it was made. Past
// it a day's forecast knows hardly more than the season does (judgement, from
// memory of verification of medium-range forecasts: about ten days).
const MostAhead = 10

// Foretold is a day of a forecast as it was typed.
type Foretold struct {
	ID     string
	Site   string
	Date   cal.Date
	Wind   string // a word of windsMS
	Sky    string // a word of skies
	Told   cal.Date
	TMinC  climate.Maybe // [C]
	TMaxC  climate.Maybe // [C]
	RainMM climate.Maybe // [mm]
}

// windsMS is the mean wind at 2 m [m/s] of the words of a forecast: the middle of
// the classes of the Beaufort scale at 10 m (0-1, 2-3, 4, 5, 6 and over; WMO-No. 8,
// from memory) times 0.75, as FAO-56 equation 47 brings it down to 2 m.
var windsMS = map[string]float64{"calm": 0.6, "light": 2.3, "moderate": 5.0, "fresh": 7.0, "strong": 9.2}

// skies is the share of the possible sunshine (judgement: eighths of cloud 1, 4
// and 7).
var skies = map[string]float64{"clear": 0.9, "broken": 0.5, "overcast": 0.1}

// Observation is a day of a forecast as weather at a latitude [deg].
func (f *Foretold) Observation(latitudeDeg float64) climate.Observation {
	o := climate.Observation{Date: f.Date, TMinC: f.TMinC, TMaxC: f.TMaxC, RainMM: f.RainMM}
	if v, ok := windsMS[f.Wind]; ok {
		o.WindMS = climate.Is(v)
	}
	if share, ok := skies[f.Sky]; ok {
		o.SunH = climate.Is(share * sun.DaylightH(latitudeDeg, f.Date.DayOfYear()))
	}
	return o
}

// Forecast is what a forecast says, and when it was made.
type Forecast struct {
	Made cal.Date
	Days []climate.Observation
}

// Ahead joins forecasts of one site, the one made last before the others, and
// leaves out days too far from the day they were made. Nil when nothing is left.
// It also tells the day on which the newest of what is left was made.
func Ahead(forecasts ...Forecast) (joined *climate.Record, made cal.Date) {
	slices.SortStableFunc(forecasts, func(a, b Forecast) int { return -cmp.Compare(a.Made, b.Made) })
	taken := map[cal.Date]bool{}
	out := &climate.Record{ID: "forecast"}
	made = cal.None
	for _, f := range forecasts {
		for _, o := range f.Days {
			if taken[o.Date] || f.Made.IsSet() && (o.Date < f.Made || o.Date >= f.Made+MostAhead) {
				continue
			}
			taken[o.Date] = true
			if !made.IsSet() {
				made = f.Made
			}
			out.Days = append(out.Days, o)
		}
	}
	if len(out.Days) == 0 {
		return nil, cal.None
	}
	slices.SortFunc(out.Days, func(a, b climate.Observation) int { return cmp.Compare(a.Date, b.Date) })
	return out, made
}
