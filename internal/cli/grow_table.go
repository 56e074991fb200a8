package cli

import (
	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/desk"
	"garner/internal/words"
)

// showGrow writes a planting's days and dates. Every so many days is shown, and
// each day on which the stage changes.
func (a *App) showGrow(r *desk.GrowResult, o desk.GrowOptions, every int) {
	format := a.Words.Format()
	a.say(words.P("cli.grow_title", words.Args{
		"crop": r.Crop, "use": r.Use, "method": a.named("cli.start_", r.Method), "date": o.Sown,
		"cover": a.coverText(o.Cover), "site": a.siteText(o.Site),
	}))
	a.gap()
	table := grid{right: []bool{false, false, true, true, true}}
	table.add(a.head("cli.column_date"), a.head("cli.column_stage"), a.head("cli.column_lai"),
		a.head("cli.column_per_m2"), a.head("cli.column_per_plant"))
	before := ""
	for i, day := range r.Days {
		if i%every != 0 && day.Stage == before && i != len(r.Days)-1 {
			continue
		}
		before = day.Stage
		table.add(format.Date(day.Date), a.named("cli.stage_", day.Stage), format.Number(day.LAI, 2),
			format.Number(day.FreshKgM2, 2), format.Number(day.FreshGPlant, 1))
	}
	table.write(a)
	a.gap()
	a.sayDate("cli.grow_emerged", "cli.grow_not_emerged", r.Emerged)
	a.sayDate("cli.grow_ready", "cli.grow_not_ready", r.Ready)
	if r.Over != nil {
		a.say(words.P("cli.grow_over", words.Args{"date": *r.Over}))
	}
	end := a.reason(r.Why)
	if end == "" {
		end = r.End
	}
	a.say(words.P("cli.grow_end", words.Args{"end": end}))
}

func (a *App) head(key string) string { return a.Words.Text(words.P(key, nil)) }

func (a *App) sayDate(key, without string, d *cal.Date) {
	if d == nil {
		a.say(words.P(without, nil))
		return
	}
	a.say(words.P(key, words.Args{"date": *d}))
}

// reason puts a phrase into words; an empty phrase gives nothing.
func (a *App) reason(p words.Phrase) string {
	if p.Key == "" {
		return ""
	}
	return a.Words.Text(p)
}

// coverText says what a crop stands under: in the open, under fleece.
func (a *App) coverText(kind string) string {
	if kind == "" {
		kind = string(cover.Open)
	}
	return a.named("cli.cover_", kind)
}
