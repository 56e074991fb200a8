package desk

import (
	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/fault"
	"garner/internal/growth"
	"garner/internal/window"
	"garner/internal/words"
)

// WindowOptions ask from when until when something may be sown or planted.
type WindowOptions struct {
	Crop, Use, Method, Cover string
	Site                     Site
	Normals                  *climate.Normals
	Shade                    float64 // share of the light lost, 0-1
	Chance                   float64 // of a usable crop, 0: 0.8
	Seed                     uint64
}

// WindowResult is the answer: at most three windows of the year.
type WindowResult struct {
	Crop       string           `json:"crop"`
	Use        string           `json:"use"`
	Method     string           `json:"method"`
	Windows    []PlantingWindow `json:"windows"`
	BestChance float64          `json:"best_chance"`
	Note       *words.Phrase    `json:"-"`
}

// PlantingWindow is a stretch of the year, which may cross the new year.
type PlantingWindow struct {
	First     cal.MonthDay `json:"first"`
	Last      cal.MonthDay `json:"last"`
	ReadyFrom cal.MonthDay `json:"ready_from"`
	ReadyTo   cal.MonthDay `json:"ready_to"`
	Chance    float64      `json:"chance"`
}

// Window finds the first and last dates for a crop at a site.
func Window(o WindowOptions) (*WindowResult, error) {
	use, method, err := chosen(o.Crop, o.Use, o.Method)
	if err != nil {
		return nil, err
	}
	kind, err := coverKind(o.Cover)
	if err != nil {
		return nil, err
	}
	at, err := window.GeneratedPlace(o.Site, *o.Normals, o.Seed, window.UsualYears, 1-o.Shade, kind)
	if err != nil {
		return nil, err
	}
	q := window.Question{Use: use, Start: growth.StartOf(method), Place: at, Years: window.UsualYears, Chance: o.Chance}
	if q.Chance <= 0 {
		q.Chance = window.UsualChance
	}
	a := window.Find(q)
	return windowResult(use, method, q.Chance, a), nil
}

func windowResult(use *crop.Use, method string, chance float64, a window.Answer) *WindowResult {
	r := &WindowResult{Crop: use.Crop, Use: use.Name, Method: method, BestChance: a.Best, Windows: []PlantingWindow{}}
	for _, w := range a.Windows {
		r.Windows = append(r.Windows, PlantingWindow{
			First: cal.MonthDayOf(w.First), Last: cal.MonthDayOf(w.Last),
			ReadyFrom: cal.MonthDayOf(w.ReadyFrom), ReadyTo: cal.MonthDayOf(w.ReadyTo), Chance: w.Chance})
	}
	switch {
	case len(r.Windows) == 0:
		p := words.P("desk.window_never", words.Args{"best": a.Best, "day": cal.MonthDayOf(max(1, a.BestDay))})
		r.Note = &p
	case a.Best < chance:
		p := words.P("desk.window_below", words.Args{"best": a.Best, "chance": chance})
		r.Note = &p
	}
	return r
}

// chosen resolves a crop as a person names it, with its use and method.
func chosen(name, useName, method string) (*crop.Use, string, error) {
	b, err := book()
	if err != nil {
		return nil, "", err
	}
	c, use, err := b.Find(name)
	if err != nil {
		return nil, "", err
	}
	if useName != "" {
		if use, err = c.Use(useName); err != nil {
			return nil, "", err
		}
	}
	if method == "" {
		return use, use.Methods[0], nil
	}
	if use.Allows(method) {
		return use, method, nil
	}
	if useName == "" {
		for _, other := range c.Uses {
			if other.Allows(method) {
				return other, method, nil
			}
		}
	}
	return nil, "", fault.New(fault.Invalid, "desk.method", words.Args{"crop": use.Label, "method": method, "methods": use.Methods})
}

// coverKind reads the name of a cover; nothing is open ground.
func coverKind(name string) (cover.Kind, error) {
	if name == "" {
		return cover.Open, nil
	}
	if _, err := cover.Lookup(cover.Kind(name)); err != nil {
		return "", err
	}
	return cover.Kind(name), nil
}
