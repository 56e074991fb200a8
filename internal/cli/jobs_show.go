package cli

import (
	"fmt"
	"slices"
	"strings"

	"garner/internal/desk"
	"garner/internal/words"
)

// showJobs writes the jobs in the order of the way, then what was left out.
func (a *App) showJobs(v *desk.JobsView) {
	args := words.Args{"holding": v.Household, "from": v.Today, "last": v.Last, "n": v.Count, "work": desk.WorkTime(v.Minutes)}
	a.sayUntold(v.Untold)
	if v.Count == 0 && len(v.Dropped)+len(v.Past) == 0 {
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
	a.showPast(v)
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
		a.saysOf(l, v)
		for k := range l.Parts {
			a.showPart(l, &l.Parts[k], v)
		}
	}
}

// saysOf writes all there is to say of a line.
func (a *App) saysOf(l *desk.JobLine, v *desk.JobsView) {
	said := []string{l.Reason(a.Words.Text)}
	if l.When.Key != "" {
		said = append(said, a.Words.Text(words.Sharpened(l.When, v.Today)))
	}
	said = append(append(said, a.Words.Text(l.Takes)), a.againOf(l, v)...)
	for _, s := range l.Says {
		said = append(said, a.Words.Text(s))
	}
	said = slices.DeleteFunc(said, func(s string) bool { return s == "" })
	a.say(words.P("cli.jobs_says", words.Args{"text": strings.Join(said, " ")}))
}

// againOf tells the further turns of a job.
func (a *App) againOf(l *desk.JobLine, v *desk.JobsView) []string {
	var said []string
	for i := range l.Again {
		said = append(said, a.Words.Text(words.P("cli.jobs_again", words.Args{"on": words.Sharp(l.Again[i].Best, v.Today)})))
		if i+1 == mostAgain && len(l.Again) > mostAgain {
			return append(said, a.Words.Text(words.P("cli.jobs_again_more", words.Args{"n": len(l.Again) - mostAgain})))
		}
	}
	return said
}

// showPart writes one job of a round.
func (a *App) showPart(round, l *desk.JobLine, v *desk.JobsView) {
	var said []string
	if round.TellsWhy() && round.Reason(a.Words.Text) == "" {
		said = append(said, a.Words.Text(l.Why))
	}
	said = append(said, a.againOf(l, v)...)
	for _, s := range l.Singular() {
		said = append(said, a.Words.Text(words.Sharpened(s, v.Today)))
	}
	key := "cli.jobs_part"
	switch here, same := l.Stop == round.Stop, round.When.Key != ""; {
	case here && same:
		key = "cli.jobs_part_here_same"
	case here:
		key = "cli.jobs_part_here"
	case same:
		key = "cli.jobs_part_same"
	}
	text := a.Words.Text(words.P(key, words.Args{"place": l.Place, "part": l.Part, "days": words.Sharpened(l.Short, v.Today), "text": strings.Join(said, " ")}))
	fmt.Fprintln(a.Stdout, strings.TrimRight(text, " "))
}

// showPast asks after what nobody said was done.
func (a *App) showPast(v *desk.JobsView) {
	if len(v.Past) == 0 {
		return
	}
	a.gap()
	a.say(words.P("cli.jobs_past", nil))
	for i := range v.Past {
		a.say(words.P("cli.jobs_past_work", words.Args{"title": v.Past[i].Title}))
		for _, j := range v.Past[i].Jobs {
			a.say(words.P("cli.jobs_past_line", words.Args{"place": j.Place, "title": j.Title, "was": j.Was}))
		}
	}
}
