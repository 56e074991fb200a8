package cli

import (
	"strings"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/words"
)

// showLarder writes the larder in words: what is in store, what goes over, and what
// to mind.
func (a *App) showLarder(v *desk.LarderView) {
	a.say(words.P("cli.larder_title", words.Args{"holding": v.Household, "today": v.Today}))
	for _, p := range v.Lead {
		a.sayPlain(p, v.Today)
	}
	for i := range v.Stocks {
		s := &v.Stocks[i]
		a.gap()
		a.say(words.P("cli.larder_stock", words.Args{"name": asSentence(s.Plural), "kg": s.Kg, "says": a.together(s.Says, v.Today)}))
		for k := range s.Batches {
			a.say(words.P("cli.list_item", words.Args{"text": a.batchText(&s.Batches[k], v.Today)}))
		}
	}
	a.gap()
	for i := range v.Stores {
		s := &v.Stores[i]
		a.say(words.P("cli.larder_store", words.Args{"name": s.Name, "says": words.Sharpened(s.Says, v.Today)}))
	}
	a.showSurplus(v)
	if len(v.Cautions) == 0 {
		return
	}
	a.gap()
	a.say(words.P("cli.larder_mind", nil))
	for _, c := range v.Cautions {
		a.say(words.P("cli.list_item", words.Args{"text": c.Text}))
	}
}

// showSurplus writes what goes over, what to do with it, and the list to give away.
func (a *App) showSurplus(v *desk.LarderView) {
	a.gap()
	if len(v.Surplus) == 0 {
		a.say(words.P("cli.larder_nothing_over", nil))
		return
	}
	a.say(words.P("cli.larder_over", nil))
	for i := range v.Surplus {
		s := &v.Surplus[i]
		a.say(words.P("cli.larder_surplus", words.Args{"name": asSentence(s.Plural), "says": words.Sharpened(s.Says, v.Today)}))
		for _, want := range s.Wants {
			a.say(words.P("cli.list_item", words.Args{"text": want}))
		}
		for _, w := range s.Ways {
			if w.Kind == "give" && len(s.Ways) > 1 {
				continue // the list below says so of all
			}
			a.say(words.P("cli.list_item", words.Args{"text": w.Says}))
			for _, step := range w.Prepare {
				a.say(words.P("cli.list_below", words.Args{"text": step}))
			}
		}
	}
	if len(v.Give) == 0 {
		return
	}
	a.gap()
	a.say(words.P("cli.larder_give", nil))
	rows := grid{right: []bool{false, true, false}}
	for _, g := range v.Give {
		for _, line := range g.Lines {
			rows.add("  "+a.Words.Format().Date(g.Week), a.Words.Format().Forecast(line.Kg), line.Plural)
		}
	}
	rows.write(a)
}

// batchText says what a batch is, where it lies and what becomes of it.
func (a *App) batchText(b *desk.BatchLine, today cal.Date) string {
	key := "cli.larder_batch"
	if b.PlantingName != "" {
		key = "cli.larder_batch_of"
	}
	return a.Words.Text(words.P(key, words.Args{"name": b.Name, "store": b.StoreName, "kg": b.Kg, "stored": b.Stored,
		"planting": b.PlantingName, "says": words.Sharpened(b.Says, today)}))
}

// together puts phrases into one line.
func (a *App) together(phrases []words.Phrase, today cal.Date) string {
	var out []string
	for _, p := range phrases {
		out = append(out, a.Words.Text(words.Sharpened(p, today)))
	}
	return strings.Join(out, " ")
}

// sayPlain says a phrase without the marks of what matters in it.
func (a *App) sayPlain(p words.Phrase, today cal.Date) {
	text := strings.ReplaceAll(a.Words.Text(words.Sharpened(p, today)), "**", "")
	a.say(words.P("cli.sentence", words.Args{"text": capital(text)}))
}
