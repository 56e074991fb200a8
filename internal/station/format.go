package station

import (
	"io"

	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/words"
)

// Format is a form in which weather comes as a file.
type Format string

// The formats that are read.
const (
	GHCNDaily   Format = "ghcn-daily"     // GHCN-Daily, fixed width
	GHCNStation Format = "ghcn-csv"       // GHCN-Daily by station, as CSV
	EPW         Format = "epw"            // hours of a typical year
	ISDLite     Format = "isd-lite"       // hours in UTC, fixed width
	DailyCSV    Format = "daily-csv"      // days under our own headings
	HourlyCSV   Format = "hourly-csv"     // hours under our own headings
	MappedCSV   Format = "mapped-csv"     // days under headings that a column map explains
	Archive     Format = "archive-csv"    // interval records of a home weather station
	ArchiveFile Format = "archive-sqlite" // the same as an SQLite file, which is opened elsewhere
)

// Formats are all formats, in the order they are told.
func Formats() []Format {
	return []Format{GHCNDaily, GHCNStation, EPW, ISDLite, DailyCSV, HourlyCSV, MappedCSV, Archive, ArchiveFile}
}

// Clock tells how many seconds a site's clock is ahead of UTC at a moment, given
// in seconds since 1970-01-01 UTC.
type Clock func(at int64) (aheadS int64)

// Options say how a file is to be read.
type Options struct {
	Clock       Clock       // by which moments are put to days
	WindHeightM float64     // of the cups above the ground [m]; 0: as the format has it
	Maps        []ColumnMap // of which the one with the file's headings counts
}

// Found is what a file holds.
type Found struct {
	Format  Format
	Station Station
	Days    *climate.Record  // nil where the file tells a typical year
	Hours   []climate.Hour   // by the site's clock, in order; none where it tells no hours, or those of a typical year
	Typical *climate.Normals // nil where the file tells days
	NoRain  bool             // the typical year tells no rain
	Report

	doubts []doubt
}

// Station is what a file tells of where it was measured; what it does not tell
// is empty.
type Station struct {
	ID, Name                              string
	LatitudeDeg, LongitudeDeg, ElevationM climate.Maybe
}

// Read reads a file of a format. Values and rows that cannot be are left out and
// told; so is what can be but hardly is. The error is for a file of which nothing
// can be used.
func Read(r io.Reader, name string, f Format, o Options) (*Found, error) {
	read, known := readers[f]
	if !known {
		return nil, fault.New(fault.Invalid, "station.format_unknown", words.Args{"given": string(f)}).In(fault.Place{File: name})
	}
	found := &Found{Format: f}
	if err := read(io.LimitReader(r, MostBytes+1), name, o, found); err != nil {
		return nil, err
	}
	return found, found.judge(name)
}

// readers are the readers by format. Each fills what it finds; what holds for
// every format is judged after it.
var readers = map[Format]func(r io.Reader, name string, o Options, found *Found) error{
	GHCNDaily: readGHCN, GHCNStation: readGHCNStation, EPW: readEPW, ISDLite: readISDLite, DailyCSV: readDailyFile,
	HourlyCSV: readHourlyFile, MappedCSV: readMapped, Archive: readArchive,
}

// readDailyFile reads days under our own headings.
func readDailyFile(r io.Reader, name string, o Options, found *Found) (err error) {
	found.Days, found.Report, err = ReadDailyAt(r, name, o.WindHeightM)
	return err
}
