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
		answer := outlookAnswer{OutlookResult: result, Warnings: []string{}}
		for _, b := range result.CannotGrow {
			answer.Warnings = append(answer.Warnings, a.Words.Text(b.Phrase()))
		}
		for _, w := range result.OddWants {
			answer.Warnings = append(answer.Warnings, a.Words.Text(w))
		}
		return a.json(answer)
	}
	if isPath(c.Holding) {
		result.OddWants = nil // told when the files were read
	}
	a.showOutlook(result)
	return nil
}

// outlookAnswer is the JSON of a table.
type outlookAnswer struct {
	*desk.OutlookResult
	Warnings []string `json:"warnings"` // of wants that no bed can grow, or that are hardly meant as they are told
}
