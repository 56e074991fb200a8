package desk

import (
	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/cover"
	"garner/internal/fault"
	"garner/internal/growth"
	"garner/internal/season"
	"garner/internal/words"
)

// GrowOptions describe one planting under known weather.
type GrowOptions struct {
	Crop, Use, Method string
	Sown              cal.Date
	Site              Site
	Weather           *climate.Record
	Cover             string  // a cover kind, empty: open
	Shade             float64 // share of the light lost, 0-1
}

// GrowResult is one planting, day by day.
type GrowResult struct {
	Crop    string       `json:"crop"`
	Use     string       `json:"use"`
	Method  string       `json:"method"`
	Days    []GrowDay    `json:"days"`
	Emerged *cal.Date    `json:"emerged"`
	Ready   *cal.Date    `json:"ready"`
	Over    *cal.Date    `json:"over"`
	End     string       `json:"end"`
	Why     words.Phrase `json:"-"`
}

// GrowDay is the state of a planting at the end of a day.
type GrowDay struct {
	Date        cal.Date `json:"date"`
	Stage       string   `json:"stage"`
	LAI         float64  `json:"lai"`
	FreshKgM2   float64  `json:"fresh_kg_m2"`
	FreshGPlant float64  `json:"fresh_g_plant"`
}

// Grow follows one planting day by day.
func Grow(o GrowOptions) (*GrowResult, error) {
	use, method, err := chosen(o.Crop, o.Use, o.Method)
	if err != nil {
		return nil, err
	}
	kind, err := coverKind(o.Cover)
	if err != nil {
		return nil, err
	}
	weather, err := climate.Complete(o.Weather, o.Site)
	if err != nil {
		return nil, err
	}
	if o.Sown < weather.First || o.Sown > weather.Last() {
		return nil, fault.New(fault.OutOfRange, "desk.sown_outside",
			words.Args{"sown": o.Sown, "first": weather.First, "last": weather.Last()})
	}
	sky := season.NewSky(o.Site, weather.First, len(weather.Days))
	ground := season.Ground{Light: 1 - o.Shade}
	if kind != cover.Open {
		ground.Spells = []cover.Spell{{Kind: kind, On: weather.First, Off: cal.None}}
	}
	var beside season.Bedside
	if err := beside.Build(sky, weather.Days, ground, 0); err != nil {
		return nil, err
	}
	params := growth.Prepare(use, growth.StartOf(method), sky.Northern())
	planting := season.Planting{ID: "asked", Parameters: params, Date: o.Sown, AreaM2: 1, ClearBy: cal.None, Soil: 1}
	r := &GrowResult{Crop: use.Crop, Use: use.Name, Method: method, Days: []GrowDay{}}
	var runner season.Runner
	outcome := runner.Follow(sky, &beside, &planting, growth.Fair(use), func(day int, s *growth.Plants) {
		r.Days = append(r.Days, GrowDay{Date: weather.First + cal.Date(day), Stage: s.Stage.String(),
			LAI: s.Leaf, FreshKgM2: s.FreshKgM2(params), FreshGPlant: s.PieceG(params)})
	})
	r.Emerged, r.Ready, r.Over = dateOf(weather.First, outcome.Emerged), dateOf(weather.First, outcome.Ready), dateOf(weather.First, outcome.Over)
	r.End = outcome.End.String()
	r.Why = words.P("desk.end_"+outcome.End.Key(), words.Args{"crop": use.Label})
	return r, nil
}

// dateOf turns a day index into a date; nil when it never came.
func dateOf(first cal.Date, day int) *cal.Date {
	if day < 0 {
		return nil
	}
	d := first + cal.Date(day)
	return &d
}
