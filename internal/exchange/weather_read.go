package exchange

import (
	"bytes"

	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/station"
	"garner/internal/words"
)

// readWeather reads the files that weather.csv names. A file that two sources
// name is read once.
func (r *reading) readWeather() {
	normals := map[string]*climate.Normals{}
	days := map[string]*climate.Record{}
	for i := range r.h.Weather {
		w := &r.h.Weather[i]
		if name := r.named(i, "normals", w.NormalFile); name != "" {
			if _, read := normals[name]; !read {
				normals[name] = r.readNormals(name)
			}
			w.Normals = normals[name]
		}
		w.Record = r.daysOf(i, "record", w.RecordFile, days)
		w.Forecast = r.daysOf(i, "forecast", w.FcastFile, days)
	}
}

// daysOf returns the days of the file a cell names, nil when there are none.
func (r *reading) daysOf(row int, column, cell string, days map[string]*climate.Record) *climate.Record {
	name := r.named(row, column, cell)
	if name == "" {
		return nil
	}
	if _, read := days[name]; !read {
		days[name] = r.readDays(name)
	}
	return days[name]
}

// named returns the file that a cell of weather.csv names, as it is called in
// the holding; nothing when there is none to read.
func (r *reading) named(row int, column, cell string) string {
	if cell == "" {
		return ""
	}
	at := r.check.place("weather", row, column)
	if wrong := badFileName(cell); wrong != nil {
		r.fault(wrong.In(at))
		return ""
	}
	actual, _, ok := r.files.find(cell)
	if !ok {
		r.fault(fault.New(fault.NotFound, "exchange.weather_file_missing", words.Args{"given": cell}).In(at))
		return ""
	}
	r.used[actual] = true
	return actual
}

func (r *reading) readNormals(name string) *climate.Normals {
	n, err := station.ReadNormals(bytes.NewReader(r.files[name]), name)
	if err != nil {
		r.faultOf(err)
		return nil
	}
	r.rows[name] = len(n)
	return n
}

// readDays reads a daily record. A value that cannot be is a fault here, since
// it would be lost on writing.
func (r *reading) readDays(name string) *climate.Record {
	record, report, err := station.ReadDaily(bytes.NewReader(r.files[name]), name)
	r.fault(report.Refused...)
	r.check.warnings.add(report.Warnings...)
	if err != nil {
		if len(report.Refused) == 0 {
			r.faultOf(err)
		}
		return nil
	}
	r.rows[name] = report.Rows
	return record
}

// faultOf reports an error of a reader.
func (r *reading) faultOf(err error) { r.fault(faultsOf(err)...) }

// faultsOf returns the faults of an error, one or many.
func faultsOf(err error) fault.List {
	if many, ok := err.(fault.List); ok {
		return many
	}
	return fault.List{asFault(err)}
}
