package draft

import (
	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/outlook"
	"garner/internal/plan"
	"garner/internal/programme"
	"garner/internal/space"
	"garner/internal/words"
)

// Futures is how many of the table's futures a problem holds when nothing else is
// asked. judgement: enough to tell a late spring and a hard winter from the mean,
// few enough that a problem is solved while one waits.
const Futures = 4

// Setting is what a draft is asked for. Years is the number of futures it holds.
type Setting struct {
	outlook.Setting
	Wishes []Wish
}

// Draft is a planning problem with what its numbers mean.
type Draft struct {
	Problem *programme.Problem
	Columns []Column        // by sowing of the problem
	Classes []Class         // by ground of the problem
	Kept    []plan.Planting // what the draft leaves as it is
	Notes   []words.Phrase  // what could not be had, and why

	setting Setting
	present []plan.Planting // the plan as it stands
	ground  *space.Ground   // as what is kept takes it
	demands map[string]int  // by vegetable
}

// Column is what a sowing of the problem is.
type Column struct {
	Crop   *crop.Crop
	Use    *crop.Use
	Method plan.Method
	Date   cal.Date    // the day it goes into the ground
	Clear  cal.Date    // the day its ground must be free, before the turn-round
	Store  string      // takes what is lifted or not eaten in time; empty: none
	Odds   float64     // of a usable crop, 0-1
	Under  cover.Spell // the cover it stands under for a time; no kind: none beside those that lie as planned

	OwnStock bool // planted from the household's own store, as the plan does with its use
}

// Class is ground of the problem, unit by unit.
type Class struct {
	UnitM2 float64
	Pieces []Piece

	kind  int // of its ground, for profiles
	turn  int // days from clearing until it can be sown again
	bars  *bars
	sheet sheet // when it may be covered, and with what
}

// Piece is units of one bed that lie side by side.
type Piece struct {
	Bed   string
	Units int
}

// monday is the first day of a week of the problem.
func (d *Draft) monday(week int) cal.Date { return d.setting.From + cal.Date(7*week) }
