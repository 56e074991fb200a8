package desk

import (
	"garner/internal/jobs"
	"garner/internal/num"
	"garner/internal/words"
)

// WeekView is the page of the week: the jobs along the way, what comes first, and what
// was answered today.
type WeekView struct {
	*JobsView
	Lead     []words.Phrase  // dates to be sharpened
	First    map[string]bool // ids of the jobs for half an hour, where there is more to do
	Litres   float64         // of all waterings [L]
	CanL     float64         // what a watering can holds [L]
	Answered []AnsweredJob   // of today, in the order in which they were said
}

// Half an hour is the time that the page always reckons with [min].
const halfAnHour = 30

// WeekView tells what is to be done, as the page shows it.
func (o *Office) WeekView(ask JobsOptions) (*WeekView, error) {
	a, err := o.askKnown()
	if err != nil {
		return nil, err
	}
	key := weekKey(a, ask)
	if known, ok := o.views.jobWeeks.get(key); ok {
		return known, nil
	}
	told, err := o.JobsView(ask)
	if err != nil {
		return nil, err
	}
	w := &WeekView{JobsView: told, CanL: usualCanL}
	if a.holding.CanL > 0 {
		w.CanL = a.holding.CanL
	}
	if w.Answered, err = o.answeredToday(a); err != nil {
		return nil, err
	}
	w.halfHour()
	w.water()
	w.lead(ask)
	o.views.jobWeeks.keep(key, w)
	return w, nil
}

// weekKey names the week that a holding has under what was asked.
func weekKey(a *asked, ask JobsOptions) num.Digest {
	d := a.answer("week of jobs")
	d.Int(int64(ask.Days))
	d.Int(int64(ask.People))
	d.Float(ask.Hours)
	d.Text(ask.Who)
	if ask.Costs {
		d.Text("costs")
	}
	return d.Sum()
}

// halfHour picks what is done first when there is no more than half an hour.
func (w *WeekView) halfHour() {
	var all []jobs.Job
	for _, l := range w.firstTurns() {
		all = append(all, l.Job)
	}
	if jobs.Minutes(all) <= halfAnHour {
		return
	}
	w.First = map[string]bool{}
	for _, j := range jobs.To(all, halfAnHour).Jobs {
		w.First[j.ID] = true
	}
}

// firstTurns are all jobs that are told, each once however often it comes.
func (w *WeekView) firstTurns() []JobLine {
	var out []JobLine
	for _, s := range w.Shares {
		for _, l := range s.Legs {
			for i := range l.Jobs {
				out = append(out, l.Jobs[i].Singly()...)
			}
		}
	}
	return out
}

// water adds up the litres.
func (w *WeekView) water() {
	for _, l := range w.Lines() {
		w.Litres += l.WaterL()
	}
}

// WaterL are the litres of a watering [L]; 0 for any other job.
func (l *JobLine) WaterL() float64 {
	if l.Kind != jobs.Water {
		return 0
	}
	return l.Amount.Litres
}

// Cans are so many litres in cans, to the half and no less.
func (w *WeekView) Cans(litres float64) float64 { return CansOf(litres, w.CanL) }

// lead speaks of how much there is, of what comes first and of what was left out.
func (w *WeekView) lead(ask JobsOptions) {
	args := words.Args{"n": w.Count, "work": WorkTime(w.Minutes), "last": w.Last}
	if w.Count == 0 && len(w.Dropped) == 0 {
		w.Lead = append(w.Lead, words.P("desk.week_none", args))
		return
	}
	w.Lead = append(w.Lead, words.P("desk.week_lead", args))
	if n := len(w.First); n > 0 {
		w.Lead = append(w.Lead, words.P("desk.week_half_hour", words.Args{"n": n}))
	}
	if len(w.Dropped) > 0 {
		w.Lead = append(w.Lead, words.P("desk.week_dropped", words.Args{"n": len(w.Dropped), "work": WorkTime(w.DroppedMin)}))
	}
	if d := w.dearest(); d != nil && ask.Costs {
		w.Lead = append(w.Lead, words.P("desk.week_dearest", words.Args{"title": d.Title, "place": d.Place, "kg": d.PutOffKg()}))
	}
}

// dearest is the job that costs most at the table to put off; nil: none costs anything.
func (w *WeekView) dearest() *JobLine {
	var found *JobLine
	all := w.Lines()
	for i := range all {
		l := &all[i]
		if l.Weighed && l.PutOffKg() >= worthTelling && (found == nil || l.PutOffKg() > found.PutOffKg()) {
			found = l
		}
	}
	return found
}
