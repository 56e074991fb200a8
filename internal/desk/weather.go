package desk

import (
	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/window"
)

// DescribeResult is what a daily record tells of a place.
type DescribeResult struct {
	First            cal.Date      `json:"first"`
	Last             cal.Date      `json:"last"`
	Days             int           `json:"days"`
	Normals          []MonthTable  `json:"normals"`
	LastSpringFrost  FrostDates    `json:"last_spring_frost"`
	FirstAutumnFrost FrostDates    `json:"first_autumn_frost"`
	DegreeDays       []DegreeDays  `json:"degree_days"`
	Missing          []MissingDays `json:"missing"`
	Refused          fault.List    `json:"-"`
}

// MonthTable is the mean of one month; what was never recorded is absent.
type MonthTable struct {
	Month       int      `json:"month"`
	TMinC       *float64 `json:"tmin_c"`
	TMaxC       *float64 `json:"tmax_c"`
	RainMM      *float64 `json:"rain_mm"`
	SunH        *float64 `json:"sun_h,omitempty"`
	RadiationMJ *float64 `json:"rad_mj_m2,omitempty"`
	HumidityPct *float64 `json:"rh_pct,omitempty"`
	WindMS      *float64 `json:"wind_ms,omitempty"`
}

// FrostDates are the days of the year by which a frost comes in one year, five
// years and nine years in ten; absent where there are none.
type FrostDates struct {
	P10 *cal.MonthDay `json:"p10"`
	P50 *cal.MonthDay `json:"p50"`
	P90 *cal.MonthDay `json:"p90"`
}

// DegreeDays is the mean yearly thermal time above a base [C d].
type DegreeDays struct {
	BaseC    float64 `json:"base_c"`
	YearlyCd float64 `json:"yearly_cd"`
}

// MissingDays counts the days without a value in one column.
type MissingDays struct {
	Column string `json:"column"`
	Days   int    `json:"days"`
}

// Generate makes daily weather from monthly normals, from 2001-01-01.
func Generate(n *climate.Normals, site Site, years int, seed uint64) (*climate.Series, error) {
	g, err := climate.NewGenerator(*n, site)
	if err != nil {
		return nil, err
	}
	first := cal.Of(window.FirstYear, 1, 1)
	span := int(cal.Of(window.FirstYear+years, 1, 1) - first)
	return &climate.Series{First: first, Days: g.Days(seed, 0, 0, first, span)}, nil
}

// Describe tells what a daily record says of a place.
func Describe(r *climate.Record, refused fault.List, site Site) (*DescribeResult, error) {
	if len(r.Days) == 0 {
		return nil, fault.New(fault.Invalid, "climate.record_empty", nil)
	}
	d := climate.Describe(r, site)
	out := &DescribeResult{First: d.First, Last: d.Last, Days: d.Days, Refused: refused,
		LastSpringFrost: frostDates(d.LastSpringFrost), FirstAutumnFrost: frostDates(d.FirstAutumnFrost),
		DegreeDays: []DegreeDays{{BaseC: 5, YearlyCd: d.DegreeDaysBase5C}, {BaseC: 10, YearlyCd: d.DegreeDaysBase10C}},
		Missing:    missingDays(&d.Missing)}
	for i := range d.Normals {
		out.Normals = append(out.Normals, monthTable(i+1, &d.Normals[i], d.NormalsKnown))
	}
	return out, nil
}

func frostDates(f climate.FrostDates) FrostDates {
	if !f.Known {
		return FrostDates{}
	}
	return FrostDates{P10: &f.P10, P50: &f.P50, P90: &f.P90}
}

func missingDays(m *climate.Missing) []MissingDays {
	return []MissingDays{{"tmin_c", m.TMin}, {"tmax_c", m.TMax}, {"rain_mm", m.Rain}, {"sun_h", m.Sun},
		{"rad_mj_m2", m.Radiation}, {"rh_pct", m.Humidity}, {"wind_ms", m.Wind}}
}

// monthTable tells a month; what was never recorded is absent.
func monthTable(month int, n *climate.MonthNormal, known bool) MonthTable {
	t := MonthTable{Month: month}
	if !known {
		return t
	}
	t.TMinC, t.TMaxC, t.RainMM = &n.TMinC, &n.TMaxC, &n.RainMM
	t.SunH, t.RadiationMJ = pointer(n.SunH), pointer(n.RadiationMJ)
	t.HumidityPct, t.WindMS = pointer(n.HumidityPct), pointer(n.WindMS)
	return t
}

func pointer(m climate.Maybe) *float64 {
	if !m.Known {
		return nil
	}
	return &m.Value
}
