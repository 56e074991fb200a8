package scoreboard

import (
	"fmt"
	"io/fs"
	"strings"

	"garner/internal/climate"
	"garner/internal/sun"
)

// Region is a place whose advisory service prints planting dates.
type Region struct {
	ID       string
	Location sun.Location
	Normals  climate.Normals
	StandIn  bool // the station stands in for a whole zone
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

// ReadPlantingDates reads regions.csv, normals.csv and dates.csv of a folder.
// Every fault of a file is told at once.
func ReadPlantingDates(files fs.FS) (*PlantingDates, error) {
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
	c, err := openCells(files, "regions.csv", "region_id", "lat", "lon", "elevation_m", "station")
	if err != nil {
		return nil, err
	}
	var out []Region
	for i := range c.Rows {
		n, ok := normals[c.text(i, "region_id")]
		if !ok {
			continue
		}
		r := Region{ID: c.text(i, "region_id"), Normals: n, StandIn: strings.Contains(c.text(i, "station"), "stand-in")}
		r.Location = sun.Location{LatitudeDeg: c.number(i, "lat", -90, 90), LongitudeDeg: c.number(i, "lon", -180, 180)}
		if c.text(i, "elevation_m") != "" {
			r.Location.ElevationM = c.number(i, "elevation_m", -430, 6000)
		}
		out = append(out, r)
	}
	return out, c.err()
}

func readDates(files fs.FS) ([]Date, error) {
	c, err := openCells(files, "dates.csv", "region_id", "crop", "method", "start", "end", "season", "precision", "orig_text", "source")
	if err != nil {
		return nil, err
	}
	var out []Date
	for i := range c.Rows {
		out = append(out, Date{Region: c.text(i, "region_id"), Crop: c.text(i, "crop"), Method: c.text(i, "method"),
			Start: c.day(i, "start"), End: c.day(i, "end"), Season: c.text(i, "season"),
			Precision: c.text(i, "precision"), Text: c.text(i, "orig_text"), Source: c.text(i, "source")})
	}
	return out, c.err()
}

// readNormals reads the months of each region; sunshine counts only where all
// twelve are given, as mean hours a day of the printed monthly sum. Regions
// without all twelve months are left out.
func readNormals(files fs.FS) (map[string]climate.Normals, error) {
	c, err := openCells(files, "normals.csv", "region_id", "month", "tmin_c", "tmax_c", "precip_mm", "sunshine_h")
	if err != nil {
		return nil, err
	}
	out, months, sunny := map[string]climate.Normals{}, map[string]int{}, map[string]int{}
	for i := range c.Rows {
		id, m := c.text(i, "region_id"), int(c.number(i, "month", 1, 12))-1
		if m < 0 || m > 11 {
			continue
		}
		normals := out[id]
		n := climate.MonthNormal{TMinC: c.number(i, "tmin_c", -60, 50), TMaxC: c.number(i, "tmax_c", -60, 60), RainMM: c.number(i, "precip_mm", 0, 2000)}
		if c.text(i, "sunshine_h") != "" {
			n.SunH = climate.Is(c.number(i, "sunshine_h", 0, 744) / float64(monthDays[m]))
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
	return out, c.err()
}

var monthDays = [12]int{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}

// dayOf reads MM-DD as a day of the common year; 29 February is the 28th.
func dayOf(s string) (int, bool) {
	var m, d int
	if n, _ := fmt.Sscanf(s, "%d-%d", &m, &d); n != 2 || m < 1 || m > 12 || d < 1 || d > 31 {
		return 0, false
	}
	day := min(d, monthDays[m-1])
	for i := range m - 1 {
		day += monthDays[i]
	}
	return day, true
}
