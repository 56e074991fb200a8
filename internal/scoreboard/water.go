package scoreboard

import (
	"garner/internal/climate"
	"garner/internal/cover"
	"garner/internal/sun"
	"garner/internal/table"
	"garner/internal/water"
	"garner/internal/words"
)

// waterMM is the unit of a day's evapotranspiration.
const waterMM = "mm"

// water holds the reference evapotranspiration of single days against published
// ones.
func (m *maker) water() (s Section, err error) {
	c, err := table.OpenCells(m.data, "water.csv", "check", "place", "cover", "latitude_deg", "day", "elevation_m", "tmin_c", "tmax_c",
		"radiation_mj", "sunshine_h", "vapour_kpa", "wind_ms", "soil_mj", "low", "high", "slack", "source", "mark")
	if err != nil {
		return s, err
	}
	for i := range c.Rows {
		args := words.Args{"place": c.Text(i, "place")}
		l := Line{Check: words.P("scoreboard.water_reference", args), Published: span(c, i, "low", "high"), Unit: waterMM,
			Slack: c.Within(i, "slack", 0, 1), Sources: []string{m.work(c.Text(i, "source"))}, Mark: c.Text(i, "mark")}
		kind := cover.Open
		if c.Text(i, "check") == "covered" {
			kind = cover.Kind(c.Text(i, "cover"))
			args["cover"] = string(kind)
			l.Check = words.P("scoreboard.water_covered", args)
		}
		mm, err := askedOn(c, i, kind)
		if err != nil {
			return s, err
		}
		l.Computed = exactly(mm)
		s.Lines = append(s.Lines, l.judge())
	}
	return s, c.Err()
}

// askedOn is the reference evapotranspiration of a row's day under a cover [mm].
func askedOn(c *table.Cells, i int, kind cover.Kind) (float64, error) {
	over, err := cover.Lookup(kind)
	if err != nil {
		return 0, err
	}
	latitude, day := c.Within(i, "latitude_deg", -66, 66), int(c.Within(i, "day", 1, 366))
	above := sun.ExtraterrestrialMJ(latitude, day)
	open := weatherOn(c, i, latitude, day)
	place := water.NewPlace(c.Within(i, "elevation_m", -430, 5000))
	under := over.Under(open, above)
	a := place.Air(&under, water.Light{RadiationMJ: under.RadiationMJ, Cloudless: place.Cloudless(above, open.RadiationMJ), Sky: over.SkyShare()})
	a.AvailableMJ -= filled(c, i, "soil_mj", 0)
	return a.ReferenceMM(), nil
}

// weatherOn is a row's day in the open, with what is missing made up by chapter 3
// of FAO-56.
func weatherOn(c *table.Cells, i int, latitude float64, day int) climate.Day {
	d := climate.Day{TMinC: c.Within(i, "tmin_c", -50, 50), TMaxC: c.Within(i, "tmax_c", -50, 60), WindMS: filled(c, i, "wind_ms", 2)}
	above := sun.ExtraterrestrialMJ(latitude, day)
	usual := sun.HargreavesMJ(above, d.TMinC, d.TMaxC, sun.Inland)
	if c.Text(i, "sunshine_h") != "" {
		usual = sun.AngstromMJ(above, c.Within(i, "sunshine_h", 0, 24), sun.DaylightH(latitude, day))
	}
	d.RadiationMJ = filled(c, i, "radiation_mj", usual)
	d.HumidityPct = 100 * filled(c, i, "vapour_kpa", climate.SaturationKPa(d.TMinC)) / water.MeanSaturationKPa(d.TMinC, d.TMaxC)
	return d
}

// filled is the number of a cell, or another where it is blank.
func filled(c *table.Cells, i int, column string, other float64) float64 {
	if c.Text(i, column) == "" {
		return other
	}
	return c.Within(i, column, -1e3, 1e3)
}
