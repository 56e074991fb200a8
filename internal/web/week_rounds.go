package web

import (
	"strconv"
	"strings"

	"garner/internal/desk"
	"garner/internal/draw"
	"garner/internal/record"
	"garner/internal/words"
)

// round is work of one kind at several places: one line, with a tick for all, over its
// jobs with a tick each.
func (w *weekWriter) round(l *desk.JobLine) (weekJob, error) {
	entry, err := w.entry()
	if err != nil {
		return weekJob{}, err
	}
	why := l.Reason(w.words.Text)
	key := jobKey(l.ID)
	if w.who > 0 { // each of two may have a share of it
		key += "-" + strconv.Itoa(w.who+1)
	}
	j := weekJob{Key: key, ID: l.ID, Title: w.sentence(l.Title), Place: w.words.Text(l.Place), Why: why, Brief: true}
	j.Hidden = append([]hiddenField{{"entry", entry}, {"stop", w.at}}, w.ask.Keep...)
	if l.When.Key != "" {
		j.Says = append(j.Says, w.sentence(sharpened(l.When, w.view.Today)))
	}
	j.Says = append(j.Says, w.sentence(l.Takes))
	if care := l.Care(); care.Key != "" {
		j.Says = append(j.Says, w.sentence(care))
	}
	j.Wait = draw.Wait(w.days, draw.Waiting{First: l.First, Best: l.Due(w.view.Today), Last: l.Last})
	for i := range l.Parts {
		part, err := w.part(l, &l.Parts[i], why == "" && l.TellsWhy())
		if err != nil {
			return weekJob{}, err
		}
		j.First = j.First || part.First
		j.Brief = j.Brief && len(part.Says) == 0 && part.Litres == "" && !part.Ask
		j.Open = j.Open || part.Open
		j.Parts = append(j.Parts, part)
		j.Hidden = append(j.Hidden, hiddenField{"job", part.ID})
	}
	j.Places = places(j.Parts)
	return j, nil
}

// places tells the jobs of a round in one line.
func places(parts []weekJob) string {
	var told []string
	for i := range parts {
		p := parts[i].Part
		if parts[i].Stop != "" {
			p = parts[i].Stop + ": " + p
		}
		told = append(told, p)
	}
	return strings.Join(told, "; ") + "."
}

// part is one job of a round.
func (w *weekWriter) part(round, l *desk.JobLine, tellsWhy bool) (weekJob, error) {
	j, err := w.job(l)
	if err != nil {
		return j, err
	}
	j.Says = nil
	if tellsWhy {
		j.Says = append(j.Says, j.Why)
	}
	if again := w.again(l.Again); again != "" {
		j.Says = append(j.Says, again)
	}
	for _, s := range l.Singular() {
		if s.Key != "desk.job_ask" {
			j.Says = append(j.Says, w.sentence(sharpened(s, w.view.Today)))
		}
	}
	args := words.Args{"part": l.Part, "days": sharpened(l.Short, w.view.Today)}
	switch j.Part, j.Of = w.say("web.week_part", args), true; {
	case round.When.Key != "":
		j.Part = w.words.Text(l.Part)
	case j.Litres != "":
		j.Part = w.words.Text(args["days"].(words.Phrase)) // the litres stand beside it
	}
	if l.Stop != round.Stop {
		j.Stop = w.words.Text(l.Place)
		if l.Stop.Bed != "" {
			j.Path = bedPath(l.Stop.Bed)
		}
	}
	return j, nil
}

// weekPast is work of one kind of which nobody said whether it was done.
type weekPast struct {
	Title  string
	Hidden []hiddenField
	Jobs   []pastLine
}

// pastLine is one job of it.
type pastLine struct {
	Title, Place, Was string
	Hidden            []hiddenField
}

func (w *weekWriter) past(p *desk.PastWork) (weekPast, error) {
	out := weekPast{Title: w.say("web.week_past_work", words.Args{"title": p.Title})}
	var ids []hiddenField
	for i := range p.Jobs {
		j := &p.Jobs[i]
		line := pastLine{Title: w.sentence(j.Title), Place: w.words.Text(j.Place), Was: w.words.Text(j.Was)}
		id := hiddenField{"job", j.ID}
		ids = append(ids, id)
		var err error
		if line.Hidden, err = w.pastHidden(id); err != nil {
			return out, err
		}
		out.Jobs = append(out.Jobs, line)
	}
	var err error
	out.Hidden, err = w.pastHidden(ids...)
	return out, err
}

// pastHidden are the fields of a form that answers some jobs whose days are past.
func (w *weekWriter) pastHidden(ids ...hiddenField) ([]hiddenField, error) {
	entry, err := w.entry()
	if err != nil {
		return nil, err
	}
	return append(append([]hiddenField{{"entry", entry}, {"past", "yes"}, {"stop", "past"}}, w.ask.Keep...), ids...), nil
}

// jobsAnswered keeps one answer for several jobs.
func jobsAnswered(v *visit) error {
	ask := v.weekAsked(v.field)
	a := desk.JobsAnswer{Jobs: v.r.PostForm["job"], Did: record.Did(strings.TrimSpace(v.field("did"))), OnDay: v.field("past") != ""}
	kept, err := v.office.AnswerJobs(v.author(), a)
	if faults := listOf(err); faults != nil {
		return v.showWeek(ask, jobTyped{faults: faults})
	}
	if err != nil {
		return err
	}
	path := ask.Path()
	if stop := v.field("stop"); stop != "" {
		path += "#" + pathEscaped(stop)
	}
	v.kept(kept, path)
	return nil
}
