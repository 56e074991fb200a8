package desk

import (
	"garner/internal/jobs"
	"garner/internal/words"
)

// Care is what to mind when a job is done by which somebody may come to harm; without a
// key where nothing is said.
func (l *JobLine) Care() words.Phrase {
	if l.Kind == jobs.Feed {
		return words.P("desk.job_care_feed", nil)
	}
	return words.Phrase{}
}
