package desk

import (
	"math"

	"garner/internal/jobs"
	"garner/internal/words"
)

// jobNamer says jobs in words.
type jobNamer struct {
	*namer
	weighed bool // what putting off costs was asked for
}

// share tells one person's jobs along the way.
func (n *jobNamer) share(all []jobs.Job, v *JobsView) JobShare {
	s := JobShare{Minutes: jobs.Minutes(all)}
	for _, leg := range jobs.Route(n.a.holding, jobs.Works(all)) {
		l := JobLeg{Place: n.place(leg.Stop), Site: n.site(leg.Stop.Site), Bed: leg.Stop.Bed, Store: leg.Stop.Store, WalkM: leg.WalkM}
		for i := range leg.Works {
			l.Jobs = append(l.Jobs, n.work(&leg.Works[i], v))
		}
		s.WalkM += leg.WalkM
		s.Legs = append(s.Legs, l)
	}
	return s
}

// turns tells a job with its further turns.
func (n *jobNamer) turns(turns []jobs.Job, v *JobsView) JobLine {
	l := n.line(&turns[0], v)
	for i := range turns[1:] {
		l.Again = append(l.Again, n.line(&turns[1+i], v))
	}
	return l
}

// place names a stop.
func (n *jobNamer) place(s jobs.Stop) words.Phrase {
	switch s.Part {
	case jobs.AtStore:
		return words.P("desk.job_at", words.Args{"name": n.store(s.Store)})
	case jobs.AtIndoors:
		return words.P("desk.job_indoors", nil)
	case jobs.AtSite:
		return words.P("desk.job_at", words.Args{"name": n.site(s.Site)})
	}
	return words.P("desk.job_at", words.Args{"name": n.bed(s.Bed)})
}

func (n *jobNamer) site(id string) string {
	for _, s := range n.a.holding.Sites {
		if s.ID == id && s.Name != "" {
			return s.Name
		}
	}
	return id
}

// line says all there is to say of a job.
func (n *jobNamer) line(j *jobs.Job, v *JobsView) JobLine {
	l := JobLine{Job: *j, Place: n.place(j.Stop), When: jobWhen(j, v), Short: jobShort(j, v.Today), Takes: jobTakes(j)}
	l.Says = append(l.Says, j.Notes...)
	switch {
	case j.Lay != "":
		l.Says = append(l.Says, words.P("desk.job_lay", words.Args{"cover": coverName(j.Lay)}))
	case j.Unowned:
		l.Says = append(l.Says, words.P("desk.job_lay_none", nil))
	}
	for i := range j.Needs {
		l.Says = append(l.Says, jobNeed(&j.Needs[i]))
	}
	l.Says = append(l.Says, jobWho(j.Who)...)
	switch kg := j.PutOffKg(); {
	case kg >= worthTelling && j.Weighed:
		l.Says = append(l.Says, words.P("desk.job_costs", words.Args{"kg": kg}))
	case kg >= worthTelling:
		l.Says = append(l.Says, words.P("desk.job_spoils", words.Args{"kg": kg}))
	case j.Weighed && n.weighed:
		l.Says = append(l.Says, words.P("desk.job_costs_nothing", nil))
	}
	if j.Ask {
		l.Says = append(l.Says, words.P("desk.job_ask", nil))
	}
	return l
}

// jobWho tells who can do a job where that is not the usual.
func jobWho(who jobs.Who) []words.Phrase {
	switch who {
	case jobs.Child:
		return []words.Phrase{words.P("desk.job_child", nil)}
	case jobs.Grown:
		return []words.Phrase{words.P("desk.job_grown", nil)}
	}
	return nil
}

// worthTelling is what putting off must cost to be worth a word [kg].
const worthTelling = 0.1

// jobWhen tells a job's best and last day.
func jobWhen(j *jobs.Job, v *JobsView) words.Phrase {
	args := words.Args{"best": j.Best, "last": j.Last, "odds": j.Odds}
	switch {
	case j.PutOff.IsSet() && j.Best >= v.Today:
		return words.P("desk.job_when_put_off", args)
	case j.Season && j.Best < v.Today && j.Last >= v.Today:
		return words.P("desk.job_when_season", args)
	case j.Overdue(v.Today):
		return words.P("desk.job_when_overdue", args)
	case j.Best == j.Last:
		return words.P("desk.job_when_day", args)
	case j.Forecast && j.Odds < sureOdds:
		return words.P("desk.job_when_forecast", args)
	}
	return words.P("desk.job_when", args)
}

// sureOdds are the odds from which a forecast is told without them.
const sureOdds = 0.95

// jobTakes tells minutes and tools.
func jobTakes(j *jobs.Job) words.Phrase {
	args := words.Args{"work": WorkTime(j.Minutes)}
	if len(j.Tools) == 0 {
		return words.P("desk.job_takes_nothing", args)
	}
	var tools []words.Phrase
	for _, t := range j.Tools {
		tools = append(tools, jobs.Tool(t))
	}
	args["tools"] = tools
	return words.P("desk.job_takes", args)
}

// jobNeed tells seed, plants or sets and whether they are on hand.
func jobNeed(need *jobs.Need) words.Phrase {
	key := "desk.job_need_" + need.Form
	switch {
	case need.Enough:
		key += "_had"
	case need.Lot != "":
		key += "_some"
	}
	amount := need.Amount
	if need.Unit == "g" {
		amount = math.Max(leastSeedG, amount)
	}
	return words.P(key, words.Args{"amount": amount})
}

// leastSeedG is the least seed that is told: nobody weighs less [g].
const leastSeedG = 0.1

// WorkTime tells minutes of work: to the minute under an hour, to five beyond.
func WorkTime(minutes float64) words.Phrase {
	if minutes = math.Round(minutes); minutes < 60 {
		return words.P("desk.work_minutes", words.Args{"n": math.Max(1, minutes)})
	}
	minutes = 5 * math.Round(minutes/5)
	hours := math.Floor(minutes / 60)
	if rest := minutes - 60*hours; rest > 0 {
		return words.P("desk.work_hours_minutes", words.Args{"n": hours, "minutes": rest})
	}
	return words.P("desk.work_hours", words.Args{"n": hours})
}
