package larder

import "garner/internal/cal"

// Want is what the household eats of a vegetable in a season.
type Want struct {
	ID               string
	Vegetable        string
	Group            string       // in place of a vegetable: any of the group's members
	KgPerWeek        float64      // of the whole household [kg/week]
	PortionsPerEater float64      // the same told in portions of each eater [1/week]; 0: told by weight
	From, To         cal.MonthDay // both inclusive; may cross the new year; zero: all year
	Importance       Importance
	BuyKgPerWeek     float64 // of what lacks may be bought so much [kg/week]
}

// Store is a place where food keeps.
type Store struct {
	ID         string
	Name       string
	Method     string  // a method of the book: damp sand, cool shed, hung, nets, cured, clamp, fridge, frozen, dried, bottled, fermented, ripened indoors
	WinterC    float64 // mean temperature of its coldest month [C]
	SummerC    float64 // mean temperature of its warmest month [C]
	CapacityKg float64 // what it holds, told in one of three ways; 0: in another
	Litres     float64 // of room
	Jars       float64 // of half a litre
	Place      string  // shed, cellar, fridge, freezer, string, clamp, indoors; empty: not told
	Humidity   Humidity
}

// Batch is food put into a store before the table begins.
type Batch struct {
	ID       string
	Store    string
	Crop     string
	Use      string
	Kg       float64
	Stored   cal.Date
	Planting string // may be empty
}

// Supply is what one planting can give under one future.
//
// Standing crops wait in the ground: Standing[i] is the weight of the whole
// planting, were none of it taken before, on First+i; taking a share of it on
// one day leaves the rest to go on. Flowing crops (picked over, cut again) give
// Flow[i] kg newly ready on First+i, which stay good on the plant for HoldDays.
// At most one of the two is set.
type Supply struct {
	Planting  string
	Vegetable string
	Crop, Use string
	First     cal.Date
	Standing  []float32
	Flow      []float32
	HoldDays  int
	Lift      bool   // what still stands at the end is lifted (roots, bulbs, tubers, squash), not lost
	Store     string // store for what is lifted, or for what is not eaten in time; empty: none
	Booked    bool   // what is left of it at its end lies in a store already, as a batch
	// StoreFrom is the day from which it goes to its store: what would have gone
	// there before lies there as a batch, or never did. The zero date: always.
	StoreFrom cal.Date
}

// End returns the first day on which nothing is given any more.
func (s *Supply) End() cal.Date {
	return s.First + cal.Date(max(len(s.Standing), len(s.Flow)))
}
