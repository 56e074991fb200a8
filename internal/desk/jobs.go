package desk

import (
	"garner/internal/cal"
	"garner/internal/holding"
	"garner/internal/jobs"
	"garner/internal/num"
	"garner/internal/outlook"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/watering"
	"garner/internal/window"
	"garner/internal/words"
)

// JobsOptions say which jobs are asked for.
type JobsOptions struct {
	Days     int     // from today on; 0: a week
	Hours    float64 // there are for them; 0: not limited
	People   int     // that share them; 0: one
	Who      string  // can do them: child, newcomer; empty: anyone
	Costs    bool    // weigh what it costs to put each off
	Years    int     // futures; 0: as the outlook
	Seed     uint64
	Progress func(done, total int) // may be nil
}

// aWeekOfJobs is the time for which jobs are told unless said otherwise [d].
const aWeekOfJobs = 7

// JobsView is what is to be done, along the way.
type JobsView struct {
	ID, Household string
	Today, Last   cal.Date // first and last day
	Years         int
	Shares        []JobShare // one for each who does them
	Count         int
	Minutes       float64
	LimitMinutes  float64 // that there are; 0: not limited
	Dropped       []JobLine
	DroppedMin    float64
	Untold        []string // names of sites of which no weather is known: nothing is told of their beds
	Pressing      []string // ids of those that cost most to put off, the dearest first
	Past          []PastWork
}

// JobShare is the work of one person.
type JobShare struct {
	Minutes float64
	WalkM   float64 // between beds that are drawn
	Legs    []JobLeg
}

// JobLeg is a place on the way with its jobs.
type JobLeg struct {
	Place words.Phrase
	Site  string // name
	Bed   string // id; empty: no bed
	Store string // id; empty: no store
	WalkM float64
	Jobs  []JobLine
}

// JobLine is one job with what there is to say of it.
type JobLine struct {
	jobs.Job
	Place words.Phrase
	When  words.Phrase   // its day and its last sensible day; dates to be sharpened
	Short words.Phrase   // its days in few words, for one of a round; dates to be sharpened
	Takes words.Phrase   // minutes and tools
	Again []JobLine      // its further turns in the time asked for
	Parts []JobLine      // of a round: its jobs in the order of the way; the line sums them up
	Says  []words.Phrase // seed and plants, who can do it, what putting it off costs, the question whether to drop it
}

// mostPressing is how many jobs are named when there is time for few.
const mostPressing = 4

// Jobs tells what is to be done in a holding.
func Jobs(h *holding.Holding, o JobsOptions) (*JobsView, error) {
	h, without := withWeather(h)
	s, err := settingOf(h, OutlookOptions{Seed: o.Seed, Years: o.Years, Progress: o.Progress})
	if err != nil {
		return nil, err
	}
	if o.Days == 0 {
		o.Days = aWeekOfJobs
	}
	w, err := newWeekWork(h, s, o, s.Today+cal.Date(o.Days))
	if err != nil {
		return nil, err
	}
	w.without = without
	return w.view()
}

// newWeekWork gathers what jobs until a day are derived from, for a holding of which
// nothing is kept.
func newWeekWork(h *holding.Holding, s outlook.Setting, o JobsOptions, until cal.Date) (*weekWork, error) {
	w := &weekWork{asked: &asked{holding: h, setting: s}, ask: o, memory: memory(), lastDays: newRecent[num.Digest, []window.Window](mostBeds)}
	var err error
	if !o.weighs() {
		w.table, err = outlook.Ahead(s, w.memory, until+jobs.ForesightD)
	} else if w.scales, err = outlook.NewScales(s, w.memory); err == nil {
		w.table = w.scales.Table
	}
	if err != nil {
		return nil, err
	}
	w.thirst, _, err = watering.Of(s, w.memory, nil)
	return w, err
}

// weekWork is what jobs are derived from.
type weekWork struct {
	*asked
	ask      JobsOptions
	memory   *outlook.Memory
	table    *outlook.Table
	scales   *outlook.Scales // nil: putting off is not weighed
	thirst   []watering.Bed
	without  []place.Site // no weather of them is known
	lastDays *recent[num.Digest, []window.Window]
}

// derive derives the jobs from today until a day.
func (w *weekWork) derive(until cal.Date) ([]jobs.Job, error) {
	plantings, faults := plan.Resolve(w.holding.Plans, w.holding.Plantings, w.holding.Changes, w.holding.Plan)
	if len(faults) > 0 {
		return nil, faults
	}
	skies, err := skiesOf(w.setting, w.memory, until)
	if err != nil {
		return nil, err
	}
	now := w.setting.Today
	return jobs.Derive(jobs.Question{Holding: w.holding, Book: w.setting.Book, Table: w.table, Plantings: plantings, Today: now, Until: until,
		Water: watersOf(w.thirst, now, until), Skies: skies, LastDay: newLastDays(w.holding, w.setting.Book, w.lastDays).of})
}

// view derives the jobs, weighs them where there are scales, cuts them to the hours
// and shares them out.
func (w *weekWork) view() (*JobsView, error) {
	o := w.ask
	now := w.setting.Today
	all, err := w.derive(now + cal.Date(o.Days))
	if err != nil {
		return nil, err
	}
	if o.Who != "" {
		all = jobs.For(all, jobs.Who(o.Who))
	}
	all, past := jobs.Ask(all, now)
	if w.scales != nil {
		if err := jobs.Weigh(w.scales, all); err != nil {
			return nil, err
		}
	}
	var untold []string
	for _, s := range w.without {
		untold = append(untold, s.Name)
	}
	v := &JobsView{Untold: untold, ID: w.holding.ID, Household: w.holding.Name, Today: now, Last: now + cal.Date(o.Days) - 1, Years: w.table.Years, LimitMinutes: 60 * o.Hours}
	n := &jobNamer{namer: newNamer(w.asked), weighed: w.scales != nil}
	v.Past = n.past(past, v)
	if o.Hours > 0 {
		c := jobs.To(all, v.LimitMinutes*float64(max(1, o.People)))
		all, v.DroppedMin = c.Jobs, c.Over
		for i := range c.Dropped {
			v.Dropped = append(v.Dropped, n.line(&c.Dropped[i], v))
		}
	}
	v.Minutes = jobs.Minutes(all)
	for _, j := range jobs.Pressing(all, mostPressing) {
		v.Pressing = append(v.Pressing, j.ID)
	}
	for _, share := range jobs.Share(all, max(1, o.People)) {
		s := n.share(share, v)
		v.Shares, v.Count = append(v.Shares, s), v.Count+s.Count()
	}
	return v, nil
}

// Count is how many jobs one person has: a round is one, and so is what comes again.
func (s *JobShare) Count() int {
	n := 0
	for _, l := range s.Legs {
		n += len(l.Jobs)
	}
	return n
}

// Lines are all jobs that are told, in the order of the way; of a round its jobs.
func (v *JobsView) Lines() []JobLine {
	var out []JobLine
	for i := range v.Shares {
		out = append(out, v.Shares[i].Lines()...)
	}
	return out
}

// Lines are all jobs of one person, in the order of the way; of a round its jobs.
func (s *JobShare) Lines() []JobLine {
	var out []JobLine
	for _, l := range s.Legs {
		for i := range l.Jobs {
			for _, j := range l.Jobs[i].Singly() {
				out = append(append(out, j), j.Again...)
			}
		}
	}
	return out
}

// Singly are the jobs of a line: those of a round, or itself.
func (l *JobLine) Singly() []JobLine {
	if len(l.Parts) > 0 {
		return l.Parts
	}
	return []JobLine{*l}
}
