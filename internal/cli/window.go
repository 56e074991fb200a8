package cli

import (
	"garner/internal/climate"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/words"
)

// windowCommand answers from when until when something may be sown or planted.
type windowCommand struct {
	Crop    string `placeholder:"CROP"`
	Use     string `placeholder:"USE"`
	Site    string `placeholder:"LAT,LON,ELEV"`
	Normals string `placeholder:"NORMALS.csv"`
	Method  string `placeholder:"METHOD"`
	Cover   string `placeholder:"KIND"`
	Shade   string `placeholder:"F"`
	Chance  string `placeholder:"C"`
	Seed    string `placeholder:"S"`
	holdingFlags
	JSON bool `name:"json"`
}

// windowAnswer is the JSON of a window: the desk's result with its note in
// words.
type windowAnswer struct {
	*desk.WindowResult
	Note string `json:"note,omitempty"`
}

// usualChance is the chance of a usable crop that is asked for unless said
// otherwise.
const usualChance = 0.8

// Run asks the desk for the window and says it.
func (c *windowCommand) Run(a *App) error {
	var f flags
	options := desk.WindowOptions{
		Crop:   f.need("--crop", c.Crop),
		Use:    c.Use,
		Method: f.method(c.Method),
		Cover:  f.cover(c.Cover),
		Shade:  f.share("--shade", c.Shade, 0),
		Chance: f.share("--chance", c.Chance, usualChance),
		Seed:   f.seed(c.Seed),
	}
	at, err := c.findSpot(a, &f, c.Site, "--normals", c.Normals)
	if err != nil {
		return err
	}
	options.Site = at.site
	if options.Normals, err = a.normals(c.Normals, at); err != nil {
		return err
	}
	result, err := desk.Window(options)
	if err != nil {
		return err
	}
	if c.JSON {
		note := ""
		if result.Note != nil {
			note = a.reason(*result.Note)
		}
		return a.json(windowAnswer{result, note})
	}
	a.showWindow(result, options)
	return nil
}

// normals returns the monthly normals: the file named, else the holding's own.
func (a *App) normals(file string, at spot) (*climate.Normals, error) {
	if file != "" {
		return a.readNormals(file)
	}
	if at.weather == nil || at.weather.Normals == nil {
		return nil, fault.New(fault.NotFound, "cli.no_normals", nil)
	}
	return at.weather.Normals, nil
}

// showWindow says each window in a sentence.
func (a *App) showWindow(r *desk.WindowResult, o desk.WindowOptions) {
	a.say(words.P("cli.window_title", words.Args{
		"crop": r.Crop, "use": r.Use, "method": a.named("cli.start_", r.Method),
		"cover": a.coverText(o.Cover), "site": a.siteText(o.Site),
	}))
	for _, w := range r.Windows {
		a.say(words.P("cli.window", words.Args{
			"verb": a.named("cli.verb_", r.Method), "first": w.First, "last": w.Last,
			"ready_from": w.ReadyFrom, "ready_to": w.ReadyTo, "chance": w.Chance,
		}))
	}
	if len(r.Windows) == 0 && r.Note == nil {
		a.say(words.P("cli.window_none", words.Args{"chance": o.Chance, "best": r.BestChance}))
	}
	if r.Note != nil {
		a.say(words.P("cli.window_note", words.Args{"note": *r.Note}))
	}
}
