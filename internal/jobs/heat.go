package jobs

import (
	"math"
	"slices"
	"strconv"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/cover"
	"garner/internal/place"
	"garner/internal/risk"
	"garner/internal/words"
)

const (
	shadeRule = "shade_net" // the rule of heat that asks for shade

	// From so long before the first picking until so long before the end fruit sets: as
	// the feeding of fruit in care.csv has it [d].
	setsBefore, setsUntil = 25, 21

	// For so long a shade net that was hung stays, and what was done for fruit in the heat
	// is not asked for again [d]. Judgement.
	shadeStays, heatStays = 28, 6

	drinks   = 3    // days in which seed takes up water, and may fall asleep. Judgement
	seedM    = 0.01 // depth of seed where the crop book tells none [m]
	dampingM = 0.11 // depth at which the day's wave of warmth is down to 37 %: as frost has it [m]
)

// heats are the jobs that hot days ask for in the middle of the futures, by the rules of
// heat of the package risk: shade under film and glass, and help for fruit that sets.
func (d *deriver) heats() {
	for i := range d.heat {
		r := &d.heat[i]
		switch {
		case r.ID == shadeRule:
			d.shades(r)
		case len(r.Crops) > 0 && !r.OfSoil() && !r.OfShut():
			for k := range d.Holding.Beds {
				d.settings(r, &d.Holding.Beds[k])
			}
		}
	}
}

// shades asks for shade over all beds of a site that lie under a kind of cover, at the
// first of them.
func (d *deriver) shades(r *risk.Heat) {
	seen := map[string]bool{}
	for i := range d.Holding.Beds {
		b := &d.Holding.Beds[i]
		for _, s := range d.spells[b.ID] {
			id := b.Site + ":" + coverKey(s.Kind)
			if seen[id] || !r.For("", s.Kind) {
				continue
			}
			seen[id] = true
			h := house{b.Site, s.Spell}
			run := d.hotDays(r, b.Site, func(on cal.Date) (cover.Spell, bool) { return s.Spell, d.aired(h, on) })
			j := begin(Shade, "", "shade:"+id, d.stop(b))
			d.hot(j, run, shadeStays, "shade")
		}
	}
}

// settings asks for help for the fruit that sets on a bed.
func (d *deriver) settings(r *risk.Heat, b *place.Bed) {
	var names []string
	areaM2 := 0.0
	setting := func(l *life, on cal.Date) bool {
		return r.For(l.p.Crop, d.over(b.ID, on).Kind) && l.open(on) && l.ready.is() && l.over.is() && l.ready.mid-setsBefore <= on && on <= l.over.mid-setsUntil
	}
	run := d.hotDays(r, b.Site, func(on cal.Date) (cover.Spell, bool) {
		any := false
		for _, l := range d.byBed[b.ID] {
			any = any || setting(l, on)
		}
		return d.over(b.ID, on), any
	})
	if !run.first.IsSet() {
		return
	}
	for _, l := range d.byBed[b.ID] {
		if setting(l, run.first) {
			names, areaM2 = append(names, l.name), areaM2+l.p.AreaM2
		}
	}
	j := begin(Heat, "", "heat:"+r.ID+":"+b.ID, d.stop(b))
	j.Amount.M2 = min(b.AreaM2(), areaM2)
	run.names, run.does = names, r.Does()
	d.hot(j, run, heatStays, "hot_set")
}

// hotRun is the hot days of the nights ahead that are looked at.
type hotRun struct {
	first cal.Date
	topC  float64
	days  int
	fromC float64
	names []string
	does  words.Phrase
}

// hotDays are the days on which a rule of the air fires in the middle of the futures,
// under what lies over a place; over tells too whether it matters there.
func (d *deriver) hotDays(r *risk.Heat, site string, over func(cal.Date) (cover.Spell, bool)) hotRun {
	s, run := d.skyOver(site), hotRun{first: cal.None, fromC: r.FromC}
	for on := d.Today; on < d.Today+cal.Date(d.limits.nights) && s.knows(on); on++ {
		spell, matters := over(on)
		if !matters {
			continue
		}
		c, err := cover.Of(spell)
		if err != nil {
			continue
		}
		if top := s.middle(on, c, warmest); r.Fires(top) {
			if !run.first.IsSet() {
				run.first = on
			}
			run.topC, run.days = max(run.topC, top), run.days+1
		}
	}
	return run
}

// hot takes in the job that a run of hot days asks for, unless it was done of late.
func (d *deriver) hot(j Job, run hotRun, stays cal.Date, reason string) {
	t := d.answers.series(j.Series)
	if !run.first.IsSet() || t.dropped || t.lastOn.IsSet() && t.lastOn >= run.first-stays {
		return
	}
	j.Turn = int(run.first)
	j.ID += ":" + strconv.Itoa(j.Turn)
	j = told(d.day(j, run.first), "")
	j.Forecast = true
	j.Why = words.P("jobs.why_"+reason, words.Args{"date": run.first, "c": math.Round(run.topC), "from": run.fromC, "days": run.days, "crops": run.names, "does": run.does})
	d.once(j)
}

// sleeps notes on a sowing that its seed may sleep: where in the middle of the futures the
// soil at the seed grows warmer in its first days than the rule of its crop bears. The
// soil is stepped from the first day of the sky, a week before today, which its shallow
// layer forgets.
func (d *deriver) sleeps(j *Job, l *life) {
	s, on := d.skyOver(l.bed.Site), max(j.Best, d.Today)
	if !s.knows(on + drinks - 1) {
		return
	}
	spell := d.over(l.bed.ID, on)
	c, err := cover.Of(spell)
	if err != nil {
		return
	}
	for i := range d.heat {
		if r := &d.heat[i]; r.OfSoil() && r.For(l.p.Crop, spell.Kind) && r.Fires(s.seedC(on, c, l.use.SowDepthM)) {
			j.Notes = append(j.Notes, r.Does())
		}
	}
}

// sleepsIndoors notes the same on what is raised: a tray in the shade grows as warm as the
// air outside. Judgement.
func (d *deriver) sleepsIndoors(j *Job, l *life) {
	s, on := d.skyOver(l.bed.Site), max(j.Best, d.Today)
	bare, err := cover.Lookup(cover.Open)
	if err != nil || !s.knows(on+drinks-1) {
		return
	}
	for i := range d.heat {
		r := &d.heat[i]
		if !r.OfSoil() || !r.For(l.p.Crop, cover.Open) {
			continue
		}
		for day := on; day < on+drinks; day++ {
			if r.Fires(s.middle(day, bare, warmest)) {
				j.Notes = append(j.Notes, r.Does())
				break
			}
		}
	}
}

// seedC is the middle over the futures of the warmest of the soil at seed in its first
// days: the mean of the day, and half the swing of the air damped down to the seed [C].
func (s *Sky) seedC(on cal.Date, over *cover.Cover, depthM float64) float64 {
	if depthM <= 0 {
		depthM = seedM
	}
	swing := math.Exp(-depthM / dampingM)
	peaks := make([]float64, len(s.Futures))
	for f := range peaks {
		peaks[f] = s.peakC(f, on, over, swing)
	}
	slices.Sort(peaks)
	return peaks[len(peaks)/2]
}

// peakC is the same in one future.
func (s *Sky) peakC(f int, on cal.Date, over *cover.Cover, swing float64) float64 {
	var soil climate.Soil
	peak := math.Inf(-1)
	for i := range int(on-s.First) + drinks {
		day := over.Under(s.Futures[f][i], s.AboveMJ[i])
		if i == 0 {
			soil = climate.NewSoil(day.MeanC(), day.RadiationMJ)
		}
		mean := soil.Step(day.MeanC(), day.RadiationMJ)
		if i >= int(on-s.First) {
			peak = max(peak, mean+(day.TMaxC-day.TMinC)/2*swing)
		}
	}
	return peak
}
