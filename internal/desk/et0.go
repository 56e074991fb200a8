package desk

import (
	"math"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/water"
	"garner/internal/words"
)

// ET0Result is the reference evapotranspiration of the days of a record.
type ET0Result struct {
	Days    []ET0Day   `json:"days"`
	TotalMM float64    `json:"total_mm"`
	Plain   int        `json:"-"` // days worked out from temperatures alone
	Left    fault.List `json:"-"` // days for which it cannot be told
}

// ET0Day is one day of it.
type ET0Day struct {
	Date cal.Date      `json:"date"`
	MM   float64       `json:"et0_mm"`
	By   water.Formula `json:"by"`
}

// ET0 works out the reference evapotranspiration of every day of a record in the
// open: Penman-Monteith by FAO-56 with the paper's rules for what was not measured,
// Hargreaves for days with temperatures alone. file names the record in what is told
// of it.
func ET0(r *climate.Record, site Site, file string) (*ET0Result, error) {
	out := &ET0Result{Days: []ET0Day{}}
	place := water.NewPlace(site.ElevationM)
	for i := range r.Days {
		o := &r.Days[i]
		mm, by, ok := place.Observed(o, site)
		if !ok {
			out.Left = append(out.Left, fault.New(fault.Invalid, "desk.et0_no_temperature", words.Args{"date": o.Date}).
				In(fault.Place{File: file, Row: o.Row}))
			continue
		}
		if by == water.Hargreaves {
			out.Plain++
		}
		out.TotalMM += mm
		out.Days = append(out.Days, ET0Day{o.Date, math.Round(1000*mm) / 1000, by})
	}
	out.TotalMM = tenthOf(out.TotalMM)
	if len(out.Days) == 0 {
		return nil, out.Left
	}
	return out, nil
}
