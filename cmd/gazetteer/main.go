// Command gazetteer packs a folder of monthly normals, stations.csv and
// normals.csv, into the two compressed files that package gazetteer carries.
//
//	go run ./cmd/gazetteer <folder>
package main

import (
	"bytes"
	"compress/gzip"
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

const dataFolder = "internal/gazetteer/data"

// elements are the columns of normals.csv that are kept, with twelve months each.
var elements = []string{"tmin_c", "tmax_c", "rain_mm", "sun_h_day", "rad_mj_m2"}

func main() {
	if len(os.Args) != 2 {
		fmt.Fprintln(os.Stderr, "usage: gazetteer <folder with stations.csv and normals.csv>")
		os.Exit(2)
	}
	if err := pack(os.Args[1]); err != nil {
		fmt.Fprintln(os.Stderr, "gazetteer:", err)
		os.Exit(1)
	}
}

func pack(folder string) error {
	stations, err := records(filepath.Join(folder, "stations.csv"))
	if err != nil {
		return err
	}
	months, err := records(filepath.Join(folder, "normals.csv"))
	if err != nil {
		return err
	}
	values := map[string]string{} // by station, element and month
	for _, m := range months {
		for _, e := range elements {
			values[m["id"]+" "+e+" "+m["month"]] = m[e]
		}
	}
	places := [][]string{{"id", "name", "country", "lat", "lon", "elev_m", "period", "record", "height"}}
	normals := [][]string{{"id"}}
	for _, e := range elements {
		for month := 1; month <= 12; month++ {
			normals[0] = append(normals[0], fmt.Sprintf("%s_%d", e, month))
		}
	}
	for _, s := range stations {
		places = append(places, []string{s["id"], s["name"], s["country"], s["lat"], s["lon"], s["elev_m"], s["period"],
			recordOf(s["how"]), heightOf(s["how"])})
		row := []string{s["id"]}
		for _, e := range elements {
			for month := 1; month <= 12; month++ {
				row = append(row, shortest(values[fmt.Sprintf("%s %s %d", s["id"], e, month)]))
			}
		}
		normals = append(normals, row)
	}
	if err := write("places.csv.gz", places); err != nil {
		return err
	}
	return write("normals.csv.gz", normals)
}

// recordOf tells a short record and a normal that was sent ready made apart from
// the mean of a full one.
func recordOf(how string) string {
	switch {
	case strings.Contains(how, "short record"):
		return "short"
	case strings.HasPrefix(how, "seen"):
		return "sent"
	}
	return ""
}

func heightOf(how string) string {
	if strings.Contains(how, "elevation doubtful") {
		return "doubtful"
	}
	return ""
}

// shortest drops zeros that end a decimal fraction.
func shortest(number string) string {
	if strings.Contains(number, ".") {
		number = strings.TrimRight(strings.TrimRight(number, "0"), ".")
	}
	return number
}

// records reads a table as rows by column name.
func records(path string) ([]map[string]string, error) {
	raw, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	rows, err := csv.NewReader(bytes.NewReader(raw)).ReadAll()
	if err != nil {
		return nil, err
	}
	out := make([]map[string]string, 0, len(rows))
	for _, row := range rows[1:] {
		r := map[string]string{}
		for i, cell := range row {
			r[rows[0][i]] = cell
		}
		out = append(out, r)
	}
	return out, nil
}

// write packs rows; the same rows give the same bytes.
func write(name string, rows [][]string) error {
	var b bytes.Buffer
	z, err := gzip.NewWriterLevel(&b, gzip.BestCompression)
	if err != nil {
		return err
	}
	if err := csv.NewWriter(z).WriteAll(rows); err != nil {
		return err
	}
	if err := z.Close(); err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(dataFolder, name), b.Bytes(), 0o644)
}
