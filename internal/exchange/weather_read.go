package exchange

import (
	"bytes"

	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/station"
	"garner/internal/words"
)

// readWeather reads the files that weather.csv and weather_files.csv name, and
// lays them over each other. A file that two rows name is read once.
func (r *reading) readWeather() {
	f := figuresRead{r, map[string]*climate.Normals{}, map[string]*climate.Record{}, map[string][]climate.Hour{}}
	for i := range r.h.Weather {
		w := &r.h.Weather[i]
		w.Normals = f.normals("weather", i, "normals", w.NormalFile)
		w.Record = f.days("weather", i, "record", w.RecordFile)
		w.Forecast = f.days("weather", i, "forecast", w.FcastFile)
		w.Hours = f.hours("weather", i, "hourly", w.HourFile)
	}
	for i := range r.h.Files {
		file := &r.h.Files[i]
		file.Record = f.days("weather_files", i, "days", file.Days)
		file.Normals = f.normals("weather_files", i, "typical", file.Typical)
		file.Hours = f.hours("weather_files", i, "hourly", file.Hourly)
	}
	layFiles(r.h, r.laid)
}

// figuresRead are the files read so far.
type figuresRead struct {
	*reading
	knownNormals map[string]*climate.Normals
	knownDays    map[string]*climate.Record
	knownHours   map[string][]climate.Hour
}

// normals returns the normals of the file a cell names, nil when there are none.
func (r *figuresRead) normals(table string, row int, column, cell string) *climate.Normals {
	name := r.named(table, row, column, cell)
	if name == "" {
		return nil
	}
	if _, read := r.knownNormals[name]; !read {
		r.knownNormals[name] = r.readNormals(name)
	}
	return r.knownNormals[name]
}

// days returns the days of the file a cell names, nil when there are none.
func (r *figuresRead) days(table string, row int, column, cell string) *climate.Record {
	name := r.named(table, row, column, cell)
	if name == "" {
		return nil
	}
	if _, read := r.knownDays[name]; !read {
		r.knownDays[name] = r.readDays(name)
	}
	return r.knownDays[name]
}

// hours returns the hours of the file a cell names, none when there are none.
func (r *figuresRead) hours(table string, row int, column, cell string) []climate.Hour {
	name := r.named(table, row, column, cell)
	if name == "" {
		return nil
	}
	if _, read := r.knownHours[name]; !read {
		r.knownHours[name] = r.readHours(name)
	}
	return r.knownHours[name]
}

// named returns the file that a cell names, as it is called in the holding;
// nothing when there is none to read.
func (r *reading) named(table string, row int, column, cell string) string {
	if cell == "" {
		return ""
	}
	at := r.check.place(table, row, column)
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

// The kinds of weather file.
const (
	normalsFile = "normals"
	daysFile    = "daily"
	hoursFile   = "hourly"
)

// weatherRead is a weather file as read: figures, or what is wrong with it.
type weatherRead struct {
	normals  *climate.Normals
	days     *climate.Record
	hours    []climate.Hour
	rows     int
	faults   fault.List
	warnings fault.List
}

// take notes what was found in a file.
func (r *reading) take(name string, f weatherRead) {
	r.fault(f.faults...)
	r.check.warnings.add(f.warnings...)
	if f.normals != nil || f.days != nil || f.hours != nil {
		r.rows[name] = f.rows
	}
}

func (r *reading) readNormals(name string) *climate.Normals {
	f := r.weather(normalsFile, name)
	r.take(name, f)
	return f.normals
}

func (r *reading) readDays(name string) *climate.Record {
	f := r.weather(daysFile, name)
	r.take(name, f)
	return f.days
}

func (r *reading) readHours(name string) []climate.Hour {
	f := r.weather(hoursFile, name)
	r.take(name, f)
	return f.hours
}

// readWeatherFile reads one weather file of a kind.
func readWeatherFile(kind, name string, content []byte) weatherRead {
	switch kind {
	case daysFile:
		return readDaysFile(name, content)
	case hoursFile:
		return readHoursFile(name, content)
	}
	n, err := station.ReadNormals(bytes.NewReader(content), name)
	if err != nil {
		return weatherRead{faults: faultsOf(err)}
	}
	return weatherRead{normals: n, rows: len(n)}
}

// readDaysFile reads a daily record. A value that cannot be is a fault here,
// since it would be lost on writing.
func readDaysFile(name string, content []byte) weatherRead {
	record, report, err := station.ReadDaily(bytes.NewReader(content), name)
	f := weatherRead{faults: report.Refused, warnings: report.Warnings}
	if err != nil {
		if len(report.Refused) == 0 {
			f.faults = faultsOf(err)
		}
		return f
	}
	f.days, f.rows = record, report.Rows
	return f
}

// readHoursFile reads an hourly record; as with days a value that cannot be is a
// fault.
func readHoursFile(name string, content []byte) weatherRead {
	hours, report, err := station.ReadHourly(bytes.NewReader(content), name)
	f := weatherRead{faults: report.Refused, warnings: report.Warnings}
	if err != nil {
		if len(report.Refused) == 0 {
			f.faults = faultsOf(err)
		}
		return f
	}
	f.hours, f.rows = hours, report.Rows
	return f
}

// faultsOf returns the faults of an error, one or many.
func faultsOf(err error) fault.List {
	if many, ok := err.(fault.List); ok {
		return many
	}
	return fault.List{asFault(err)}
}
