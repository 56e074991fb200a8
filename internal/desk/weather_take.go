package desk

import (
	"cmp"
	"slices"
	"strings"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/journal"
	"garner/internal/words"
)

// WeatherTake says what is to be kept of files that were read, and where.
type WeatherTake struct {
	Site     string // id or name; blank: the first
	KeepGood bool   // rows and values that are wrong or doubtful are left out
}

// TakeWeather keeps what was found in weather files, all of it as one entry. A
// file with rows that are wrong or doubtful is refused unless the good ones are to
// be kept; then nothing of any file is kept. The error is a fault.List.
func (o *Office) TakeWeather(by Author, found []*WeatherFound, how WeatherTake) (*KeptEntry, error) {
	if faults := notFit(found, how); len(faults) > 0 {
		return nil, faults
	}
	return o.writeWith(by, func() (journal.Entry, [][]byte, error) {
		h, err := o.Holding()
		if err != nil {
			return journal.Entry{}, nil, err
		}
		now, err := today(h)
		if err != nil {
			return journal.Entry{}, nil, err
		}
		own, err := withFiles(h, found, how, now)
		if err != nil {
			return journal.Entry{}, nil, err
		}
		return o.weatherEntry(takenWords(found), own)
	})
}

// weatherEntry is the entry that makes the holding into another one.
func (o *Office) weatherEntry(what words.Phrase, own *holding.Holding) (journal.Entry, [][]byte, error) {
	stands, err := o.keeper.Would(nil)
	if err != nil {
		return journal.Entry{}, nil, err
	}
	changes, files, err := replacing(stands.Rows, own)
	return journal.Entry{What: what, Changes: changes}, files, err
}

// takenWords say what was taken in.
func takenWords(found []*WeatherFound) words.Phrase {
	if len(found) == 1 && !found[0].Typical {
		return words.P("desk.weather_taken", words.Args{"file": baseName(found[0].File), "first": found[0].First, "last": found[0].Last})
	}
	var names []string
	for _, f := range found {
		names = append(names, baseName(f.File))
	}
	return words.P("desk.weather_taken_files", words.Args{"files": names})
}

// notFit are the faults that keep files from being taken in.
func notFit(found []*WeatherFound, how WeatherTake) (faults fault.List) {
	for _, f := range found {
		switch {
		case f.Unfit():
			faults = append(faults, f.Wrong...)
		case !how.KeepGood:
			faults = append(append(faults, f.Refused...), f.Doubtful...)
		}
	}
	return faults
}

// withFiles is the holding with the files.
func withFiles(h *holding.Holding, found []*WeatherFound, how WeatherTake, today cal.Date) (*holding.Holding, error) {
	at, err := siteNamed(h, how.Site)
	if err != nil {
		return nil, err
	}
	own := *h
	own.Sites, own.Weather, own.Files = slices.Clone(h.Sites), slices.Clone(h.Weather), slices.Clone(h.Files)
	for _, f := range found {
		source := sourceFor(&own, at, f)
		if err := addFile(&own, source, f, how, today); err != nil {
			return nil, err
		}
	}
	return &own, nil
}

// sourceFor is the weather source of a site; a new one where it has none.
func sourceFor(h *holding.Holding, site int, f *WeatherFound) string {
	s := &h.Sites[site]
	if s.Weather != "" {
		return s.Weather
	}
	taken := map[string]bool{}
	for _, w := range h.Weather {
		taken[w.ID] = true
	}
	s.Weather = plain(cmp.Or(slug(s.Name), "weather"), taken)
	h.Weather = append(h.Weather, holding.WeatherSource{ID: s.Weather, Name: s.Name, Source: stationText(f)})
	return s.Weather
}

// stationText names the station as the file does, else the file.
func stationText(f *WeatherFound) string {
	return cmp.Or(f.Station.Name, f.Station.ID, baseName(f.File))
}

// addFile lays a file over what stands of the same station, or puts it last.
func addFile(h *holding.Holding, source string, f *WeatherFound, how WeatherTake, today cal.Date) error {
	days, hours, normals, err := f.figures(h, source, how)
	if err != nil {
		return err
	}
	leftOut := 0
	if how.KeepGood {
		leftOut = len(f.Refused) + len(f.Doubtful)
	}
	row := holding.WeatherFile{Weather: source, Name: baseName(f.File), Format: f.Format, Station: stationOf(f),
		Added: today, LeftOut: leftOut, Record: days, Hours: hours, Normals: normals}
	for i := range h.Files {
		k := &h.Files[i]
		if k.Weather != source || k.Format != row.Format || !sameStation(k, &row) {
			continue
		}
		row.ID, row.Days, row.Typical, row.Hourly = k.ID, k.Days, k.Typical, k.Hourly
		row.Record, row.Hours = renewed(k.Record, days), renewedHours(k.Hours, hours)
		if k.LeftOut == row.LeftOut && sameFigures(k.Record, row.Record) && sameHours(k.Hours, row.Hours) && sameNormals(k.Normals, row.Normals) {
			return nil // it says nothing new
		}
		h.Files[i] = row
		return nil
	}
	taken := map[string]bool{}
	for _, k := range h.Files {
		taken[k.ID] = true
	}
	row.ID = plain(cmp.Or(slug(strings.SplitN(row.Name, ".", 2)[0]), "file"), taken)
	h.Files = append(h.Files, row)
	return nil
}

// stationOf is the station in a few words; blank where the file tells none.
func stationOf(f *WeatherFound) string {
	return strings.TrimPrefix(strings.TrimSuffix(f.Station.ID+" "+f.Station.Name, " "), " ")
}

// sameStation tells files that follow each other: of the station that both tell,
// else of the same name.
func sameStation(a, b *holding.WeatherFile) bool {
	if a.Station != "" && b.Station != "" {
		return a.Station == b.Station
	}
	return a.Name == b.Name
}

// figures are the days and the hours, or the normals, of a file.
func (w *WeatherFound) figures(h *holding.Holding, source string, how WeatherTake) (*climate.Record, []climate.Hour, *climate.Normals, error) {
	if w.Typical {
		n, err := w.withRain(h, source)
		return nil, nil, n, err
	}
	f := *w.found
	days := *f.Days
	days.Days = slices.Clone(days.Days)
	f.Days = &days
	if how.KeepGood {
		f.DropDoubtful()
	}
	if len(days.Days) == 0 {
		return nil, nil, nil, fault.New(fault.Invalid, "station.nothing_kept", words.Args{"rows": w.Rows}).In(fault.Place{File: w.File})
	}
	return f.Days, f.Hours, nil, nil
}

// withRain is the typical year; where it tells no rain, that is as it was known
// before.
func (w *WeatherFound) withRain(h *holding.Holding, source string) (*climate.Normals, error) {
	n := *w.found.Typical
	if !w.NoRain {
		return &n, nil
	}
	at := slices.IndexFunc(h.Weather, func(s holding.WeatherSource) bool { return s.ID == source })
	known := h.Weather[at].Normals
	if known == nil && h.Weather[at].Record != nil {
		if of, err := climate.NormalsOf(h.Weather[at].Record); err == nil {
			known = &of
		}
	}
	if known == nil {
		return nil, fault.New(fault.Invalid, "station.typical_no_rain", nil).In(fault.Place{File: w.File})
	}
	for m := range n {
		n[m].RainMM = known[m].RainMM
	}
	return &n, nil
}

// renewed lays new days over those that stand: within the period of the new ones
// only they count.
func renewed(stood, days *climate.Record) *climate.Record {
	if stood == nil || days == nil || len(stood.Days) == 0 || len(days.Days) == 0 {
		return days
	}
	first, last := days.Days[0].Date, days.Days[len(days.Days)-1].Date
	out := &climate.Record{ID: days.ID}
	for _, o := range stood.Days {
		if o.Date < first {
			out.Days = append(out.Days, o)
		}
	}
	out.Days = append(out.Days, days.Days...)
	for _, o := range stood.Days {
		if o.Date > last {
			out.Days = append(out.Days, o)
		}
	}
	return out
}

// sameFigures tells whether two records say the same, wherever they were read.
func sameFigures(a, b *climate.Record) bool {
	if a == nil || b == nil {
		return a == b
	}
	return slices.EqualFunc(a.Days, b.Days, func(x, y climate.Observation) bool {
		x.Row, y.Row = 0, 0
		return x == y
	})
}

func sameNormals(a, b *climate.Normals) bool {
	if a == nil || b == nil {
		return a == b
	}
	return *a == *b
}

// RemoveWeatherFile takes a weather file and its days away again.
func (o *Office) RemoveWeatherFile(by Author, id string) (*KeptEntry, error) {
	return o.writeWith(by, func() (journal.Entry, [][]byte, error) {
		h, err := o.Holding()
		if err != nil {
			return journal.Entry{}, nil, err
		}
		at := slices.IndexFunc(h.Files, func(f holding.WeatherFile) bool { return f.ID == id })
		if at < 0 {
			return journal.Entry{}, nil, noRow("weather_files", id)
		}
		own := *h
		own.Files = slices.Delete(slices.Clone(h.Files), at, at+1)
		return o.weatherEntry(words.P("desk.weather_removed", words.Args{"file": h.Files[at].Name}), &own)
	})
}
