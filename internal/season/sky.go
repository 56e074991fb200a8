package season

import (
	"math"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/cover"
	"garner/internal/growth"
	"garner/internal/sun"
)

// Sky is what every day of a span has at a place whatever the weather.
type Sky struct {
	First              cal.Date
	Location           sun.Location
	DayLengthH         []float64
	ExtraterrestrialMJ []float64
	sunset             []float64 // hour angle of sunset [rad]
	dayOfYear          []int16   // of the common year, 1-365
}

// NewSky works out a span of days at a place.
func NewSky(at sun.Location, first cal.Date, days int) *Sky {
	var lengths, above, sunset [367]float64
	for d := 1; d <= 366; d++ {
		lengths[d] = sun.DayLengthH(at.LatitudeDeg, d)
		above[d] = sun.ExtraterrestrialMJ(at.LatitudeDeg, d)
		sunset[d] = sun.SunsetAngle(at.LatitudeDeg, d)
	}
	s := &Sky{First: first, Location: at, DayLengthH: make([]float64, days),
		ExtraterrestrialMJ: make([]float64, days), sunset: make([]float64, days), dayOfYear: make([]int16, days)}
	for i := range s.DayLengthH {
		date := first + cal.Date(i)
		d := date.DayOfYear()
		s.DayLengthH[i], s.ExtraterrestrialMJ[i], s.sunset[i] = lengths[d], above[d], sunset[d]
		s.dayOfYear[i] = int16(commonDay(date))
	}
	return s
}

// halfYear is the longest time that days lengthen [d].
const halfYear = 183

// lengthening tells whether the days grow longer on a day.
func (s *Sky) lengthening(day int) bool {
	if day == 0 {
		return len(s.DayLengthH) > 1 && s.DayLengthH[1] > s.DayLengthH[0]
	}
	return s.DayLengthH[day] > s.DayLengthH[day-1]
}

// Northern tells whether midsummer falls in June.
func (s *Sky) Northern() bool { return s.Location.LatitudeDeg >= 0 }

// Bedside is a bed's own weather over the sky's span, with running sums of the
// mean air temperature for the rules that look back.
type Bedside struct {
	Air    []growth.Air
	warmth []float64 // warmth[i] is the sum of mean air temperature before day i [C d]
	soil   []float64 // likewise of soil temperature
}

// Ground says what lies between the open weather and a bed's plants.
type Ground struct {
	Light  float64 // share of the open light that is left, beside what Shade takes, 0-1
	Shade  *Shade  // nil: nothing stands round it
	Spells []cover.Spell
}

// Build works out the bed's weather for days from index `from` of the sky on.
// days is the open weather for the sky's whole span.
func (b *Bedside) Build(sky *Sky, days []climate.Day, g Ground, from int) error {
	layers, err := lookupLayers(g.Spells)
	if err != nil {
		return err
	}
	n := len(days)
	b.Air = resize(b.Air, n)
	b.warmth, b.soil = resize(b.warmth, n+1), resize(b.soil, n+1)
	var soil climate.Soil
	warmth, ground := 0.0, 0.0
	for i := from; i < n; i++ {
		under, mean, lift := days[i], days[i].MeanC(), 0.0
		if c := layers.on(sky.First + cal.Date(i)); c != nil {
			under, lift = c.Under(days[i], sky.ExtraterrestrialMJ[i]), c.SoilLiftC()
			mean += meanLift(days[i], under, sky.DayLengthH[i])
		}
		light := g.LightOn(sky, i, days[i].RadiationMJ)
		if i == from {
			soil = climate.NewSoil(mean, under.RadiationMJ*light)
		}
		soilC := soil.Step(mean, under.RadiationMJ*light) + lift
		b.Air[i] = growth.NewAir(under, mean, light, soilC, sky.DayLengthH[i])
		b.warmth[i], b.soil[i] = warmth, ground
		warmth += mean
		ground += soilC
	}
	b.warmth[n], b.soil[n] = warmth, ground
	return nil
}

// meanLift returns how much warmer a day is under cover over its 24 hours [C]:
// the night's lift all round the clock, and on top of it the day's, which swells
// and falls as a half sine over the hours of daylight (its mean is 2/pi of its
// height).
func meanLift(open, under climate.Day, dayLengthH float64) float64 {
	night := under.TMinC - open.TMinC
	day := under.TMaxC - open.TMaxC
	return night + (day-night)*2/math.Pi*dayLengthH/24
}

// MeanAirC returns the mean air temperature of days from..to-1 [C].
func (b *Bedside) MeanAirC(from, to int) float64 {
	return (b.warmth[to] - b.warmth[from]) / float64(to-from)
}

// MeanSoilC returns the mean soil temperature of days from..to-1 [C].
func (b *Bedside) MeanSoilC(from, to int) float64 {
	return (b.soil[to] - b.soil[from]) / float64(to-from)
}

func resize[T any](s []T, n int) []T {
	if cap(s) < n {
		return make([]T, n)
	}
	return s[:n]
}

// layers are a bed's cover spells with their covers looked up.
type layers []layer

type layer struct {
	cover   *cover.Cover
	on, off cal.Date
}

func lookupLayers(spells []cover.Spell) (layers, error) {
	out := make(layers, 0, len(spells))
	for _, s := range spells {
		if s.Kind == cover.Open {
			continue
		}
		c, err := cover.Of(s)
		if err != nil {
			return nil, err
		}
		out = append(out, layer{c, s.On, s.Off})
	}
	return out, nil
}

// on returns the cover that lies on a date, the one put on last; nil in the open.
func (l layers) on(d cal.Date) *cover.Cover {
	var found *cover.Cover
	latest := cal.None
	for i := range l {
		if d >= l[i].on && (!l[i].off.IsSet() || d < l[i].off) && l[i].on >= latest {
			found, latest = l[i].cover, l[i].on
		}
	}
	return found
}
