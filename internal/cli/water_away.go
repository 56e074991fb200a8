package cli

import (
	"garner/internal/desk"
	"garner/internal/words"
)

// showAwayRest writes what a time away asks beside water.
func (a *App) showAwayRest(r *desk.WateringResult) {
	w := &r.Away.AwayRest
	switch {
	case w.Round.EveryD > 0:
		a.say(words.P("cli.away_round", words.Args{"n": w.Round.EveryD, "beds": len(w.Round.Stops)}))
	default:
		a.say(words.P("cli.away_no_round", nil))
	}
	if len(w.Picks) > 0 {
		a.gap()
		a.say(words.P("cli.away_picks", nil))
		for _, p := range w.Picks {
			a.say(words.P("cli.away_pick", words.Args{"name": p.Name, "kg": p.Kg, "spoils": p.SpoilsKg}))
		}
	}
	if len(w.Due) > 0 {
		a.gap()
		a.say(words.P("cli.away_due", nil))
		for i := range w.Due {
			d := &w.Due[i]
			a.say(words.P("cli.away_job", words.Args{"place": d.Place, "job": d.Title, "says": words.Sharpened(d.Says, r.Today)}))
		}
	}
	for _, d := range w.Doors {
		a.say(words.P("cli.away_doors_"+d.Do, words.Args{"beds": d.Beds}))
	}
	a.gap()
	a.say(words.P("cli.away_look", nil))
	for _, p := range w.Look {
		a.say(words.P("cli.away_look_line", words.Args{"says": p}))
	}
	a.gap()
}
