package cli

import (
	"io"
	"math"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/desk"
	"garner/internal/station"
)

// generateCommand makes daily weather from monthly normals.
type generateCommand struct {
	Normals string `placeholder:"NORMALS.csv"`
	Site    string `placeholder:"LAT,LON,ELEV"`
	Years   string `placeholder:"N"`
	Seed    string `placeholder:"S"`
	holdingFlags
	JSON bool `name:"json"`
}

// generatedDay is a day of the JSON; its fields are the columns of the CSV.
type generatedDay struct {
	Date        cal.Date `json:"date"`
	TMinC       float64  `json:"tmin_c"`
	TMaxC       float64  `json:"tmax_c"`
	RainMM      float64  `json:"rain_mm"`
	RadiationMJ float64  `json:"rad_mj_m2"`
}

// Run asks the desk for the weather and writes it as CSV, or as JSON.
func (c *generateCommand) Run(a *App) error {
	var f flags
	years := f.whole("--years", c.Years, 1, maxYears, 1)
	seed := f.seed(c.Seed)
	at, err := c.findSpot(a, &f, c.Site, "--normals", c.Normals)
	if err != nil {
		return err
	}
	normals, err := a.normals(c.Normals, at)
	if err != nil {
		return err
	}
	series, err := desk.Generate(normals, at.site, years, seed)
	if err != nil {
		return err
	}
	if c.JSON {
		return a.json(map[string][]generatedDay{"days": generatedDays(series)})
	}
	return writeDaily(a.Stdout, generatedDays(series))
}

// generatedDays rounds generated weather to hundredths, sharper than any
// instrument on a post.
func generatedDays(s *climate.Series) []generatedDay {
	days := make([]generatedDay, len(s.Days))
	for i, d := range s.Days {
		days[i] = generatedDay{
			s.First + cal.Date(i), hundredths(d.TMinC), hundredths(d.TMaxC),
			hundredths(d.RainMM), hundredths(d.RadiationMJ),
		}
	}
	return days
}

func hundredths(x float64) float64 { return math.Round(x*100) / 100 }

// writeDaily writes generated days as a daily record.
func writeDaily(w io.Writer, days []generatedDay) error {
	record := climate.Record{Days: make([]climate.Observation, len(days))}
	for i, d := range days {
		record.Days[i] = climate.Observation{
			Date: d.Date, TMinC: climate.Is(d.TMinC), TMaxC: climate.Is(d.TMaxC),
			RainMM: climate.Is(d.RainMM), RadiationMJ: climate.Is(d.RadiationMJ),
		}
	}
	return station.WriteDaily(w, &record)
}
