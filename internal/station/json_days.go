package station

import (
	"encoding/json"
	"slices"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/words"
)

// dayAhead is what was gathered of a day.
type dayAhead struct {
	o     climate.Observation
	hours int                // with a temperature
	n     map[string]float64 // of hours by quantity, for means
}

// gathering is a forecast under way.
type gathering struct {
	days   map[cal.Date]*dayAhead
	report *Report
}

// leastShare is how much of the fullest day's hours make a day's extremes: one that
// has only begun in the lists has not shown its night or its noon.
const leastShare = 0.75

// limits of a figure, in our units.
var limits = map[string][2]float64{
	columnTMin: {climate.LeastC, climate.MostC}, columnTMax: {climate.LeastC, climate.MostC}, hourTemperature: {climate.LeastC, climate.MostC},
	columnRain: {0, 1000}, columnWind: {0, 90}, columnSun: {0, 24}, columnRadiation: {0, 50}, columnHumidity: {0, 100},
}

// take adds one figure to its day. What is null is not known.
func (g *gathering) take(date cal.Date, q fieldMapped, given any, at fault.Place) {
	if given == nil {
		return
	}
	number, is := given.(json.Number)
	v, err := number.Float64()
	if !is || err != nil {
		at.Column = q.name
		g.report.Refused = append(g.report.Refused, fault.New(fault.Invalid, "station.json_number", words.Args{"path": joinPath(q.path)}).In(at))
		return
	}
	v = v*q.scale.times + q.scale.offset
	if b := limits[q.name]; v < b[0] || v > b[1] {
		at.Column = q.name
		g.report.Refused = append(g.report.Refused, fault.New(fault.Invalid, "station.json_range",
			words.Args{"path": joinPath(q.path), "value": v, "least": b[0], "most": b[1]}).In(at))
		return
	}
	if q.heightM > 0 && q.heightM != 2 {
		v = climate.WindAt2M(v, q.heightM)
	}
	d, known := g.days[date]
	if !known {
		d = &dayAhead{o: climate.Observation{Date: date, Row: at.Row}, n: map[string]float64{}}
		g.days[date] = d
	}
	d.add(q.name, v)
}

// add adds a figure: extremes to extremes, sums to sums, all else to means.
func (d *dayAhead) add(name string, v float64) {
	switch name {
	case hourTemperature:
		d.hours++
		if !d.o.TMinC.Known || v < d.o.TMinC.Value {
			d.o.TMinC = climate.Is(v)
		}
		if !d.o.TMaxC.Known || v > d.o.TMaxC.Value {
			d.o.TMaxC = climate.Is(v)
		}
	case columnTMin:
		d.o.TMinC = climate.Is(v)
	case columnTMax:
		d.o.TMaxC = climate.Is(v)
	case columnRain:
		d.o.RainMM = climate.Is(d.o.RainMM.Value + v)
	case columnSun:
		d.o.SunH = climate.Is(min(24, d.o.SunH.Value+v))
	case columnRadiation:
		d.o.RadiationMJ = climate.Is(d.o.RadiationMJ.Value + v)
	case columnHumidity:
		d.mean(name, &d.o.HumidityPct, v)
	case columnWind:
		d.mean(name, &d.o.WindMS, v)
	}
}

func (d *dayAhead) mean(name string, of *climate.Maybe, v float64) {
	n := d.n[name]
	*of = climate.Is((of.Value*n + v) / (n + 1))
	d.n[name] = n + 1
}

// record is what was gathered, in order of date.
func (g *gathering) record(name string, hours bool) *climate.Record {
	r := &climate.Record{ID: name}
	fullest := 0
	for _, d := range g.days {
		fullest = max(fullest, d.hours)
	}
	for _, d := range g.days {
		o := &d.o
		switch {
		case !o.TMinC.Known || !o.TMaxC.Known || hours && float64(d.hours) < leastShare*float64(fullest):
			continue
		case o.TMinC.Value > o.TMaxC.Value:
			g.report.Refused = append(g.report.Refused, fault.New(fault.Invalid, "station.minimum_above_maximum",
				words.Args{"tmin": o.TMinC.Value, "tmax": o.TMaxC.Value}).In(fault.Place{File: name, Row: o.Row}))
			continue
		}
		r.Days = append(r.Days, *o)
	}
	slices.SortFunc(r.Days, func(a, b climate.Observation) int { return int(a.Date - b.Date) })
	if len(r.Days) > mostAheadDays {
		r.Days = r.Days[:mostAheadDays]
	}
	return r
}
