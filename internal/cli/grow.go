package cli

import (
	"garner/internal/climate"
	"garner/internal/desk"
	"garner/internal/fault"
)

// growCommand follows one planting under known weather.
type growCommand struct {
	Crop    string `placeholder:"CROP"`
	Use     string `placeholder:"USE"`
	Sown    string `placeholder:"DATE"`
	Site    string `placeholder:"LAT,LON,ELEV"`
	Weather string `placeholder:"DAILY.csv"`
	Method  string `placeholder:"METHOD"`
	Cover   string `placeholder:"KIND"`
	Shade   string `placeholder:"F"`
	Every   string `placeholder:"DAYS"`
	holdingFlags
	JSON bool `name:"json"`
}

// growAnswer is the JSON of a planting: the desk's result with its reason in
// words.
type growAnswer struct {
	*desk.GrowResult
	Why string `json:"why,omitempty"`
}

// Run asks the desk for the planting and shows it.
func (c *growCommand) Run(a *App) error {
	var f flags
	options := desk.GrowOptions{
		Crop:   f.need("--crop", c.Crop),
		Use:    c.Use,
		Method: f.method(c.Method),
		Cover:  f.cover(c.Cover),
		Shade:  f.share("--shade", c.Shade, 0),
		Sown:   f.date("--sown", f.need("--sown", c.Sown)),
	}
	every := f.whole("--every", c.Every, 1, 366, 7)
	at, err := c.findSpot(a, &f, c.Site, "--weather", c.Weather)
	if err != nil {
		return err
	}
	options.Site = at.site
	if options.Weather, err = c.record(a, at); err != nil {
		return err
	}
	result, err := desk.Grow(options)
	if err != nil {
		return err
	}
	if c.JSON {
		return a.json(growAnswer{result, a.reason(result.Why)})
	}
	a.showGrow(result, options, every)
	return nil
}

// record returns the daily weather: the file named, else the holding's own.
func (c *growCommand) record(a *App, at spot) (*climate.Record, error) {
	if c.Weather != "" {
		record, _, err := a.readDaily(c.Weather, true)
		return record, err
	}
	if at.weather == nil || at.weather.Record == nil {
		return nil, fault.New(fault.NotFound, "cli.no_record", nil)
	}
	return at.weather.Record, nil
}
