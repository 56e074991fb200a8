package jobs

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/cover"
	"garner/internal/words"
)

// Sky is the open weather of a site over some days, under some futures. A future's days
// are as many as those of AboveMJ.
type Sky struct {
	Site    string
	First   cal.Date
	AboveMJ []float64 // radiation above the air, by day [MJ/m2]
	Futures [][]climate.Day
}

// knows tells whether the weather of a day is told.
func (s *Sky) knows(on cal.Date) bool {
	return s != nil && len(s.Futures) > 0 && on >= s.First && int(on-s.First) < len(s.AboveMJ)
}

// share is the share of the futures whose open day is as asked for.
func (s *Sky) share(on cal.Date, asked func(*climate.Day) bool) float64 {
	n := 0
	for f := range s.Futures {
		if asked(&s.Futures[f][on-s.First]) {
			n++
		}
	}
	return float64(n) / float64(len(s.Futures))
}

// middle is the middle over the futures of something of a day under a cover.
func (s *Sky) middle(on cal.Date, over *cover.Cover, of func(*climate.Day) float64) float64 {
	values := make([]float64, len(s.Futures))
	for f := range s.Futures {
		in := over.Under(s.Futures[f][on-s.First], s.AboveMJ[on-s.First])
		values[f] = of(&in)
	}
	slices.Sort(values)
	return values[len(values)/2]
}

// warmest and coldest are the extremes of a day [C].
func warmest(d *climate.Day) float64 { return d.TMaxC }
func coldest(d *climate.Day) float64 { return d.TMinC }

// skyOver is the weather of a site; nil when it is not told.
func (d *deriver) skyOver(site string) *Sky {
	for i := range d.Skies {
		if d.Skies[i].Site == site {
			return &d.Skies[i]
		}
	}
	return nil
}

// foul tells why work of a kind is not done on a day; empty: nothing speaks against it.
func (d *deriver) foul(k *kindFacts, s *Sky, on cal.Date) string {
	switch {
	case k.dry && s.share(on, func(w *climate.Day) bool { return w.RainMM >= d.limits.wet }) >= d.limits.sure:
		return "rain"
	case k.still && s.share(on, func(w *climate.Day) bool { return w.WindMS >= d.limits.windy }) >= d.limits.sure:
		return "gale"
	}
	return ""
}

// fair moves a job to the first day on which the weather lets it be done, as long as
// it makes sense; where there is none it stays and says so.
func (d *deriver) fair(j *Job, k *kindFacts) {
	s := d.skyOver(j.Stop.Site)
	start := j.Due(d.Today)
	if !k.dry && !k.still || j.PutOff.IsSet() || !s.knows(start) {
		return
	}
	reason := d.foul(k, s, start)
	if reason == "" {
		return
	}
	for on := start + 1; on <= j.Last; on++ {
		if !s.knows(on) || d.foul(k, s, on) == "" {
			j.Best = on
			j.Notes = append(j.Notes, words.P("jobs.moved_"+reason, words.Args{"date": start}))
			return
		}
	}
	j.Notes = append(j.Notes, words.P("jobs.foul_"+reason, nil))
}
