package cli

import (
	"garner/internal/desk"
	"garner/internal/holding"
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
