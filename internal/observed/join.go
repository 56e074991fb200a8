package observed

import (
	"cmp"
	"slices"

	"garner/internal/cal"
	"garner/internal/climate"
)

// Origin is where a figure of a day comes from.
type Origin string

// The origins, the weakest first.
const (
	Nothing    Origin = ""
	Station    Origin = "station"
	FromSensor Origin = "instrument"
	FromHand   Origin = "hand"
	Forecasted Origin = "forecast" // and nothing was observed
)

// Origins are those of one day.
type Origins struct{ Warmth, Rain Origin }

// Days is what was observed at a site, and where it comes from on the days on
// which it is not all the station's.
type Days struct {
	Record *climate.Record // nil: nothing was observed
	From   map[cal.Date]Origins
}

// Join lays the readings at a site in the open over the station's record, which
// may be nil and is not changed.
func Join(station *climate.Record, readings []Reading) Days {
	open := inOrder(readings)
	if len(open) == 0 {
		return Days{Record: station}
	}
	j := joining{station: byDate(station), days: map[cal.Date]*climate.Observation{}, from: map[cal.Date]Origins{}}
	// Instruments first, so that what a hand told stands over them.
	for _, by := range []string{Instrument, ByHand} {
		var rain, high, low *Reading
		for i := range open {
			r := &open[i]
			if r.By != by {
				continue
			}
			if r.RainMM.Known {
				j.rain(r, rain)
				rain = r
			}
			if r.TMaxC.Known {
				first, last := r.days(high)
				j.extreme(r, first, last, r.TMaxC.Value, func(o *climate.Observation) *climate.Maybe { return &o.TMaxC }, 1)
				high = r
			}
			if r.TMinC.Known {
				first, last := r.nights(low)
				j.extreme(r, first, last, r.TMinC.Value, func(o *climate.Observation) *climate.Maybe { return &o.TMinC }, -1)
				low = r
			}
			j.whole(r)
		}
	}
	return Days{Record: j.over(station), From: j.from}
}

// inOrder are the readings in the open, in order of time.
func inOrder(readings []Reading) []Reading {
	var open []Reading
	for _, r := range readings {
		if r.Bed == "" && r.Date.IsSet() {
			open = append(open, r)
		}
	}
	slices.SortStableFunc(open, func(a, b Reading) int {
		return cmp.Or(cmp.Compare(a.Date, b.Date), -cmp.Compare(a.At, b.At)) // morning before evening
	})
	return open
}

func byDate(r *climate.Record) map[cal.Date]*climate.Observation {
	out := map[cal.Date]*climate.Observation{}
	if r != nil {
		for i := range r.Days {
			out[r.Days[i].Date] = &r.Days[i]
		}
	}
	return out
}

// joining is a record under way: days that are touched are copies.
type joining struct {
	station map[cal.Date]*climate.Observation
	days    map[cal.Date]*climate.Observation
	from    map[cal.Date]Origins
}

// day is a day that may be written on.
func (j *joining) day(on cal.Date) *climate.Observation {
	if d, ok := j.days[on]; ok {
		return d
	}
	d := &climate.Observation{Date: on}
	if s, ok := j.station[on]; ok {
		*d = *s
	}
	j.days[on] = d
	return d
}

// rain puts a sum on its days, in the shares that the station tells.
func (j *joining) rain(r, before *Reading) {
	first, last := r.days(before)
	shares := j.shares(first, last)
	for on := first; on <= last; on++ {
		j.day(on).RainMM = climate.Is(r.RainMM.Value * shares[on-first])
		o := j.from[on]
		o.Rain = originOf(r)
		j.from[on] = o
	}
}

// shares are those of the station's rain on each of some days; all on the last
// day where the station knows none or not every day.
func (j *joining) shares(first, last cal.Date) []float64 {
	out := make([]float64, last-first+1)
	sum := 0.0
	for on := first; on <= last; on++ {
		s, ok := j.station[on]
		if !ok || !s.RainMM.Known {
			sum = 0
			break
		}
		out[on-first] = s.RainMM.Value
		sum += s.RainMM.Value
	}
	if sum <= 0 {
		clear(out)
		out[len(out)-1] = 1
		return out
	}
	for i := range out {
		out[i] /= sum
	}
	return out
}

// extreme gives an extreme to its day: the only one, else the one of the
// station's own extreme. The other days keep the station's figures, held within
// what was read. sign is 1 for a maximum, -1 for a minimum.
func (j *joining) extreme(r *Reading, first, last cal.Date, value float64, at func(*climate.Observation) *climate.Maybe, sign float64) {
	if first == last {
		j.set(first, value, at, originOf(r))
		return
	}
	best := cal.None
	for on := first; on <= last; on++ {
		s, ok := j.station[on]
		if !ok || !at(s).Known {
			return
		}
		if !best.IsSet() || sign*at(s).Value > sign*at(j.station[best]).Value {
			best = on
		}
	}
	for on := first; on <= last; on++ {
		if sign*at(j.day(on)).Value > sign*value {
			at(j.day(on)).Value = value
		}
	}
	j.set(best, value, at, originOf(r))
}

// set writes an extreme. The other one of the day gives way where they would cross.
func (j *joining) set(on cal.Date, value float64, at func(*climate.Observation) *climate.Maybe, from Origin) {
	d := j.day(on)
	*at(d) = climate.Is(value)
	if d.TMinC.Known && d.TMaxC.Known && d.TMinC.Value > d.TMaxC.Value {
		d.TMinC.Value, d.TMaxC.Value = value, value
	}
	o := j.from[on]
	o.Warmth = from
	j.from[on] = o
}

// whole puts down what only a whole day's instrument tells.
func (j *joining) whole(r *Reading) {
	if r.By != Instrument {
		return
	}
	for _, f := range []struct {
		told climate.Maybe
		at   func(*climate.Observation) *climate.Maybe
	}{
		{r.HumidityPct, func(o *climate.Observation) *climate.Maybe { return &o.HumidityPct }},
		{r.RadiationMJ, func(o *climate.Observation) *climate.Maybe { return &o.RadiationMJ }},
		{r.WindMS, func(o *climate.Observation) *climate.Maybe { return &o.WindMS }},
	} {
		if f.told.Known {
			*f.at(j.day(r.Date)) = f.told
		}
	}
}

func originOf(r *Reading) Origin {
	if r.By == Instrument {
		return FromSensor
	}
	return FromHand
}

// over is the station's record with the days that were touched in place.
func (j *joining) over(station *climate.Record) *climate.Record {
	out := &climate.Record{}
	if station != nil {
		out.ID = station.ID
		out.Days = make([]climate.Observation, 0, len(station.Days)+len(j.days))
		for i := range station.Days {
			if _, touched := j.days[station.Days[i].Date]; !touched {
				out.Days = append(out.Days, station.Days[i])
			}
		}
	}
	for _, d := range j.days {
		out.Days = append(out.Days, *d)
	}
	slices.SortFunc(out.Days, func(a, b climate.Observation) int { return cmp.Compare(a.Date, b.Date) })
	return out
}
