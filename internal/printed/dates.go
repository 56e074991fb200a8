package printed

import (
	"io/fs"
	"strings"

	"garner/internal/climate"
	"garner/internal/sun"
	"garner/internal/table"
)

// Region is a place whose advisory service prints planting dates.
type Region struct {
	ID       string
	Location sun.Location
	Normals  climate.Normals
	StandIn  bool // the station stands in for a whole zone

	// The average frosts a gardener would look up, days of the common year; 0
	// where they are not given.
	LastFrost, FirstFrost int
}

// Date is one row of a printed table.
type Date struct {
	Region, Crop, Method string
	Start, End           int // days of the common year, 0: not given
	Season               string
	Precision, Text      string
	Source               string
}

// PlantingDates is a folder of printed planting dates.
type PlantingDates struct {
	Regions []Region
	Dates   []Date
}

// Read reads regions.csv, normals.csv and dates.csv of a folder.
// Every fault of a file is told at once.
func Read(files fs.FS) (*PlantingDates, error) {
	normals, err := readNormals(files)
	if err != nil {
		return nil, err
	}
	p := &PlantingDates{}
	if p.Regions, err = readRegions(files, normals); err != nil {
		return nil, err
	}
	p.Dates, err = readDates(files)
	return p, err
}

// readRegions reads the places; those without normals are left out.
func readRegions(files fs.FS, normals map[string]climate.Normals) ([]Region, error) {
	c, err := table.OpenCells(files, "regions.csv", "region_id", "lat", "lon", "elevation_m", "station")
	if err != nil {
		return nil, err
	}
	var out []Region
	for i := range c.Rows {
		n, ok := normals[c.Text(i, "region_id")]
		if !ok {
			continue
		}
		r := Region{ID: c.Text(i, "region_id"), Normals: n, StandIn: strings.Contains(c.Text(i, "station"), "stand-in")}
		r.Location = sun.Location{LatitudeDeg: c.Within(i, "lat", -90, 90), LongitudeDeg: c.Within(i, "lon", -180, 180)}
		if c.Text(i, "elevation_m") != "" {
			r.Location.ElevationM = c.Within(i, "elevation_m", -430, 6000)
		}
		if c.Column("last_frost") >= 0 && c.Column("first_frost") >= 0 {
			r.LastFrost, r.FirstFrost = c.Day(i, "last_frost"), c.Day(i, "first_frost")
		}
		out = append(out, r)
	}
	return out, c.Err()
}

func readDates(files fs.FS) ([]Date, error) {
	c, err := table.OpenCells(files, "dates.csv", "region_id", "crop", "method", "start", "end", "season", "precision", "orig_text", "source")
	if err != nil {
		return nil, err
	}
	var out []Date
	for i := range c.Rows {
		out = append(out, Date{Region: c.Text(i, "region_id"), Crop: c.Text(i, "crop"), Method: c.Text(i, "method"),
			Start: c.Day(i, "start"), End: c.Day(i, "end"), Season: c.Text(i, "season"),
			Precision: c.Text(i, "precision"), Text: c.Text(i, "orig_text"), Source: c.Text(i, "source")})
	}
	return out, c.Err()
}

// readNormals reads the months of each region; sunshine counts only where all
// twelve are given, as mean hours a day of the printed monthly sum. Regions
// without all twelve months are left out.
func readNormals(files fs.FS) (map[string]climate.Normals, error) {
	c, err := table.OpenCells(files, "normals.csv", "region_id", "month", "tmin_c", "tmax_c", "precip_mm", "sunshine_h")
	if err != nil {
		return nil, err
	}
	out, months, sunny := map[string]climate.Normals{}, map[string]int{}, map[string]int{}
	for i := range c.Rows {
		id, m := c.Text(i, "region_id"), int(c.Within(i, "month", 1, 12))-1
		if m < 0 || m > 11 {
			continue
		}
		normals := out[id]
		n := climate.MonthNormal{TMinC: c.Within(i, "tmin_c", -60, 50), TMaxC: c.Within(i, "tmax_c", -60, 60), RainMM: c.Within(i, "precip_mm", 0, 2000)}
		if c.Text(i, "sunshine_h") != "" {
			n.SunH = climate.Is(c.Within(i, "sunshine_h", 0, 744) / float64(monthDays[m]))
			sunny[id]++
		}
		normals[m] = n
		out[id] = normals
		months[id]++
	}
	for id, normals := range out {
		if months[id] != len(normals) {
			delete(out, id)
			continue
		}
		if sunny[id] != len(normals) {
			for m := range normals {
				normals[m].SunH = climate.Maybe{}
			}
			out[id] = normals
		}
	}
	return out, c.Err()
}

var monthDays = [12]int{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}
