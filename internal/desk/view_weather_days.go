package desk

import (
	"math"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/observed"
	"garner/internal/place"
	"garner/internal/water"
)

// WeatherSpan sums days up to yesterday. Sums of what is usual are over the days
// that are known, so that the two can be set beside each other.
type WeatherSpan struct {
	Kind        string   `json:"span"` // days or season
	First       cal.Date `json:"first"`
	Days        int      `json:"days"`      // in all
	Warm        int      `json:"days_warm"` // of which the temperatures are known
	Wet         int      `json:"days_rain"` // of which the rain is known
	MinC        float64  `json:"tmin_c"`    // means
	MaxC        float64  `json:"tmax_c"`
	LowestC     float64  `json:"lowest_c"`
	HighestC    float64  `json:"highest_c"`
	Frosts      int      `json:"frosts"` // nights under 0 C
	RainMM      float64  `json:"rain_mm"`
	ET0MM       float64  `json:"et0_mm"`
	DegreeDays  float64  `json:"degree_days"` // over 5 C
	UsualMinC   float64  `json:"usual_tmin_c"`
	UsualMaxC   float64  `json:"usual_tmax_c"`
	UsualRainMM float64  `json:"usual_rain_mm"`
	UsualET0MM  float64  `json:"usual_et0_mm"`
	UsualDD     float64  `json:"usual_degree_days"`
}

// dayCounter makes days of observations.
type dayCounter struct {
	site  place.Site
	air   water.Place
	usual *climate.Usual // nil: not known
	days  map[cal.Date]*climate.Observation
	from  map[cal.Date]observed.Origins
}

func (d *WeatherDay) known() bool { return d.TMinC != nil || d.TMaxC != nil || d.RainMM != nil }

// day is a day as an observation has it; nil: nothing is known of it.
func (c *dayCounter) day(date cal.Date, o *climate.Observation) WeatherDay {
	d := WeatherDay{Date: date}
	if c.usual != nil {
		u := c.usual.On(date)
		d.UsualMinC, d.UsualMaxC, d.UsualRainMM = tenthOf(u.TMinC.Value), tenthOf(u.TMaxC.Value), u.RainMM.Value
		d.UsualRainMM = math.Round(100*d.UsualRainMM) / 100
		if mm, _, ok := c.air.Observed(&u, c.site.Location); ok {
			d.usualET0MM = mm
		}
	}
	if o == nil {
		return d
	}
	d.TMinC, d.TMaxC, d.RainMM = pointer(o.TMinC), pointer(o.TMaxC), pointer(o.RainMM)
	if o.TMinC.Known && o.TMaxC.Known {
		if mm, _, ok := c.air.Observed(o, c.site.Location); ok {
			mm = tenthOf(mm)
			d.ET0MM = &mm
		}
	}
	from, touched := c.from[date]
	if d.TMinC != nil || d.TMaxC != nil {
		d.Warmth = observed.Station
		if touched && from.Warmth != observed.Nothing {
			d.Warmth = from.Warmth
		}
	}
	if d.RainMM != nil {
		d.Rain = observed.Station
		if touched && from.Rain != observed.Nothing {
			d.Rain = from.Rain
		}
	}
	return d
}

// span sums the days from first to before end.
func (c *dayCounter) span(kind string, first, end cal.Date) WeatherSpan {
	s := WeatherSpan{Kind: kind, First: first, Days: int(end - first)}
	for date := first; date < end; date++ {
		s.add(c.day(date, c.days[date]))
	}
	if n := float64(s.Warm); n > 0 {
		s.MinC, s.MaxC, s.UsualMinC, s.UsualMaxC = tenthOf(s.MinC/n), tenthOf(s.MaxC/n), tenthOf(s.UsualMinC/n), tenthOf(s.UsualMaxC/n)
	}
	for _, f := range []*float64{&s.RainMM, &s.UsualRainMM, &s.ET0MM, &s.UsualET0MM, &s.DegreeDays, &s.UsualDD} {
		*f = tenthOf(*f)
	}
	return s
}

func (s *WeatherSpan) add(d WeatherDay) {
	if d.RainMM != nil {
		s.Wet++
		s.RainMM += *d.RainMM
		s.UsualRainMM += d.UsualRainMM
	}
	if d.TMinC == nil || d.TMaxC == nil {
		return
	}
	if s.Warm == 0 || *d.TMinC < s.LowestC {
		s.LowestC = *d.TMinC
	}
	if s.Warm == 0 || *d.TMaxC > s.HighestC {
		s.HighestC = *d.TMaxC
	}
	s.Warm++
	if d.Frost() {
		s.Frosts++
	}
	s.MinC += *d.TMinC
	s.MaxC += *d.TMaxC
	s.UsualMinC += d.UsualMinC
	s.UsualMaxC += d.UsualMaxC
	s.DegreeDays += climate.DegreeDays(*d.TMinC, *d.TMaxC, degreeBaseC)
	s.UsualDD += climate.DegreeDays(d.UsualMinC, d.UsualMaxC, degreeBaseC)
	if d.ET0MM != nil {
		s.ET0MM += *d.ET0MM
		s.UsualET0MM += d.usualET0MM
	}
}
