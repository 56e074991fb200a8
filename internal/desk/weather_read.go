package desk

import (
	"bufio"
	"bytes"
	"compress/gzip"
	"errors"
	"io"
	"path"
	"slices"
	"strings"
	"time"

	"garner/internal/archive"
	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/near"
	"garner/internal/station"
	"garner/internal/words"
)

// WeatherInput is a weather file to be read.
type WeatherInput struct {
	Name string
	Path string // where it lies on the disk; blank where it only comes as a stream
	Open func() (io.ReadCloser, error)
}

// WeatherHow says how weather files are to be read.
type WeatherHow struct {
	Format      string  // of station.Formats; blank: it is recognised
	WindHeightM float64 // of the cups above the ground; 0: as the format has it
}

// WeatherFound is what a weather file holds.
type WeatherFound struct {
	File              string
	Format            string
	Station           station.Station
	First, Last       cal.Date
	Days, Missing     int // days on file, and days of the period that are not
	HourDays          int // days that count by their hours alone
	Rows              int
	Typical, NoRain   bool       // monthly normals of a typical year, told without rain
	Wrong             fault.List // what makes the file unfit
	Refused, Doubtful fault.List
	Warnings          fault.List
	Headings          []string // of a table that nobody knows; else nil
	found             *station.Found
}

// Faulty tells whether anything has to be left out for the rest to be kept.
func (w *WeatherFound) Faulty() bool { return len(w.Refused)+len(w.Doubtful) > 0 }

// Unfit tells whether nothing of the file can be kept.
func (w *WeatherFound) Unfit() bool { return w.found == nil || len(w.Wrong) > 0 }

// ReadWeather reads a weather file and tells what it holds. Nothing is written.
// The error is for a file that cannot be opened; what is wrong inside it is told
// with what was found.
func (o *Office) ReadWeather(in WeatherInput, how WeatherHow) (*WeatherFound, error) {
	h, err := o.Holding()
	if err != nil {
		return nil, err
	}
	return ReadWeatherFor(h, in, how)
}

// ReadWeatherFor reads a weather file by the clock and the column maps of a
// holding.
func ReadWeatherFor(h *holding.Holding, in WeatherInput, how WeatherHow) (*WeatherFound, error) {
	options, err := optionsFor(h, how)
	if err != nil {
		return nil, err
	}
	stream, err := in.Open()
	if err != nil {
		return nil, err
	}
	defer stream.Close()
	text, head, err := headOf(stream)
	if err != nil {
		return nil, unreadableWeather(in.Name, err)
	}
	format := station.Format(how.Format)
	if format == "" {
		format = station.Recognise(head, options.Maps)
	}
	out := &WeatherFound{File: in.Name, Format: string(format)}
	if format == "" || format == station.MappedCSV && station.Recognise(head, options.Maps) != station.MappedCSV {
		out.unknown(head)
		return out, nil
	}
	found, err := readFormat(in, text, format, options)
	if err != nil {
		return out, out.unfit(err)
	}
	out.tell(found)
	return out, nil
}

// optionsFor are the clock and the column maps of a holding.
func optionsFor(h *holding.Holding, how WeatherHow) (station.Options, error) {
	zone, err := time.LoadLocation(h.Zone)
	if err != nil {
		return station.Options{}, fault.New(fault.Invalid, "desk.zone", words.Args{"zone": h.Zone})
	}
	o := station.Options{WindHeightM: how.WindHeightM, Clock: func(at int64) int64 {
		_, ahead := time.Unix(at, 0).In(zone).Zone()
		return int64(ahead)
	}}
	for _, m := range h.Maps {
		o.Maps = append(o.Maps, station.ColumnMap(m))
	}
	return o, nil
}

// headOf looks at the beginning of a stream, unpacked where it is packed.
func headOf(stream io.Reader) (*bufio.Reader, []byte, error) {
	text := bufio.NewReaderSize(stream, station.HeadBytes)
	if magic, err := text.Peek(2); err == nil && bytes.Equal(magic, []byte{0x1f, 0x8b}) {
		packed, err := gzip.NewReader(text)
		if err != nil {
			return nil, nil, err
		}
		text = bufio.NewReaderSize(packed, station.HeadBytes)
	}
	head, err := text.Peek(station.HeadBytes)
	if err != nil && !errors.Is(err, io.EOF) {
		return nil, nil, err
	}
	return text, slices.Clone(head), nil
}

func readFormat(in WeatherInput, text io.Reader, format station.Format, o station.Options) (*station.Found, error) {
	switch {
	case format == station.ArchiveFile && in.Path != "":
		return archive.Open(in.Path, in.Name, o)
	case format == station.ArchiveFile:
		return archive.Read(text, in.Name, o)
	}
	return station.Read(text, in.Name, format, o)
}

func unreadableWeather(name string, err error) error {
	f := fault.New(fault.Invalid, "station.unreadable", nil).In(fault.Place{File: name})
	f.Err = err
	return f
}

// unknown tells a file that is in no known format: a table whose headings have to
// be explained, or nothing that is read.
func (w *WeatherFound) unknown(head []byte) {
	w.Headings = station.Headings(head)
	key := "desk.weather_no_format"
	if len(w.Headings) > 1 {
		key = "desk.weather_headings"
	} else {
		w.Headings = nil
	}
	w.Wrong = fault.List{fault.New(fault.Invalid, key, nil).In(fault.Place{File: w.File})}
}

// unfit takes the faults of a file of which nothing can be used; any other error
// is returned.
func (w *WeatherFound) unfit(err error) error {
	var many fault.List
	var one *fault.Error
	switch {
	case errors.As(err, &many):
		w.Wrong = many
	case errors.As(err, &one) && one.Kind != fault.Storage && one.Kind != fault.Internal:
		w.Wrong = fault.List{one}
	default:
		return err
	}
	return nil
}

// tell sums up what was found.
func (w *WeatherFound) tell(f *station.Found) {
	w.found, w.Station, w.Rows = f, f.Station, f.Rows
	w.Wrong, w.Refused, w.Doubtful, w.Warnings = f.Wrong, f.Refused, f.Doubtful, f.Warnings
	w.Typical, w.NoRain = f.Typical != nil, f.NoRain
	w.First, w.Last = f.Period()
	if f.Days != nil {
		w.Days = len(f.Days.Days)
		w.Missing = int(w.Last-w.First) + 1 - w.Days
		w.HourDays = hourDays(f.Hours)
	}
}

// siteNamed finds a site by its id or name; the only one, or the first, where
// none is named.
func siteNamed(h *holding.Holding, given string) (int, error) {
	if len(h.Sites) == 0 {
		return 0, fault.New(fault.NotFound, "cli.no_sites", nil)
	}
	if given == "" {
		return 0, nil
	}
	var names []string
	for i, s := range h.Sites {
		if s.ID == given || strings.EqualFold(s.Name, given) {
			return i, nil
		}
		names = append(names, s.Name)
	}
	if found := near.Names(given, names, 1); len(found) > 0 {
		return 0, fault.New(fault.NotFound, "cli.no_such_site_meant", words.Args{"given": given, "meant": found[0]})
	}
	return 0, fault.New(fault.NotFound, "cli.no_such_site", words.Args{"given": given, "names": names})
}

// baseName is the last part of a file's path, whichever way it is written.
func baseName(name string) string { return path.Base(strings.ReplaceAll(name, `\`, "/")) }
