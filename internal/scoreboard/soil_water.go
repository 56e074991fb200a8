package scoreboard

import (
	"garner/internal/table"
	"garner/internal/water"
	"garner/internal/words"
)

// soilWater holds the water balance of the soil, run by the day, against published
// courses.
func (m *maker) soilWater() (s Section, err error) {
	c, err := table.OpenCells(m.data, "soil_water.csv", "check", "place", "capacity", "wilting", "ready_mm", "surface_mm", "root_m", "easy", "basal", "cover",
		"height_m", "wind_ms", "least_pct", "asked_mm", "missing_mm", "dry_mm", "days", "low", "high", "slack", "source", "mark")
	if err != nil {
		return s, err
	}
	for i := range c.Rows {
		check := c.Text(i, "check")
		args := words.Args{"place": c.Text(i, "place"), "day": filled(c, i, "days", 0)}
		l := Line{Check: words.P("scoreboard.soil_water_"+check, args), Published: span(c, i, "low", "high"), Unit: waterMM,
			Slack: c.Within(i, "slack", 0, 1), Sources: []string{m.work(c.Text(i, "source"))}, Mark: c.Text(i, "mark")}
		if check == "stress" {
			l.Unit = "1"
		}
		l.Computed = exactly(soilWaterOn(c, i, check))
		s.Lines = append(s.Lines, l.judge())
	}
	return s, c.Err()
}

// soilWaterOn runs the balance of a row through its days without water, and returns
// what is checked on the last of them.
func soilWaterOn(c *table.Cells, i int, check string) float64 {
	soil := water.Soil{Capacity: c.Within(i, "capacity", 0, 1), Wilting: c.Within(i, "wilting", 0, 1),
		ReadyMM: c.Within(i, "ready_mm", 0, 50), SurfaceMM: c.Within(i, "surface_mm", 0, 50)}
	on := water.Stand{RootM: c.Within(i, "root_m", 0, 3), Easy: c.Within(i, "easy", 0, 1), Firm: true}
	if check == "held" {
		return soil.HeldMM(on.RootM)
	}
	on.Basal, on.Cover, on.HeightM = c.Within(i, "basal", 0, 2), c.Within(i, "cover", 0, 1), c.Within(i, "height_m", 0, 10)
	g := water.Given{ReferenceMM: c.Within(i, "asked_mm", 0, 20), WindMS: c.Within(i, "wind_ms", 0, 20), LeastPct: c.Within(i, "least_pct", 0, 100)}
	b := water.Balance{MissingMM: c.Within(i, "missing_mm", 0, 500), DryMM: c.Within(i, "dry_mm", 0, 50)}
	var f water.Flux
	for range int(c.Within(i, "days", 1, 100)) {
		f = b.Day(&soil, &on, &g)
	}
	switch check {
	case "evaporated":
		return f.EvaporatedMM
	case "stress":
		return f.Stress
	}
	return b.MissingMM
}
