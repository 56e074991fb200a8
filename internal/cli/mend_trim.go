package cli

import (
	"garner/internal/desk"
	"garner/internal/holding"
	"garner/internal/words"
)

func (c *mendCommand) trim(a *App, f *flags, options desk.MendOptions) error {
	v, err := ask(a, c.holdingFlags, f, func(h *holding.Holding, progress reporter) (*desk.TrimView, error) {
		options.Progress = progress
		return desk.Trim(h, options)
	})
	if err != nil {
		return err
	}
	if c.JSON {
		return a.json(a.trimAnswer(v))
	}
	a.showTrim(v)
	return nil
}

// trimAnswer is the JSON of which sowings could be smaller.
type trimAnswer struct {
	Vegetable string    `json:"vegetable"`
	Years     int       `json:"years"`
	OverKg    float64   `json:"over_kg"`
	Trims     []trimRow `json:"trims"`
}

// trimRow is one sowing made smaller or dropped.
type trimRow struct {
	Planting string        `json:"planting"`
	Title    string        `json:"title"`
	AreaM2   float64       `json:"area_m2"`
	FreedM2  float64       `json:"freed_m2"`
	OverKg   float64       `json:"over_drop_kg"`
	ShortKg  float64       `json:"short_rise_kg"`
	Next     *candidateRow `json:"next"`
}

func (a *App) trimAnswer(v *desk.TrimView) trimAnswer {
	r := trimAnswer{Vegetable: v.Vegetable, Years: v.Years, OverKg: v.OverKg, Trims: []trimRow{}}
	for i := range v.Lines {
		l := &v.Lines[i]
		row := trimRow{Planting: l.Planting, Title: a.Words.Text(l.Title), AreaM2: l.AreaM2, FreedM2: l.FreedM2, OverKg: l.OverKg, ShortKg: l.LossKg}
		if l.Next != nil {
			next := a.candidateRow(l.Next)
			row.Next = &next
		}
		r.Trims = append(r.Trims, row)
	}
	return r
}

// showTrim writes what goes over and which sowings could be smaller.
func (a *App) showTrim(v *desk.TrimView) {
	args := words.Args{"vegetable": asSentence(v.Plural), "kg": v.OverKg}
	if len(v.Lines) == 0 {
		a.say(words.P("cli.trim_none", args))
		return
	}
	a.say(words.P("cli.trim_title", args))
	for i := range v.Lines {
		l := &v.Lines[i]
		a.gap()
		a.say(words.P("cli.mend_line", words.Args{"n": i + 1, "title": l.Title}))
		for _, does := range l.Does {
			a.say(words.P("cli.mend_says", words.Args{"text": does}))
		}
		if l.Then != nil {
			a.say(words.P("cli.mend_says", words.Args{"text": *l.Then}))
		}
	}
}
