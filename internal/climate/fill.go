package climate

import (
	"math"
	"slices"

	"garner/internal/cal"
	"garner/internal/sun"
)

// interpolatedDays is the longest gap that is bridged by straight lines.
const interpolatedDays = 5

// Filled counts what was missing in a record and how it was made up.
type Filled struct {
	Interpolated int // days whose temperatures were bridged over a gap of at most five days
	Generated    int // days in longer gaps, taken from the generator
}

// span returns the first day of a record and the days to its last.
func (r *Record) span() (first cal.Date, n int) {
	if len(r.Days) == 0 {
		return cal.None, 0
	}
	first = r.Days[0].Date
	return first, int(r.Days[len(r.Days)-1].Date-first) + 1
}

// fillRecord makes an unbroken series of n days from first on out of a record:
// temperatures over short gaps by straight lines, longer gaps and missing rain
// from the generator (one fixed future of it), radiation from sunshine or from
// the temperature range.
func fillRecord(r *Record, g *Generator, first cal.Date, n int) (Series, Filled) {
	if n == 0 {
		return Series{}, Filled{}
	}
	days := g.appendDays(make([]Day, 0, n), key{seed: fillSeed}, first, n)
	rows := make([]*Observation, n)
	from, _ := slices.BinarySearchFunc(r.Days, first, func(o Observation, d cal.Date) int { return int(o.Date - d) })
	for i := from; i < len(r.Days) && r.Days[i].Date < first+cal.Date(n); i++ {
		rows[r.Days[i].Date-first] = &r.Days[i]
	}
	temperatures := make([]bool, n)
	for i, o := range rows {
		if o != nil && o.TMinC.Known && o.TMaxC.Known && o.TMinC.Value <= o.TMaxC.Value {
			days[i].TMinC, days[i].TMaxC = o.TMinC.Value, o.TMaxC.Value
			temperatures[i] = true
		}
	}
	filled := bridge(days, temperatures)
	for i, o := range rows {
		if o != nil {
			days[i].take(o, g.location, first+cal.Date(i))
		}
	}
	return Series{First: first, Days: days}, filled
}

// fillSeed keeps the days made up for gaps apart from those of the futures.
const fillSeed = 0x6761_7073

// bridge draws straight lines over the short gaps in the temperatures.
func bridge(days []Day, known []bool) (f Filled) {
	for i := 0; i < len(days); {
		if known[i] {
			i++
			continue
		}
		end := i
		for end < len(days) && !known[end] {
			end++
		}
		gap := end - i
		if i == 0 || end == len(days) || gap > interpolatedDays {
			f.Generated += gap
			i = end
			continue
		}
		f.Interpolated += gap
		before, after := days[i-1], days[end]
		for k := i; k < end; k++ {
			share := float64(k-i+1) / float64(gap+1)
			days[k].TMinC = before.TMinC + share*(after.TMinC-before.TMinC)
			days[k].TMaxC = before.TMaxC + share*(after.TMaxC-before.TMaxC)
		}
		i = end
	}
	return f
}

// take sets what an observation knows besides the temperatures.
func (d *Day) take(o *Observation, loc sun.Location, date cal.Date) {
	if o.RainMM.Known {
		d.RainMM = o.RainMM.Value
	}
	switch doy := date.DayOfYear(); {
	case o.RadiationMJ.Known:
		d.RadiationMJ = o.RadiationMJ.Value
	case o.SunH.Known:
		ra := sun.ExtraterrestrialMJ(loc.LatitudeDeg, doy)
		d.RadiationMJ = sun.AngstromMJ(ra, o.SunH.Value, sun.DaylightH(loc.LatitudeDeg, doy))
	case o.TMinC.Known && o.TMaxC.Known:
		ra := sun.ExtraterrestrialMJ(loc.LatitudeDeg, doy)
		d.RadiationMJ = math.Min(sun.ClearSkyMJ(ra, loc.ElevationM), sun.HargreavesMJ(ra, d.TMinC, d.TMaxC, sun.Inland))
	}
	if h := o.humidity(); h.Known {
		d.HumidityPct = h.Value
	}
	if o.WindMS.Known {
		d.WindMS = o.WindMS.Value
	}
}
