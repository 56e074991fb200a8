package frost

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/cover"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/place"
)

// sky is the open weather of a site under the futures, from the first day of its
// growing year on.
type sky struct {
	south   bool
	today   int               // index of today
	days    [][]climate.Day   // by future
	above   []float64         // radiation above the air [MJ/m2]
	minimum [][]float64       // of the nights from tonight on, by future [C]
	fcast   map[cal.Date]bool // days whose minimum is forecast
	first   cal.Date          // of the days
}

// lookUp gathers the weather of all sites and how many nights are to be looked at.
func (a *Seen) lookUp(m *outlook.Memory) error {
	now := a.setting.Today
	a.skies = map[string]*sky{}
	a.futures = max(1, min(mostFutures, a.setting.Years))
	h := a.setting.Holding
	for i := range h.Sites {
		a.skies[h.Sites[i].ID] = &sky{south: h.Sites[i].Location.LatitudeDeg < 0, fcast: forecastDays(h, h.Sites[i])}
	}
	err := outlook.Skies(a.setting, m, a.futures, yearBefore(now), now+farthest+2, func(d *outlook.OpenDays) error {
		s := a.skies[d.Site]
		s.days, s.above, s.first, s.today = append(s.days, d.Days), d.AboveMJ, d.First, int(now-d.First)
		return nil
	})
	if err != nil {
		return err
	}
	a.nights = nightsTold
	for _, s := range a.skies {
		s.lay()
		a.nights = max(a.nights, s.lastCold()+1)
	}
	return nil
}

// yearBefore is the first day from which sums of warmth may be asked for.
func yearBefore(now cal.Date) cal.Date { return now - 366 }

// forecastDays are the days of which the forecast for a site tells the minimum.
func forecastDays(h *holding.Holding, site place.Site) map[cal.Date]bool {
	out := map[cal.Date]bool{}
	if w := h.WeatherAt(site); w != nil && w.Forecast != nil {
		for _, o := range w.Forecast.Days {
			if o.TMinC.Known {
				out[o.Date] = true
			}
		}
	}
	return out
}

// lay takes the minimum of each night under each future.
func (s *sky) lay() {
	nights := len(s.above) - s.today - 1
	for f := range s.days {
		row := make([]float64, nights)
		for i := range row {
			row[i] = s.days[f][s.today+i+1].TMinC
		}
		s.minimum = append(s.minimum, row)
	}
}

// told is the sky with another minimum tonight, in all futures.
func (s *sky) told(minimumC float64) *sky {
	out := *s
	out.minimum = nil
	for _, row := range s.minimum {
		row = slices.Clone(row)
		row[0] = minimumC
		out.minimum = append(out.minimum, row)
	}
	return &out
}

// clearShare is the share of the radiation above the air that reaches the ground under
// a clear sky (FAO-56, near sea level).
const clearShare = 0.75

// night is the weather in the open of a night under a future. A night that is told to be
// colder than the future's own by more than a degree is a clear one.
func (s *sky) night(f, i int) climate.Day {
	d := s.days[f][s.today+i+1]
	low := s.minimum[f][i]
	if low < d.TMinC-1 {
		d.RadiationMJ = max(d.RadiationMJ, clearShare*s.above[s.today+i+1])
	}
	d.TMinC, d.TMaxC = low, max(low, d.TMaxC)
	return d
}

// under is the minimum of a night under a cover [C].
func (s *sky) under(c *cover.Cover, f, i int) float64 {
	return c.Under(s.night(f, i), s.above[s.today+i+1]).TMinC
}

// lastCold is the last night that is cold enough to hurt the tenderest crop in more than
// a few futures; -1: none.
func (s *sky) lastCold() int {
	last := -1
	for i := range min(farthest, len(s.minimum[0])) {
		cold := 0
		for f := range s.minimum {
			if s.minimum[f][i] < tenderC {
				cold++
			}
		}
		if float64(cold) > seldom*float64(len(s.minimum)) {
			last = i
		}
	}
	return last
}
