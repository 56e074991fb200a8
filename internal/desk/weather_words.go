package desk

import (
	"strings"

	"garner/internal/station"
	"garner/internal/words"
)

// StationName is the station as the file tells it, in a few words; blank where it
// does not.
func (w *WeatherFound) StationName() string { return stationOf(w) }

// Says are what was found, in sentences.
func (w *WeatherFound) Says() []words.Phrase {
	file := baseName(w.File)
	if w.found == nil {
		return []words.Phrase{words.P("desk.weather_unread", words.Args{"file": file})}
	}
	out := []words.Phrase{words.P("desk.weather_is", words.Args{"file": file, "format": FormatName(w.Format)})}
	if name := w.StationName(); name != "" {
		out = append(out, words.P("desk.weather_station", words.Args{"station": name}))
	}
	switch {
	case w.Typical && w.NoRain:
		out = append(out, words.P("desk.weather_typical_dry", nil))
	case w.Typical:
		out = append(out, words.P("desk.weather_typical", nil))
	default:
		out = append(out, words.P("desk.weather_period", words.Args{"first": w.First, "last": w.Last, "n": w.Days}))
		if w.Missing > 0 {
			out = append(out, words.P("desk.weather_missing", words.Args{"n": w.Missing}))
		}
	}
	if w.HourDays > 0 {
		out = append(out, words.P("desk.weather_hours", words.Args{"n": w.HourDays}))
	}
	if n := len(w.Refused) + len(w.Doubtful); n > 0 {
		out = append(out, words.P("desk.weather_left_out", words.Args{"n": n}))
	}
	return out
}

// FormatName is what a format is called.
func FormatName(format string) words.Phrase {
	return words.P("desk.weather_format_"+strings.ReplaceAll(format, "-", "_"), nil)
}

// FormatNames are the names of all formats.
func FormatNames() (names []words.Phrase) {
	for _, f := range station.Formats() {
		names = append(names, FormatName(string(f)))
	}
	return names
}
