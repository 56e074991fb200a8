package desk

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/holding"
	"garner/internal/journal"
	"garner/internal/record"
	"garner/internal/words"
)

// AnsweredJob is a job that was answered today.
type AnsweredJob struct {
	Job   string
	Did   record.Did
	Until cal.Date // of what was put off
	Title words.Phrase
	Place words.Phrase
	Entry string // that can be taken back; empty: not from here
}

// mostEntries is how far back in the journal the answers of a day are looked for.
const mostEntries = 400

// answeredToday are the answers of today with what they answered.
func (o *Office) answeredToday(a *asked) ([]AnsweredJob, error) {
	today := map[string]*record.Answer{}
	for i := range a.holding.Answers {
		if r := &a.holding.Answers[i]; r.Date == a.setting.Today {
			today[r.ID] = r
		}
	}
	if len(today) == 0 {
		return nil, nil
	}
	entries, err := o.keeper.Entries(0, mostEntries)
	if err != nil {
		return nil, err
	}
	made, wrote := map[string]string{}, map[string]map[string]bool{}
	for i := range entries {
		noteAnswers(&entries[i], today, made, wrote)
	}
	titles, err := o.titlesBefore(a, today, wrote)
	if err != nil {
		return nil, err
	}
	var out []AnsweredJob
	for i := range a.holding.Answers {
		r := &a.holding.Answers[i]
		if today[r.ID] == nil {
			continue
		}
		line := AnsweredJob{Job: r.Job, Did: r.Did, Until: r.Until, Entry: made[r.ID], Title: words.P("desk.week_job_unnamed", nil)}
		if l, ok := titles[r.Job]; ok {
			line.Title, line.Place = l.Title, l.Place
		}
		out = append(out, line)
	}
	return out, nil
}

// noteAnswers notes which entry made an answer that still stands, and which rows it
// wrote beside it.
func noteAnswers(e *KeptEntry, today map[string]*record.Answer, made map[string]string, wrote map[string]map[string]bool) {
	if e.UndoneBy != "" || !slices.ContainsFunc(e.Changes, func(c journal.Change) bool { return answersOne(&c, today) }) {
		return
	}
	for i := range e.Changes {
		c := &e.Changes[i]
		if answersOne(c, today) {
			made[c.ID] = e.ID
		}
		if c.Before == nil {
			if wrote[c.Table] == nil {
				wrote[c.Table] = map[string]bool{}
			}
			wrote[c.Table][c.ID] = true
		}
	}
}

func answersOne(c *journal.Change, today map[string]*record.Answer) bool {
	return c.Table == "job_answers" && c.After != nil && today[c.ID] != nil
}

// titlesBefore are the jobs as they were told before today's answers and the records
// that were written with them.
func (o *Office) titlesBefore(a *asked, today map[string]*record.Answer, wrote map[string]map[string]bool) (map[string]JobLine, error) {
	w, err := o.weekWork(JobsOptions{}, true)
	if err != nil {
		return nil, err
	}
	before := *a
	before.holding = without(a.holding, today, wrote["records"])
	w.asked = &before
	all, err := w.derive(a.setting.Today + farthestJob)
	if err != nil {
		return nil, err
	}
	n, v, out := &jobNamer{namer: newNamer(&before)}, &JobsView{Today: a.setting.Today}, map[string]JobLine{}
	for i := range all {
		if _, there := out[all[i].ID]; !there {
			out[all[i].ID] = n.line(&all[i], v)
		}
	}
	return out, nil
}

// farthestJob is how far ahead a job may lie that was answered [d].
const farthestJob = 120

// without is the holding before some answers and records.
func without(h *holding.Holding, answers map[string]*record.Answer, records map[string]bool) *holding.Holding {
	own := *h
	own.Answers, own.Records = nil, nil
	for i := range h.Answers {
		if answers[h.Answers[i].ID] == nil {
			own.Answers = append(own.Answers, h.Answers[i])
		}
	}
	for i := range h.Records {
		if !records[h.Records[i].ID] {
			own.Records = append(own.Records, h.Records[i])
		}
	}
	return &own
}
