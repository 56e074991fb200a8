// Package plan holds what the grower means to do: plantings that belong to a
// plan, and drafts, which are lists of changes over a plan.
package plan

import "garner/internal/cal"

// Method is how a planting starts. The list is closed and documented.
type Method string

// The ways to start a planting.
const (
	Seed    Method = "seed"    // sown where it grows
	Plant   Method = "plant"   // raised elsewhere, then planted out
	Set     Method = "set"     // set, clove or tuber in the ground
	Crown   Method = "crown"   // dormant perennial crown, cane or tree
	Cutting Method = "cutting" // cutting or runner
)

// Relation is how a planting stands to another one on the same ground.
type Relation string

// The relations.
const (
	Alone   Relation = ""
	Under   Relation = "under"
	Between Relation = "between"
	After   Relation = "after"
	Moved   Relation = "moved" // it is the other, lifted and set here
)

// Stock is where the planting stock of a planting comes from.
type Stock string

// The kinds of planting stock.
const (
	BoughtStock Stock = ""    // bought, or raised
	OwnStock    Stock = "own" // sets, cloves, tubers or dry seed held back from the own store
)

// Plan is a set of plantings. A plan with a base is a draft over it.
type Plan struct {
	ID   string
	Name string
	Base string // plan this is a draft over; empty for a plan of its own
}

// Planting is what is on the ground, whether sown, set, planted out or a crown.
// All dates here are planned; what happened is in the records.
type Planting struct {
	ID       string
	Plan     string
	Bed      string
	Crop     string   // id in the crop book
	Use      string   // use of the crop; empty: its commonest
	Variety  string   // id of a variety of the holding; empty: as the crop
	Method   Method   // empty: the crop's commonest
	Date     cal.Date // the day it goes into this ground
	AreaM2   float64  // ground it holds [m2]
	Relation Relation
	To       string   // planting it stands under, between or after
	ClearBy  cal.Date // day the ground must be free; None: when it is over
	Store    string   // store that takes what is lifted or not eaten; empty: none
	YearsOld float64  // age of a perennial on Date [years]; 0 when newly planted

	// What is known only roughly widens the band of the table.
	DateWithinD int     // Date may be this many days off either way [d]
	AreaWithin  float64 // AreaM2 may be off by this share of it either way, 0-0.9

	InRowM      float64  // plants apart in the row [m]; 0: as the crop book
	BetweenRowM float64  // rows apart [m]; 0: as the crop book
	StripOn     cal.Date // day its lower leaves are taken off; None: they stay
	StripShare  float64  // share of its leaf taken off then, 0-0.9

	Stock      Stock
	SeedPlants float64 // plants of it left for seed, which are not eaten
}

// Change is one step of a draft over its base plan.
type Change struct {
	ID       string
	Plan     string // the draft
	Order    int
	Action   string // add, set, remove
	Planting string // id of the planting changed
	Field    string // column of plantings.csv, for set
	Value    string // new value for set; for add a list field=value;field=value
}

// New returns a planting of a plan with no dates set.
func New(id, planID string) Planting {
	return Planting{ID: id, Plan: planID, Date: cal.None, ClearBy: cal.None, StripOn: cal.None}
}
