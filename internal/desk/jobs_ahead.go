package desk

import (
	"garner/internal/cal"
	"garner/internal/jobs"
	"garner/internal/outlook"
)

// farAhead is from how many days on jobs are told from the whole table: there is little
// to be saved by looking at less.
const farAhead = 70

// tableAhead is a table that tells all that jobs need until a day: the whole one where
// that is at hand, else its first weeks, of which jobs are the same (outlook.Ahead).
func (o *Office) tableAhead(a *asked, until cal.Date) (*outlook.Table, error) {
	if until > a.setting.Today+farAhead {
		return o.table(a)
	}
	o.computing.Lock()
	defer o.computing.Unlock()
	if t := o.atHand(a); t != nil {
		return t, nil
	}
	return outlook.Ahead(a.setting, o.memory, until+jobs.ForesightD)
}

// weighs tells whether putting jobs off is weighed, for which the whole table is needed.
func (o *JobsOptions) weighs() bool { return o.Costs || o.Hours > 0 }

// Warm works out the whole table behind a page that did without it, so that the next
// one finds it. What is in its way is told to who asks for the table.
func (o *Office) Warm() {
	if a, err := o.ask(nil); err == nil {
		o.warm(a)
	}
}
