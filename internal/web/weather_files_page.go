package web

import (
	"net/http"
	"time"

	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/words"
)

// weatherFilesBody is the page of the weather files.
type weatherFilesBody struct {
	Faults []words.Phrase
	Sites  []desk.FiledSite
	Maps   []holding.ColumnMap
	Watch  *watchBody
}

// watchBody is the watched folder.
type watchBody struct {
	Dir   string
	Wrong []words.Phrase
	Files []watchLine
}

// watchLine is a file of the watched folder.
type watchLine struct {
	Name, State, Time string
	Faults            []string
	More              int // faults beside those shown
}

// weatherFileRoutes names the pages of the weather files.
func (s *Server) weatherFileRoutes(mux *router) {
	mux.Handle("GET "+weatherFilesPath, s.atHome(func(v *visit) error { return v.showWeatherFiles(nil) }))
	mux.Handle("POST "+weatherLookPath, s.atHome(lookAtWeather))
	mux.Handle("GET "+weatherFilesPath+"/found/{token}", s.atHome(weatherFound))
	mux.Handle("POST "+weatherFilesPath+"/keep", s.atHome(keepWeather))
	mux.Handle("POST "+weatherFilesPath+"/map", s.atHome(mapColumns))
	mux.Handle("POST "+weatherFilesPath+"/remove", s.atHome(removeWeather))
	mux.Handle("POST "+weatherFilesPath+"/forget", s.atHome(forgetMap))
}

// showWeatherFiles shows what is on record and the form for more.
func (v *visit) showWeatherFiles(faults fault.List) error {
	view, err := v.office.WeatherFiles()
	if err != nil {
		return err
	}
	b := &weatherFilesBody{Faults: phrasesOf(faults), Sites: view.Sites, Maps: view.Maps}
	if v.watcher != nil {
		b.Watch = v.watchBody(v.watcher.View())
	}
	status := http.StatusOK
	if len(faults) > 0 {
		status = http.StatusUnprocessableEntity
	}
	return v.show(page{Name: "weather_files", Nav: "weather", Status: status, Body: b})
}

// mostWatchFaults is how many faults of a watched file are shown.
const mostWatchFaults = 3

func (v *visit) watchBody(w desk.WatchView) *watchBody {
	b := &watchBody{Dir: w.Dir}
	if w.Wrong != nil {
		b.Wrong = []words.Phrase{w.Wrong.Phrase}
	}
	for _, f := range w.Files {
		line := watchLine{Name: f.Name, State: string(f.State), Time: v.clockTime(f.At)}
		for i, e := range f.Faults {
			if i == mostWatchFaults {
				line.More = len(f.Faults) - i
				break
			}
			line.Faults = append(line.Faults, v.placedFault(e))
		}
		b.Files = append(b.Files, line)
	}
	return b
}

// clockTime is the time of day by the holding's clock.
func (v *visit) clockTime(at time.Time) string {
	if h, err := v.office.Holding(); err == nil {
		if zone, err := time.LoadLocation(h.Zone); err == nil {
			at = at.In(zone)
		}
	}
	return at.Format("15:04")
}

// placedFault puts a fault into words with its row and column before it.
func (v *visit) placedFault(f *fault.Error) string {
	args := words.Args{"text": f.Phrase, "row": f.At.Row, "column": f.At.Column}
	switch {
	case f.At.Row > 0 && f.At.Column != "":
		return v.say("web.weather_row_column", args)
	case f.At.Row > 0:
		return v.say("web.weather_row", args)
	case f.At.Column != "":
		return v.say("web.weather_column", args)
	}
	return v.words.Text(f.Phrase)
}

// removeWeather takes a weather file away.
func removeWeather(v *visit) error {
	e, err := v.office.RemoveWeatherFile(v.author(), v.field("file"))
	if err != nil {
		return err
	}
	v.kept(e, weatherFilesPath)
	return nil
}

// forgetMap takes a column map away.
func forgetMap(v *visit) error {
	row, err := v.office.Row("column_maps", v.field("map"))
	if err != nil {
		return err
	}
	e, err := v.office.Remove(v.author(), "column_maps", row.ID, row.Version, false)
	if err != nil {
		return err
	}
	v.kept(e, weatherFilesPath)
	return nil
}
