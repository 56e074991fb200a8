package web

import (
	"strconv"
	"strings"

	"garner/internal/desk"
	"garner/internal/draw"
	"garner/internal/words"
)

// weekJob is one job with the forms that answer it.
type weekJob struct {
	Key     string // of its ids on the page
	ID      string
	Title   string
	Place   string
	First   bool // one of those for half an hour
	Why     string
	Says    []string
	Wait    string // drawing: how long it can wait
	Litres  string
	LitreOf string // drawing
	Cans    string
	Ask     bool // skipped twice: drop it?
	Cost    string
	Open    bool
	Hidden  []hiddenField
	Done    []fieldBody
	Off     []fieldBody
	Faults  []words.Phrase // of no field
	Wrong   bool
	Parts   []weekJob // of a round
	Brief   bool      // of a round whose jobs have no more than a few words each: they stand in one line
	Places  string    // that line
	Of      bool      // it is one of a round
	Part    string    // what there is of it at its place, with its days
	Stop    string    // of one of a round: its place, where that is not the round's
	Path    string    // of the place
}

// weekWriter puts the week into words and drawings.
type weekWriter struct {
	*visit
	view       *desk.WeekView
	ask        weekAsk
	typed      jobTyped
	mostLitres float64
	days       draw.Scale
	at         string // id of the stop that is being written
	who        int    // whose sheet it is, from 0
}

// Widths of what is drawn beside a job [px].
const (
	waitWidth  = 168.0
	litreWidth = 112.0
)

func (w *weekWriter) sheets() ([]weekSheet, error) {
	var out []weekSheet
	for i := range w.view.Shares {
		s := &w.view.Shares[i]
		sheet := weekSheet{Sum: w.say("web.week_sheet_sum", words.Args{"n": s.Count(), "work": desk.WorkTime(s.Minutes)})}
		if len(w.view.Shares) > 1 {
			sheet.Title = w.say("web.week_sheet", words.Args{"who": i + 1, "people": len(w.view.Shares)})
		}
		for k := range s.Legs {
			stop, err := w.stop(&s.Legs[k], i, k == 0)
			if err != nil {
				return nil, err
			}
			if k > 0 && s.Legs[k-1].Bed != "" && s.Legs[k-1].Site == s.Legs[k].Site {
				stop.Site = "" // told at its first bed
			}
			sheet.Stops = append(sheet.Stops, stop)
		}
		if len(sheet.Stops) > 0 {
			sheet.Stops[0].Axis = draw.WaitAxis(w.days, w.words.Format().Day)
		}
		out = append(out, sheet)
	}
	return out, nil
}

// stop is a stop on somebody's way; two may be sent to the same bed.
func (w *weekWriter) stop(l *desk.JobLeg, who int, first bool) (weekStop, error) {
	w.who = who
	s := weekStop{First: first, Name: w.sentence(l.Place)}
	switch {
	case l.Bed != "":
		s.Path, s.ID, s.Site = bedPath(l.Bed), "stop-bed-"+l.Bed, l.Site
	case l.Store != "":
		s.Path, s.ID = storePath(l.Store), "stop-store-"+l.Store
	default:
		s.ID = "stop-site-" + jobKey(l.Site) + "-" + jobKey(w.words.Text(l.Place))
	}
	if who > 0 {
		s.ID += "-" + strconv.Itoa(who+1)
	}
	if l.WalkM > 0 {
		s.Walk = w.say("web.week_walk", words.Args{"m": l.WalkM})
	}
	w.at = s.ID
	for i := range l.Jobs {
		j, err := w.job(&l.Jobs[i])
		if err != nil {
			return s, err
		}
		s.Jobs = append(s.Jobs, j)
	}
	return s, nil
}

// jobKey makes an id of a page from a job's id, which may hold colons.
func jobKey(id string) string { return strings.NewReplacer(":", "_", " ", "_").Replace(id) }

// mostAgain is how many further turns of a job are told by their day.
const mostAgain = 3

func (w *weekWriter) job(l *desk.JobLine) (weekJob, error) {
	if len(l.Parts) > 0 {
		return w.round(l)
	}
	j := weekJob{Key: jobKey(l.ID), ID: l.ID, Title: w.sentence(l.Title), Place: w.words.Text(l.Place), First: w.view.First[l.ID], Why: w.sentence(sharpened(l.Why, w.view.Today)), Ask: l.Ask}
	j.Says = append(j.Says, w.sentence(sharpened(l.When, w.view.Today)))
	if again := w.again(l.Again); again != "" {
		j.Says = append(j.Says, again)
	}
	j.Says = append(j.Says, w.sentence(l.Takes))
	if care := l.Care(); care.Key != "" {
		j.Says = append(j.Says, w.sentence(care))
	}
	for _, s := range l.Says {
		if s.Key != "desk.job_ask" && s.Key != "desk.job_child" { // asked below; most of the jobs are so
			j.Says = append(j.Says, w.sentence(sharpened(s, w.view.Today)))
		}
	}
	j.Wait = draw.Wait(w.days, draw.Waiting{First: l.First, Best: l.Due(w.view.Today), Last: l.Last})
	if litres := l.WaterL(); litres > 0 {
		j.Litres = w.words.Format().Litres(litres)
		j.LitreOf = draw.Litres(litres, w.mostLitres, litreWidth)
		j.Cans = w.say("web.week_cans", words.Args{"cans": w.view.Cans(litres)})
	}
	return j, w.forms(&j, l)
}

// again tells the further turns of a job.
func (w *weekWriter) again(turns []desk.JobLine) string {
	if len(turns) == 0 {
		return ""
	}
	var days []words.Phrase
	for i := range turns[:min(mostAgain, len(turns))] {
		days = append(days, words.Sharp(turns[i].Best, w.view.Today))
	}
	if more := len(turns) - len(days); more > 0 {
		return w.say("web.week_again_more", words.Args{"days": days, "n": more})
	}
	return w.say("web.week_again", words.Args{"days": days})
}
