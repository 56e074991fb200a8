package exchange

import (
	"io"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/table"
)

func stationNormals(r io.Reader, name string) (*climate.Normals, error) {
	t, err := table.Read(r, name, mostBytes)
	if err != nil {
		return nil, err
	}
	var n climate.Normals
	g := func(row []string, c string) climate.Maybe {
		at := t.Column(c)
		if at < 0 {
			return climate.Maybe{}
		}
		v, ok := t.Number(row[at])
		return climate.Maybe{v, ok}
	}
	for i, row := range t.Rows {
		if i < 12 {
			n[i] = climate.MonthNormal{TMinC: g(row, "tmin_c").Value, TMaxC: g(row, "tmax_c").Value, RainMM: g(row, "rain_mm").Value, SunH: g(row, "sun_h"), RadiationMJ: g(row, "rad_mj_m2"), HumidityPct: g(row, "rh_pct"), WindMS: g(row, "wind_ms")}
		}
	}
	return &n, nil
}

func stationDaily(r io.Reader, name string) (*climate.Record, fault.List, error) {
	t, err := table.Read(r, name, mostBytes)
	if err != nil {
		return nil, nil, err
	}
	g := func(row []string, c string) climate.Maybe {
		at := t.Column(c)
		if at < 0 {
			return climate.Maybe{}
		}
		v, ok := t.Number(row[at])
		return climate.Maybe{v, ok}
	}
	out := &climate.Record{}
	for i, row := range t.Rows {
		if t.Column("date") < 0 {
			break
		}
		d, err := cal.Parse(row[t.Column("date")])
		if err != nil || len(out.Days) > 0 && d <= out.Days[len(out.Days)-1].Date {
			continue
		}
		out.Days = append(out.Days, climate.Observation{Date: d, TMinC: g(row, "tmin_c"), TMaxC: g(row, "tmax_c"), RainMM: g(row, "rain_mm"), SunH: g(row, "sun_h"), RadiationMJ: g(row, "rad_mj_m2"), HumidityPct: g(row, "rh_pct"), DewC: g(row, "dew_c"), WindMS: g(row, "wind_ms"), Row: t.Numbers[i]})
	}
	return out, nil, nil
}
