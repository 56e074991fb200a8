package cli

import (
	"strings"

	"garner/internal/desk"
	"garner/internal/words"
)

// showJobs writes the jobs in the order of the way, then what was left out.
func (a *App) showJobs(v *desk.JobsView) {
	args := words.Args{"holding": v.Household, "from": v.Today, "last": v.Last, "n": v.Count, "work": desk.WorkTime(v.Minutes)}
	a.sayUntold(v.Untold)
	if v.Count == 0 && len(v.Dropped) == 0 {
		a.say(words.P("cli.jobs_none", args))
		return
	}
	a.say(words.P("cli.jobs_title", args))
	a.showPressing(v)
	for i := range v.Shares {
		s := &v.Shares[i]
		if len(v.Shares) > 1 {
			a.gap()
			a.say(words.P("cli.jobs_person", words.Args{"who": i + 1, "n": s.Count(), "work": desk.WorkTime(s.Minutes)}))
		}
		for k := range s.Legs {
			a.gap()
			a.showLeg(&s.Legs[k], v)
		}
	}
	if len(v.Dropped) == 0 {
		return
	}
	a.gap()
	a.say(words.P("cli.jobs_dropped", words.Args{"n": len(v.Dropped), "work": desk.WorkTime(v.DroppedMin)}))
	for i := range v.Dropped {
		l := &v.Dropped[i]
		a.say(words.P("cli.jobs_dropped_line", words.Args{"place": l.Place, "title": l.Title, "when": words.Sharpened(l.When, v.Today)}))
	}
}

// showPressing names what comes first when there is little time.
func (a *App) showPressing(v *desk.JobsView) {
	var first []string
	for _, id := range v.Pressing {
		for _, l := range v.Lines() {
			if l.ID == id {
				first = append(first, a.Words.Text(words.P("desk.job_event", words.Args{"place": l.Place, "title": l.Title})))
			}
		}
	}
	if len(first) > 0 {
		a.say(words.P("cli.jobs_pressing", words.Args{"jobs": strings.Join(first, "; ")}))
	}
}

// mostAgain is how many further turns of a job are told by their day.
const mostAgain = 3

func (a *App) showLeg(leg *desk.JobLeg, v *desk.JobsView) {
	args := words.Args{"place": leg.Place, "site": leg.Site, "m": leg.WalkM}
	switch {
	case leg.Bed == "":
		a.say(words.P("cli.jobs_place_site", args))
	case leg.WalkM > 0:
		a.say(words.P("cli.jobs_walk", args))
	default:
		a.say(words.P("cli.jobs_place", args))
	}
	for i := range leg.Jobs {
		l := &leg.Jobs[i]
		a.say(words.P("cli.jobs_line", words.Args{"title": l.Title}))
		said := []string{a.Words.Text(l.Why), a.Words.Text(words.Sharpened(l.When, v.Today)), a.Words.Text(l.Takes)}
		for i := range l.Again {
			said = append(said, a.Words.Text(words.P("cli.jobs_again", words.Args{"on": words.Sharp(l.Again[i].Best, v.Today)})))
			if i+1 == mostAgain && len(l.Again) > mostAgain {
				said = append(said, a.Words.Text(words.P("cli.jobs_again_more", words.Args{"n": len(l.Again) - mostAgain})))
				break
			}
		}
		for _, s := range l.Says {
			said = append(said, a.Words.Text(s))
		}
		a.say(words.P("cli.jobs_says", words.Args{"text": strings.Join(said, " ")}))
	}
}
