package exchange

import (
	"bytes"
	"io/fs"
	"math"
	"path"
	"strconv"
	"strings"

	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/words"
)

// weatherTable is one weather file as it is written.
type weatherTable struct {
	path    string
	schema  *tableSchema
	columns []string
	rows    [][]string
}

// weatherTables makes the weather files of a holding. Two sources may share a
// file when they say the same.
func weatherTables(h *holding.Holding, found *findings) []weatherTable {
	var out []weatherTable
	written := map[string][]byte{}
	add := func(row int, column string, t weatherTable) {
		at := fault.Place{File: "weather.csv", Row: row + 2, Column: column}
		if wrong := badFileName(t.path); wrong != nil {
			found.add(wrong.In(at))
			return
		}
		content, name := writeTable(t.columns, t.rows), strings.ToLower(t.path)
		other, twice := written[name]
		switch {
		case !twice:
			written[name] = content
			out = append(out, t)
		case !bytes.Equal(other, content):
			found.add(fault.New(fault.Conflict, "exchange.file_shared", words.Args{"given": t.path}).In(at))
		}
	}
	for i := range h.Weather {
		cells := weatherSheet.write(&h.Weather[i])
		w := &h.Weather[i]
		if name := cells[3]; name != "" {
			add(i, "normals", normalsTable(name, w.Normals))
		}
		if name := cells[4]; name != "" {
			add(i, "record", dailyTable(name, w.Record))
		}
		if name := cells[5]; name != "" {
			add(i, "forecast", dailyTable(name, w.Forecast))
		}
	}
	return out
}

// badFileName refuses names that would leave the holding or hide a table.
func badFileName(name string) *fault.Error {
	if !fs.ValidPath(name) || strings.ContainsAny(name, "\\:") || isHidden(name) || !isTable(name) || name != canonical(name) {
		return fault.New(fault.Invalid, "exchange.bad_file_name", words.Args{"given": name})
	}
	for i := range schemas.Tables {
		if strings.EqualFold(name, schemas.Tables[i].file()) {
			return fault.New(fault.Conflict, "exchange.file_is_table", words.Args{"given": path.Base(name)})
		}
	}
	return nil
}

func weatherSchema(name string) *tableSchema {
	for i := range schemas.WeatherFiles {
		if schemas.WeatherFiles[i].Name == name {
			return &schemas.WeatherFiles[i]
		}
	}
	return nil
}

func normalsTable(name string, n *climate.Normals) weatherTable {
	rows := make([][]climate.Maybe, len(n))
	lead := make([]string, len(n))
	for i, m := range n {
		lead[i] = strconv.Itoa(i + 1)
		rows[i] = []climate.Maybe{climate.Is(m.TMinC), climate.Is(m.TMaxC), climate.Is(m.RainMM), m.SunH, m.RadiationMJ, m.HumidityPct, m.WindMS}
	}
	return known(name, weatherSchema("normals"), lead, rows)
}

func dailyTable(name string, r *climate.Record) weatherTable {
	rows := make([][]climate.Maybe, 0, len(r.Days))
	lead := make([]string, 0, len(r.Days))
	for i := range r.Days {
		if d := &r.Days[i]; observed(d) {
			lead = append(lead, d.Date.String())
			rows = append(rows, valuesOf(d))
		}
	}
	return known(name, weatherSchema("daily"), lead, rows)
}

// valuesOf are a day's values in the order of the columns.
func valuesOf(d *climate.Observation) []climate.Maybe {
	return []climate.Maybe{d.TMinC, d.TMaxC, d.RainMM, d.SunH, d.RadiationMJ, d.HumidityPct, d.DewC, d.WindMS}
}

func observed(d *climate.Observation) bool {
	for _, v := range valuesOf(d) {
		if v.Known {
			return true
		}
	}
	return false
}

// hasDays tells whether a record holds anything to write.
func hasDays(r *climate.Record) bool {
	if r == nil {
		return false
	}
	for i := range r.Days {
		if observed(&r.Days[i]) {
			return true
		}
	}
	return false
}

// known makes a table of the columns of which something is known; temperatures
// always, as every reader expects them.
func known(name string, s *tableSchema, lead []string, values [][]climate.Maybe) weatherTable {
	t := weatherTable{path: name, schema: s, columns: []string{s.Fields[0].Name}, rows: make([][]string, len(lead))}
	var kept []int
	for i := range s.Fields[1:] {
		if i < 2 || s.Fields[i+1].required() || anyKnown(values, i) {
			kept = append(kept, i)
			t.columns = append(t.columns, s.Fields[i+1].Name)
		}
	}
	for r := range values {
		row := make([]string, 0, len(kept)+1)
		row = append(row, lead[r])
		for _, i := range kept {
			row = append(row, writeMaybe(values[r][i]))
		}
		t.rows[r] = row
	}
	return t
}

func anyKnown(values [][]climate.Maybe, column int) bool {
	for _, row := range values {
		if row[column].Known {
			return true
		}
	}
	return false
}

func writeMaybe(v climate.Maybe) string {
	if !v.Known || math.IsNaN(v.Value) || math.IsInf(v.Value, 0) {
		return ""
	}
	return writeNumber(v.Value)
}
