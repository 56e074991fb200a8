package cli

import (
	"garner/internal/desk"
	"garner/internal/words"
)

// checkDates holds the windows against a folder of printed planting dates.
func (a *App) checkDates(folder string, asJSON bool) error {
	result, err := desk.CheckDates(folder)
	if err != nil {
		return err
	}
	if asJSON {
		return a.json(result)
	}
	a.showDates(result)
	return nil
}

// showDates writes the sums and then every date that lies further off.
func (a *App) showDates(r *desk.DatesResult) {
	all := r.Tallies.All
	a.say(words.P("cli.dates_all", words.Args{"n": all.Dates, "within": r.WithinDays, "share": all.Agree, "median": all.Median}))
	a.gap()
	table := &grid{right: []bool{false, true, true, true, true, true, true}}
	table.add("", a.head("cli.column_dates"), a.head("cli.column_without_window"), a.head("cli.column_median"),
		a.head("cli.column_mean"), a.head("cli.column_agree"), a.head("cli.column_bias"))
	for _, t := range r.Tallies.Ends {
		a.addTally(table, a.named("cli.dates_end_", t.Name), t)
	}
	for _, t := range append(r.Tallies.Regions, r.Tallies.Groups...) {
		a.addTally(table, t.Name, t)
	}
	table.write(a)
	a.gap()
	a.showFarDates(r)
	a.say(words.P("cli.dates_reading", nil))
}

func (a *App) addTally(table *grid, name string, t desk.DatesTally) {
	format := a.Words.Format()
	table.add(name, format.Number(float64(t.Dates), 0), format.Number(float64(t.Missed), 0), format.Number(float64(t.Median), 0),
		format.Number(t.Mean, 0), format.Number(t.Agree*100, 0), format.Number(t.BiasDays, 0))
}

// showFarDates lists the counted dates that do not agree.
func (a *App) showFarDates(r *desk.DatesResult) {
	table := &grid{right: []bool{false, false, true}}
	format := a.Words.Format()
	for _, row := range r.Rows {
		if row.Agrees || !row.Counted {
			continue
		}
		off := a.head("cli.dates_no_window")
		if row.OffDays != nil {
			off = format.Number(float64(*row.OffDays), 0)
		}
		table.add("  "+row.Region, row.Crop, off, a.named("cli.dates_end_", row.End), row.Published)
	}
	if len(table.rows) == 0 {
		return
	}
	a.say(words.P("cli.dates_far", words.Args{"within": r.WithinDays}))
	table.write(a)
	a.gap()
}
