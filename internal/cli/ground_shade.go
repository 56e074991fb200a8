package cli

import (
	"garner/internal/desk"
	"garner/internal/holding"
	"garner/internal/words"
)

// shadeCommand tells the light that each bed gets through the year, and what the
// air asks of it.
type shadeCommand struct {
	holdingFlags
	JSON bool `name:"json"`
}

// Run asks the desk for the light of the beds and shows it.
func (c *shadeCommand) Run(a *App) error {
	h, err := c.open(a)
	if err != nil {
		return err
	}
	r, err := desk.Shade(h)
	if err != nil {
		return err
	}
	a.warn(r.Wrong)
	if c.JSON {
		return a.json(r)
	}
	a.showShade(h, r)
	return nil
}

// showShade writes a line of twelve shares for each bed.
func (a *App) showShade(h *holding.Holding, r *desk.ShadeResult) {
	if len(r.Beds) == 0 {
		a.say(words.P("cli.shade_no_beds", nil))
		return
	}
	a.say(words.P("cli.shade_title", words.Args{"name": h.Name}))
	a.gap()
	format := a.Words.Format()
	g := &grid{right: []bool{false}}
	head := []string{a.head("cli.column_bed")}
	for m := 1; m <= 12; m++ {
		head = append(head, format.ShortMonth(m))
		g.right = append(g.right, true)
	}
	g.add(head...)
	undrawn := 0
	for i, b := range r.Beds {
		row := []string{b.Bed}
		for _, light := range b.Light {
			row = append(row, format.Number(100*light, 0))
		}
		g.add(row...)
		if !h.Beds[i].At.IsSet() {
			undrawn++
		}
	}
	g.write(a)
	if undrawn > 0 {
		a.gap()
		a.say(words.P("cli.shade_undrawn", words.Args{"n": undrawn}))
	}
	a.showAsked(h, r)
}

// showAsked writes what the air asks of each bed: a line of twelve months, and
// how much of the year's the shade spares.
func (a *App) showAsked(h *holding.Holding, r *desk.ShadeResult) {
	g := &grid{right: []bool{false}}
	head := []string{a.head("cli.column_bed")}
	for m := 1; m <= 12; m++ {
		head = append(head, a.Words.Format().ShortMonth(m))
		g.right = append(g.right, true)
	}
	g.right = append(g.right, true)
	g.add(append(head, a.head("cli.column_spared"))...)
	told := false
	for _, b := range r.Beds {
		if b.Water == nil {
			continue
		}
		told = true
		row := []string{b.Bed}
		for _, litres := range b.Water.WeekL {
			row = append(row, a.Words.Format().Number(litres, 0))
		}
		g.add(append(row, a.Words.Format().Number(100*b.Water.YearSpared(), 0))...)
	}
	if !told {
		return
	}
	a.gap()
	a.say(words.P("cli.asked_title", words.Args{"name": h.Name}))
	a.gap()
	g.write(a)
	a.gap()
	a.say(words.P("cli.asked_reading", nil))
}
