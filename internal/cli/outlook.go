package cli

import (
	"garner/internal/desk"
	"garner/internal/holding"
)

// outlookCommand shows the table of a holding, week by week.
type outlookCommand struct {
	tableFlags
	Members bool
	holdingFlags
	JSON bool `name:"json"`
}

// Run asks the desk for the table and shows it.
func (c *outlookCommand) Run(a *App) error {
	var f flags
	options := c.options(&f)
	options.Members = c.Members
	result, err := ask(a, c.holdingFlags, &f, func(h *holding.Holding, progress reporter) (*desk.OutlookResult, error) {
		options.Progress = progress
		return desk.Outlook(h, options)
	})
	if err != nil {
		return err
	}
	if c.JSON {
		return a.json(result)
	}
	a.showOutlook(result)
	return nil
}
