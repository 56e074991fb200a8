package cli

import (
	"garner/internal/desk"
	"garner/internal/words"
)

// mostShown is how many candidates are written in words; the JSON has them all.
const mostShown = 12

// showAdvice writes what ground could be used for.
func (a *App) showAdvice(v *desk.AdviseView) {
	key := "cli.advise_title_open"
	if v.Until.IsSet() {
		key = "cli.advise_title"
	}
	a.say(words.P(key, words.Args{"bed": v.BedName, "area": v.AreaM2, "from": v.From, "until": v.Until}))
	if len(v.Candidates) == 0 {
		a.say(words.P("cli.advise_none", nil))
	}
	for i := range v.Candidates[:min(mostShown, len(v.Candidates))] {
		a.gap()
		a.showCandidate(i+1, &v.Candidates[i])
	}
	if more := len(v.Candidates) - mostShown; more > 0 {
		a.gap()
		a.say(words.P("cli.advise_more", words.Args{"n": more}))
	}
	if len(v.Offers) == 0 {
		return
	}
	a.gap()
	a.say(words.P("cli.advise_offers", nil))
	for i := range v.Offers {
		a.say(words.P("cli.list_item", words.Args{"text": v.Offers[i].Says}))
	}
}

func (a *App) showCandidate(n int, c *desk.CandidateView) {
	a.say(words.P("cli.advise_line", words.Args{"n": n, "name": asSentence(c.Name), "how": a.startOf(c), "worth": c.DropKg}))
	a.say(words.P("cli.advise_reason", words.Args{"reason": c.Reason}))
	if need := a.needOf(c); need != "" {
		a.say(words.P("cli.advise_need", words.Args{"need": need}))
	}
	if c.Clash != nil {
		a.say(words.P("cli.advise_clash", words.Args{"why": *c.Clash}))
	}
}

// startOf says how and when a candidate goes in.
func (a *App) startOf(c *desk.CandidateView) string {
	args := words.Args{"date": c.Date, "raise": c.RaiseFrom}
	switch {
	case c.Method == "seed":
		return a.Words.Text(words.P("cli.advise_sow", args))
	case c.Late:
		return a.Words.Text(words.P("cli.advise_plant_had", args))
	case c.RaiseFrom.IsSet():
		return a.Words.Text(words.P("cli.advise_plant", args))
	}
	return a.Words.Text(words.P("cli.advise_set", args))
}

// needOf says what seed or plants it takes.
func (a *App) needOf(c *desk.CandidateView) string {
	args := words.Args{"seed": c.SeedG / 1000, "n": c.Plants}
	key := ""
	switch {
	case c.Plants > 0 && c.Method == "set":
		key = "cli.advise_sets"
	case c.Plants > 0:
		key = "cli.advise_plants"
	case c.SeedG > 0:
		key = "cli.advise_seed"
	default:
		return ""
	}
	need := words.P(key, args)
	switch {
	case c.Lot != nil && c.Enough:
		need = words.P("cli.advise_enough", words.Args{"need": need})
	case c.Lot != nil:
		need = words.P("cli.advise_some", words.Args{"need": need})
	}
	return a.Words.Text(need)
}
