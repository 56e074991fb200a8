package cli

import (
	"garner/internal/desk"
)

// outlookCommand shows the table of a holding, week by week.
type outlookCommand struct {
	From    string `placeholder:"DATE"`
	Weeks   string `placeholder:"N"`
	Years   string `placeholder:"N"`
	Seed    string `placeholder:"S"`
	Members bool
	holdingFlags
	JSON bool `name:"json"`
}

// The longest table and the most years of weather that are computed.
const (
	maxWeeks = 156
	maxYears = 2000
)

// Run asks the desk for the table and shows it.
func (c *outlookCommand) Run(a *App) error {
	var f flags
	options := desk.OutlookOptions{
		From:    f.date("--from", c.From),
		Weeks:   f.whole("--weeks", c.Weeks, 1, maxWeeks, 0),
		Years:   f.whole("--years", c.Years, 1, maxYears, 0),
		Seed:    f.seed(c.Seed),
		Members: c.Members,
	}
	if err := f.err(); err != nil {
		return err
	}
	h, err := c.open(a)
	if err != nil {
		return err
	}
	p := a.progress("cli.progress_outlook")
	options.Progress = p.report()
	result, err := desk.Outlook(h, options)
	p.clear()
	if err != nil {
		return err
	}
	if c.JSON {
		return a.json(result)
	}
	a.showOutlook(result)
	return nil
}
