package programme

import "garner/internal/cal"

// Problem is one planning problem. It is not changed once it is made.
type Problem struct {
	Name    string
	From    cal.Date // Monday of week 0
	Weeks   int      // > 0
	Futures []int    // numbers of the table's futures that it holds, each of equal weight

	Grounds   []Ground
	Resources []Resource
	Demands   []Demand
	Sowings   []Sowing
	Limits    []Limit
}

// Ground is a class of units of ground that are alike in everything the problem
// knows: size, light, warmth, and the span in which they are free.
type Ground struct {
	ID          string
	UnitM2      float64  // ground of one unit [m2], > 0
	Units       int      // >= 0
	First, Last int      // weeks in which they are free, both inclusive
	Beds        []string // the beds they lie in
}

// Resource is something else than ground that sowings use up by the week: hours,
// room in a store, room for raising plants, jars.
type Resource struct {
	ID      string
	Unit    string
	PerWeek []float64 // what there is in each week, >= 0
}

// Demand is a vegetable, or vegetables that stand in for each other, at the table.
type Demand struct {
	ID       string
	Levels   []Level // the dearest first
	OverCost float64 // of what goes over [1/kg], >= 0
	Fixed    [][]Lot // by future: what comes without any sowing: what stands and what is stored
}

// Level is a part of what is wanted.
type Level struct {
	PerWeek []float64 // [kg], >= 0
	Cost    float64   // of what lacks [1/kg], >= 0 and not above the level before
}

// Lot is food that is good from a first week to a last one, both inclusive. A
// last week of Problem.Weeks says that it outlasts the problem: what is left of it
// then is not over.
type Lot struct {
	First, Last int
	Kg          float64
}

// Sowing is a column: a crop, on a class of ground, started in one way in one week.
type Sowing struct {
	ID          string
	Ground      int
	First, Last int // weeks in which it holds its ground, both inclusive
	Demand      int
	Lots        [][]Lot // by future, for one unit
	Uses        []Use   // for one unit
	Cost        float64 // of one unit: work, seed [the objective's unit], >= 0
	Most        int     // units at most, >= 0
}

// Use is what one unit of a sowing takes of a resource in a week.
type Use struct {
	Resource, Week int
	Amount         float64 // >= 0
}

// Limit holds a weighted sum of units down: rotation in a class of ground, or a
// wish of the grower's.
type Limit struct {
	ID    string
	Terms []Term
	Most  float64
}

// Term is a sowing's part in a limit.
type Term struct {
	Sowing int
	Weight float64 // > 0
}

// Solution is how many units of each sowing are taken.
type Solution []int
