package cli

import (
	"io"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/station"
	"garner/internal/store"
	"garner/internal/words"
)

// weatherImportCommand takes weather files into a holding that is kept here.
type weatherImportCommand struct {
	Files      []string `arg:"" placeholder:"FILE..."`
	Format     string   `placeholder:"FORMAT"`
	Site       string   `placeholder:"SITE"`
	KeepGood   bool     `name:"keep-good"`
	Look       bool
	WindHeight string `name:"wind-height" placeholder:"M"`
	Holding    string `placeholder:"ID"`
	Data       string `placeholder:"FOLDER"`
	JSON       bool   `name:"json"`
}

// weatherImportAnswer is the JSON of an import.
type weatherImportAnswer struct {
	Kept  bool             `json:"kept"`
	Entry string           `json:"entry,omitempty"`
	Files []weatherFileRow `json:"files"`
}

// weatherFileRow is a file as the JSON shows it.
type weatherFileRow struct {
	File         string     `json:"file"`
	Format       string     `json:"format"`
	Station      string     `json:"station,omitempty"`
	LatitudeDeg  *float64   `json:"latitude_deg"`
	LongitudeDeg *float64   `json:"longitude_deg"`
	ElevationM   *float64   `json:"elevation_m"`
	First        *cal.Date  `json:"first"`
	Last         *cal.Date  `json:"last"`
	Days         int        `json:"days"`
	MissingDays  int        `json:"missing_days"`
	TypicalYear  bool       `json:"typical_year"`
	Rows         int        `json:"rows"`
	Unfit        []faultRow `json:"unfit"`
	Refused      []faultRow `json:"refused"`
	Doubtful     []faultRow `json:"doubtful"`
	Warnings     []faultRow `json:"warnings"`
}

// Run reads the files, tells what they hold, and takes all of them in as one
// entry or none.
func (c *weatherImportCommand) Run(a *App) error {
	var f flags
	how := desk.WeatherHow{Format: f.oneOf("--format", c.Format, formatNames()), WindHeightM: f.windHeight(c.WindHeight)}
	if err := f.err(); err != nil {
		return err
	}
	office, closed, err := a.keptOffice(c.Data, c.Holding)
	if err != nil {
		return err
	}
	defer closed()
	answer := weatherImportAnswer{Files: []weatherFileRow{}}
	var found []*desk.WeatherFound
	for _, path := range c.Files {
		w, err := office.ReadWeather(weatherInput(path), how)
		if err != nil {
			return err
		}
		found = append(found, w)
		answer.Files = append(answer.Files, a.weatherFileRow(w))
	}
	if !c.JSON {
		for _, w := range found {
			a.showWeatherFound(w, c.Look || c.KeepGood)
		}
	}
	if c.Look {
		if c.JSON {
			return a.json(answer)
		}
		return nil
	}
	e, err := office.TakeWeather(author(), found, desk.WeatherTake{Site: c.Site, KeepGood: c.KeepGood})
	if err != nil {
		return c.refused(a, answer, found, err)
	}
	if answer.Kept, answer.Entry = true, e.ID; c.JSON {
		return a.json(answer)
	}
	a.gap()
	a.say(words.P("cli.weather_kept", words.Args{"what": e.What}))
	return nil
}

// refused tells why nothing was kept.
func (c *weatherImportCommand) refused(a *App, answer weatherImportAnswer, found []*desk.WeatherFound, err error) error {
	if c.JSON {
		if wrong := a.json(answer); wrong != nil {
			return wrong
		}
	}
	good := true
	for _, w := range found {
		good = good && !w.Unfit()
	}
	if list, ok := err.(fault.List); ok && good && !c.KeepGood && len(list) > 0 {
		hint := fault.New(fault.Invalid, "cli.weather_keep_good", words.Args{"n": len(list)})
		return append(list[:len(list):len(list)], hint)
	}
	return err
}

// windHeight reads the height of the cups; none is 0.
func (f *flags) windHeight(given string) float64 {
	if given == "" {
		return 0
	}
	return f.between("--wind-height", given, leastWindHeightM, mostWindHeightM)
}

func formatNames() (names []string) {
	for _, f := range station.Formats() {
		names = append(names, string(f))
	}
	return names
}

// weatherInput is a file that was named on the command line.
func weatherInput(path string) desk.WeatherInput {
	return desk.WeatherInput{Name: path, Path: path, Open: func() (io.ReadCloser, error) { return open(path) }}
}

// keptOffice opens a holding that is kept here: the one of an id, else the only
// one.
func (a *App) keptOffice(dir, id string) (*desk.Office, func(), error) {
	dir, err := a.dataDir(dir)
	if err != nil {
		return nil, nil, err
	}
	if !store.Exists(dir) {
		return nil, nil, fault.New(fault.NotFound, "cli.nothing_kept", nil)
	}
	data, err := store.Folder(dir)
	if err != nil {
		return nil, nil, err
	}
	kept, err := openKept(data, id)
	if err != nil {
		_ = data.Close()
		return nil, nil, err
	}
	closed := func() {
		_ = kept.Close() // everything acknowledged is on the disk already
		_ = data.Close()
	}
	return desk.NewOffice(kept), closed, nil
}

// openKept opens the holding of an id, else the only one.
func openKept(data *store.Data, id string) (*store.Store, error) {
	known, err := begunOf(data)
	switch {
	case err != nil:
		return nil, err
	case len(known) == 0:
		return nil, fault.New(fault.NotFound, "cli.nothing_kept", nil)
	case id == "" && len(known) > 1:
		return nil, fault.New(fault.Invalid, "cli.holding_which", words.Args{"ids": idsOf(known)})
	case id == "":
		id = known[0].ID
	}
	for _, i := range known {
		if i.ID == id {
			return data.Open(id)
		}
	}
	return nil, fault.New(fault.NotFound, "cli.holding_not_kept", words.Args{"given": id, "ids": idsOf(known)})
}
