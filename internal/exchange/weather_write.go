package exchange

import (
	"bytes"
	"io/fs"
	"path"
	"strings"

	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/station"
	"garner/internal/words"
)

// weatherTable is one weather file as it is written.
type weatherTable struct {
	path    string
	schema  *tableSchema
	columns []string
	content []byte
}

// weatherTables makes the weather files of a holding. Two sources may share a
// file when they say the same.
func weatherTables(h *holding.Holding, found *findings) []weatherTable {
	w := weatherWriter{found: found, written: map[string][]byte{}}
	for i := range h.Weather {
		source := &h.Weather[i]
		cells := weatherSheet.write(source)
		at := fault.Place{File: weatherSheet.table.file(), Row: i + 2}
		own := source.Own()
		w.normals(at, "normals", cells[3], own.Normals)
		w.days(at, "record", cells[4], own.Record)
		w.days(at, "forecast", cells[5], source.Forecast)
		w.hours(at, cells[6], own.Hours)
	}
	for i := range h.Files {
		f := &h.Files[i]
		cells := weatherFilesSheet.write(f)
		at := fault.Place{File: weatherFilesSheet.table.file(), Row: i + 2}
		w.days(at, "days", cells[7], f.Record)
		w.normals(at, "typical", cells[8], f.Normals)
		w.hours(at, cells[9], f.Hours)
	}
	return w.tables
}

type weatherWriter struct {
	found   *findings
	tables  []weatherTable
	written map[string][]byte
}

func (w *weatherWriter) normals(at fault.Place, column, name string, n *climate.Normals) {
	if name == "" {
		return
	}
	at.Column = column
	var out bytes.Buffer
	_ = station.WriteNormals(&out, n) // writing to memory does not fail
	if _, err := station.ReadNormals(bytes.NewReader(out.Bytes()), name); err != nil {
		w.found.add(faultsOf(err)...)
		return
	}
	w.add(at, weatherTable{path: name, schema: weatherSchema("normals"), content: out.Bytes()})
}

func (w *weatherWriter) days(at fault.Place, column, name string, r *climate.Record) {
	if name == "" {
		return
	}
	at.Column = column
	var out bytes.Buffer
	_ = station.WriteDaily(&out, r) // writing to memory does not fail
	_, report, err := station.ReadDaily(bytes.NewReader(out.Bytes()), name)
	if len(report.Refused) > 0 {
		w.found.add(report.Refused...)
		return
	}
	if err != nil {
		w.found.add(faultsOf(err)...)
		return
	}
	w.add(at, weatherTable{path: name, schema: weatherSchema("daily"), content: out.Bytes()})
}

func (w *weatherWriter) hours(at fault.Place, name string, hours []climate.Hour) {
	if name == "" {
		return
	}
	at.Column = "hourly"
	var out bytes.Buffer
	_ = station.WriteHourly(&out, hours) // writing to memory does not fail
	_, report, err := station.ReadHourly(bytes.NewReader(out.Bytes()), name)
	if len(report.Refused) > 0 {
		w.found.add(report.Refused...)
		return
	}
	if err != nil {
		w.found.add(faultsOf(err)...)
		return
	}
	w.add(at, weatherTable{path: name, schema: weatherSchema("hourly"), content: out.Bytes()})
}

func (w *weatherWriter) add(at fault.Place, t weatherTable) {
	if wrong := badFileName(t.path); wrong != nil {
		w.found.add(wrong.In(at))
		return
	}
	header, _, _ := bytes.Cut(t.content, []byte("\n"))
	t.columns = strings.Split(string(header), ",")
	name := strings.ToLower(t.path)
	other, twice := w.written[name]
	switch {
	case !twice:
		w.written[name] = t.content
		w.tables = append(w.tables, t)
	case !bytes.Equal(other, t.content):
		w.found.add(fault.New(fault.Conflict, "exchange.file_shared", words.Args{"given": t.path}).In(at))
	}
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
