package desk

import (
	"garner/internal/cal"
	"garner/internal/jobs"
	"garner/internal/words"
)

// PastWork is work of one kind whose days went by without a word.
type PastWork struct {
	Work  string
	Title words.Phrase
	Jobs  []PastJob // by their day
}

// PastJob is a job of which nobody said whether it was done.
type PastJob struct {
	jobs.Job
	Place words.Phrase
	Was   words.Phrase // the day on which it was due
}

// past tells what is asked after.
func (n *jobNamer) past(all []jobs.Past, v *JobsView) []PastWork {
	var out []PastWork
	for _, p := range all {
		w := PastWork{Work: p.Work, Title: words.P("desk.past_"+p.Work, words.Args{"n": len(p.Jobs), "when": pastMonths(p.First, p.Last)})}
		for i := range p.Jobs {
			j := &p.Jobs[i]
			w.Jobs = append(w.Jobs, PastJob{*j, n.place(j.Stop), words.P("desk.past_was", words.Args{"best": words.Sharp(j.Best, v.Today)})})
		}
		out = append(out, w)
	}
	return out
}

// pastMonths tells the months from one day to another.
func pastMonths(first, last cal.Date) words.Phrase {
	if first.Month() == last.Month() && first.Year() == last.Year() {
		return words.P("desk.past_month", words.Args{"first": first})
	}
	return words.P("desk.past_months", words.Args{"first": first, "last": last})
}
