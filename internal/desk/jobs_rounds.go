package desk

import (
	"slices"
	"strings"

	"garner/internal/cal"
	"garner/internal/jobs"
	"garner/internal/words"
)

// work tells what is done in one go.
func (n *jobNamer) work(w *jobs.Work, v *JobsView) JobLine {
	if !w.IsRound() {
		return n.turns(w.Jobs[0], v)
	}
	var parts []JobLine
	for _, turns := range w.Jobs {
		parts = append(parts, n.turns(turns, v))
	}
	return n.round(w, parts, v)
}

// round sums jobs of one kind up to one line.
func (n *jobNamer) round(w *jobs.Work, parts []JobLine, v *JobsView) JobLine {
	l := JobLine{Place: n.place(w.Stop), Parts: parts}
	first := &parts[0].Job
	l.Job = jobs.Job{ID: "round:" + string(first.Kind) + ":" + w.Stop.Site + w.Stop.Store, Kind: first.Kind, Stop: w.Stop, Round: true,
		First: first.First, Best: first.Due(v.Today), Last: first.Last, Who: first.Who, Odds: 1, PutOff: cal.None}
	for i := range parts {
		p := &parts[i].Job
		l.First, l.Best, l.Last = min(l.First, p.First), min(l.Best, p.Due(v.Today)), min(l.Last, p.Last)
		l.Minutes += p.Minutes
		l.Amount.M2, l.Amount.Kg, l.Amount.Litres = l.Amount.M2+p.Amount.M2, l.Amount.Kg+p.Amount.Kg, l.Amount.Litres+p.Amount.Litres
		l.Amount.Plants += p.Amount.Plants
		if !p.Who.Can(l.Who) {
			l.Who = p.Who
		}
		for _, t := range p.Tools {
			if !slices.Contains(l.Tools, t) {
				l.Tools = append(l.Tools, t)
			}
		}
	}
	l.Title = words.P("jobs.round_"+strings.ReplaceAll(string(l.Kind), "-", "_"), words.Args{"n": len(parts), "area": l.Amount.M2, "plants": l.Amount.Plants,
		"kg": l.Amount.Kg, "litres": l.Amount.Litres})
	l.Takes, l.Says = jobTakes(&l.Job), jobWho(l.Who)
	if l.sameDays(v.Today) {
		l.When = parts[0].When
	}
	return l
}

// sameDays tells whether all jobs of a round are due on one day and have one last day.
func (l *JobLine) sameDays(today cal.Date) bool {
	first := &l.Parts[0]
	return !slices.ContainsFunc(l.Parts, func(p JobLine) bool { return p.Due(today) != first.Due(today) || p.Last != first.Last })
}

// Reason is why a line is to be done now, as somebody says it: of a round what is said of
// all its jobs, empty where it differs.
func (l *JobLine) Reason(say func(words.Phrase) string) string {
	if len(l.Parts) == 0 {
		return say(l.Why)
	}
	shared := say(l.Parts[0].Why)
	for i := range l.Parts {
		if say(l.Parts[i].Why) != shared {
			return ""
		}
	}
	return shared
}

// TellsWhy tells whether each job of a round says why by itself where they differ: what
// is raised hangs on days of its own.
func (l *JobLine) TellsWhy() bool { return l.Stop.Part == jobs.AtIndoors }

// jobShort tells a job's days in few words.
func jobShort(j *jobs.Job, today cal.Date) words.Phrase {
	args := words.Args{"best": j.Due(today), "last": j.Last}
	switch {
	case j.Due(today) >= j.Last:
		return words.P("desk.part_on", args)
	case j.Due(today) == today:
		return words.P("desk.part_by", args)
	}
	return words.P("desk.part_days", args)
}

// Singular are what is said of one job of a round by itself: all but who can do it, which
// the round tells.
func (l *JobLine) Singular() []words.Phrase {
	return slices.DeleteFunc(slices.Clone(l.Says), func(p words.Phrase) bool { return p.Key == "desk.job_child" || p.Key == "desk.job_grown" })
}
