package jobs

import (
	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/words"
)

// Job is one piece of work.
type Job struct {
	ID     string // stays the same from one computation to the next
	Series string // the same for all turns of what comes again
	Turn   int    // of what comes again: its number, or its year; 0: it comes once
	Kind   Kind
	Rule   string // of the data; empty: it comes from the plan

	Stop     Stop
	Planting string // id; empty: none
	Cover    string // id of a cover spell
	Store    string // id of a store

	Title  words.Phrase
	Why    words.Phrase
	Amount Amount
	Needs  []Need

	First, Best, Last cal.Date // first day, best day, last sensible day
	Forecast          bool     // the best day is the middle of what the futures say
	Odds              float64  // of its ever coming to it, 0-1; 1: it is of the plan

	Minutes float64
	Tools   []string // ids of data/tools.csv
	Who     Who      // who can do it at the least

	Lay     cover.Kind // the cover to be laid for the night, of those that are owned and free; empty: none
	Unowned bool       // none of the covers that are owned is free, fits and helps

	SpoilKg float64 // of a pick: what would spoil were it put off by a week [kg]
	CostKg  float64 // what is short more at the table were it put off by a week [kg]
	Weighed bool    // CostKg was worked out

	Reckoned bool           // the last day was worked out for this crop and place
	Season   bool           // any day of its season will do: it is not overdue while that lasts
	Notes    []words.Phrase // what moved it, and what goes with it

	PutOff cal.Date // the day it was put off to; None: it was not
	Ask    bool     // skipped twice: ask whether to drop it

	Part  words.Phrase // what there is of it at its place, of one that may be of a round
	Round bool         // work of its kind is done at all its places in one go

	asked string // the work under which it is asked after; empty: it is not
	again bool   // it comes again, so that a turn that went by is no question
	rank  int    // of its kind, in the order in which work is done at one place
	name  string // of what its title tells
	byRow bool   // its minutes go by the metres of row
}

// Overdue tells whether a job's best day lies behind; where any day of a season will do,
// whether the season does.
func (j *Job) Overdue(today cal.Date) bool {
	return j.Best < today && !(j.Season && today <= j.Last)
}

// Due is the day on which a job is to be done, seen from today.
func (j *Job) Due(today cal.Date) cal.Date { return max(j.Best, today) }

// PutOffKg is what it costs to put a job off by a week, as far as it is known [kg].
func (j *Job) PutOffKg() float64 {
	if j.Weighed {
		return max(0, j.CostKg)
	}
	return j.SpoilKg
}

// Amount is how much of it there is; what does not apply is 0.
type Amount struct {
	M2     float64
	RowM   float64 // metres of row
	Plants float64 // whole plants, cells, sets or tubers
	Kg     float64
	Litres float64
	SeedG  float64
	Trees  float64
}

// Need is seed, plants or stock that a job takes.
type Need struct {
	Form   string // seed, plants, sets
	Amount float64
	Unit   string // g, plants, kg
	Lot    string // id of what is on hand of it; empty: nothing is
	Enough bool   // what is on hand is enough
}

// The parts of a site at which work is done, in the order in which they are walked.
const (
	AtStore   = iota // where food is kept
	AtIndoors        // where plants are raised
	AtSite           // the site as a whole: heap, shed
	AtBed
)

// Stop is a place on the walking route.
type Stop struct {
	Site  string
	Part  int    // AtStore, AtIndoors, AtSite, AtBed
	Bed   string // of AtBed
	Store string // of AtStore
	Order int    // of the bed on the walking route
	site  int    // place of the site in the holding
}
