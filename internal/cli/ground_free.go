package cli

import (
	"garner/internal/desk"
	"garner/internal/holding"
	"garner/internal/words"
)

// freeCommand tells what ground comes free, and when.
type freeCommand struct {
	From  string `placeholder:"DATE"`
	Until string `placeholder:"DATE"`
	Bed   string `placeholder:"BED"`
	holdingFlags
	JSON bool `name:"json"`
}

// Run asks the desk for the free ground and shows it.
func (c *freeCommand) Run(a *App) error {
	var f flags
	from, until := f.span(c.From, c.Until)
	options := desk.FreeOptions{From: from, Until: until, Bed: c.Bed}
	r, err := ask(a, c.holdingFlags, &f, func(h *holding.Holding, progress reporter) (*desk.FreeResult, error) {
		options.Progress = progress
		return desk.FreeGround(h, options)
	})
	if err != nil {
		return err
	}
	if c.JSON {
		return a.json(r)
	}
	a.showFree(r)
	return nil
}

// showFree writes each piece of free ground on a line, then what does not fit.
func (a *App) showFree(r *desk.FreeResult) {
	a.say(words.P("cli.free_title", words.Args{"from": r.From, "until": r.Until}))
	if len(r.Free) == 0 {
		a.say(words.P("cli.free_none", nil))
	}
	rows := grid{right: []bool{false, true}}
	for _, p := range r.Free {
		rows.add("  "+p.Space.BedName, a.Words.Format().SquareMetres(p.AreaM2), a.Words.Text(words.P("cli.free_line",
			words.Args{"when": p.Space.When, "ends": p.Space.Ends})))
	}
	rows.write(a)
	if len(r.Wrong) == 0 {
		return
	}
	a.gap()
	a.say(words.P("cli.free_wrong", nil))
	for _, w := range r.Wrong {
		a.say(words.P("cli.free_wrong_line", words.Args{"says": w.Overlap.Says, "mend": w.Overlap.Mend}))
	}
}
