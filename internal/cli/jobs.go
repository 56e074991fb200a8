package cli

import (
	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/words"
)

// jobsCommand tells what is to be done.
type jobsCommand struct {
	Week   bool
	Days   string `placeholder:"N"`
	Hours  string `placeholder:"H"`
	People string `placeholder:"N"`
	Who    string `placeholder:"WHO"`
	Costs  bool
	ICS    bool   `name:"ics"`
	Years  string `placeholder:"N"`
	Seed   string `placeholder:"S"`
	holdingFlags
	JSON bool `name:"json"`
}

// The usual days of a calendar file, and the most of any list: as far as a table
// reaches.
const (
	calendarDays = 70
	mostJobDays  = 540
	mostPeople   = 9
)

// Run asks the desk for the jobs and shows them.
func (c *jobsCommand) Run(a *App) error {
	var f flags
	usual := 0
	if c.ICS {
		usual = calendarDays
	}
	if c.Week {
		usual = 7
		if c.Days != "" {
			f.refuse(fault.Invalid, words.P("cli.jobs_both", nil))
		}
	}
	options := desk.JobsOptions{Days: f.whole("--days", c.Days, 1, mostJobDays, usual), Hours: f.workHours(c.Hours),
		People: f.whole("--people", c.People, 1, mostPeople, 1), Who: f.oneOf("--who", c.Who, []string{"child", "newcomer"}), Costs: c.Costs,
		Years: f.whole("--years", c.Years, 1, maxYears, 0), Seed: f.seed(c.Seed)}
	v, err := ask(a, c.holdingFlags, &f, func(h *holding.Holding, progress reporter) (*desk.JobsView, error) {
		options.Progress = progress
		return desk.Jobs(h, options)
	})
	switch {
	case err != nil:
		return err
	case c.ICS:
		return desk.WriteCalendar(a.Stdout, v, a.Words)
	case c.JSON:
		return a.json(a.jobsAnswer(v))
	}
	a.showJobs(v)
	return nil
}

// workHours reads hours of work; nothing gives 0.
func (f *flags) workHours(given string) float64 {
	if given == "" {
		return 0
	}
	h, ok := decimal(given)
	if !ok || h <= 0 || h > 168 {
		f.refuse(fault.OutOfRange, words.P("cli.jobs_hours", words.Args{"given": given}))
	}
	return h
}

// jobsAnswer is the JSON of the jobs.
type jobsAnswer struct {
	Holding  string     `json:"holding"`
	Today    cal.Date   `json:"today"`
	Last     cal.Date   `json:"last"`
	Years    int        `json:"years"`
	Minutes  float64    `json:"minutes"`
	Pressing []string   `json:"pressing"`
	People   []jobShare `json:"people"`
	Dropped  []jobRow   `json:"dropped"`
	Past     []jobsPast `json:"past"` // asked whether they were done
}

// jobsPast is work of one kind whose days went by without a word.
type jobsPast struct {
	Work string   `json:"work"`
	Jobs []jobRow `json:"jobs"`
}

type jobShare struct {
	Minutes float64  `json:"minutes"`
	WalkM   float64  `json:"walk_m"`
	Jobs    []jobRow `json:"jobs"`
}

// jobRow is one job as the JSON shows it.
type jobRow struct {
	ID       string    `json:"id"`
	Kind     string    `json:"kind"`
	Site     string    `json:"site"`
	Place    string    `json:"place"`
	Bed      string    `json:"bed"`
	Store    string    `json:"store"`
	Planting string    `json:"planting"`
	Title    string    `json:"title"`
	Why      string    `json:"why"`
	First    cal.Date  `json:"first"`
	Best     cal.Date  `json:"best"`
	Last     cal.Date  `json:"last"`
	PutOff   *cal.Date `json:"put_off"`
	Odds     float64   `json:"odds"`
	AreaM2   float64   `json:"area_m2"`
	RowM     float64   `json:"row_m"`
	Plants   float64   `json:"plants"`
	Kg       float64   `json:"kg"`
	Litres   float64   `json:"litres"`
	SeedG    float64   `json:"seed_g"`
	Minutes  float64   `json:"minutes"`
	Tools    []string  `json:"tools"`
	Who      string    `json:"who"`
	SpoilKg  float64   `json:"spoil_kg"`
	CostKg   *float64  `json:"put_off_kg"` // null: not weighed
	Ask      bool      `json:"ask_to_drop"`
	Notes    []string  `json:"notes"` // what moved it, and what goes with it
}

func (a *App) jobsAnswer(v *desk.JobsView) jobsAnswer {
	r := jobsAnswer{Holding: v.Household, Today: v.Today, Last: v.Last, Years: v.Years, Minutes: v.Minutes, Pressing: append([]string{}, v.Pressing...),
		People: []jobShare{}, Dropped: []jobRow{}, Past: []jobsPast{}}
	for _, s := range v.Shares {
		share := jobShare{Minutes: s.Minutes, WalkM: s.WalkM, Jobs: []jobRow{}}
		for _, l := range s.Lines() {
			share.Jobs = append(share.Jobs, a.jobRow(&l))
		}
		r.People = append(r.People, share)
	}
	for i := range v.Dropped {
		r.Dropped = append(r.Dropped, a.jobRow(&v.Dropped[i]))
	}
	for i := range v.Past {
		p := jobsPast{Work: v.Past[i].Work, Jobs: []jobRow{}}
		for _, j := range v.Past[i].Jobs {
			p.Jobs = append(p.Jobs, a.jobRow(&desk.JobLine{Job: j.Job, Place: j.Place}))
		}
		r.Past = append(r.Past, p)
	}
	return r
}

func (a *App) jobRow(l *desk.JobLine) jobRow {
	row := jobRow{ID: l.ID, Kind: string(l.Kind), Site: l.Stop.Site, Place: a.Words.Text(l.Place), Bed: l.Stop.Bed, Store: l.Store, Planting: l.Planting,
		Title: a.Words.Text(l.Title), Why: a.Words.Text(l.Why), First: l.First, Best: l.Best, Last: l.Last, PutOff: dated(l.PutOff), Odds: l.Odds,
		AreaM2: l.Amount.M2, RowM: l.Amount.RowM, Plants: l.Amount.Plants, Kg: l.Amount.Kg, Litres: l.Amount.Litres, SeedG: l.Amount.SeedG,
		Minutes: l.Minutes, Tools: append([]string{}, l.Tools...), Who: string(l.Who), SpoilKg: l.SpoilKg, Ask: l.Ask, Notes: []string{}}
	for _, n := range l.Notes {
		row.Notes = append(row.Notes, a.Words.Text(n))
	}
	if l.Weighed {
		row.CostKg = &l.CostKg
	}
	return row
}
