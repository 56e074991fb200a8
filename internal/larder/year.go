package larder

import "garner/internal/cal"

// Year is what came of one future. Its slices are reused by the next run.
type Year struct {
	Courses   []Course       // by Setting.Vegetables, then by Setting.Groups
	Stores    []StoreYear    // by Setting.Stores
	Batches   []BatchYear    // by Setting.Batches
	Plantings []PlantingYear // by Future.Supplies
	Claims    []ClaimYear    // by Setting.Claims
	Balance   Balance

	days   int
	groups int
	weeks  []float32 // room for the weeks of plantings and batches
}

// Course is a vegetable's table by day, counted from the table's first day [kg
// a day]. Fresh, Stored, Bought and Short add up to Want.
type Course struct {
	Want   []float32 // shared by all futures: read only
	Fresh  []float32 // eaten straight from the ground
	Stored []float32 // eaten from a store
	Bought []float32 // nil where nothing of it may be bought
	Short  []float32
	Over   []float32 // went over that day, from the ground; what spoils in store is not in here
}

// StoreYear is what went through a store [kg].
type StoreYear struct {
	LevelKg    []float32 // in it at the end of each day
	OpeningKg  float64
	PutKg      float64 // brought to it, before preparing
	EatenKg    float64
	PreparedKg float64 // lost on preparing and trimming
	DecayedKg  float64 // lost little by little
	SpoiledKg  float64 // lost at the end of its life
	SownKg     float64 // went into the ground as planting stock
	LeftKg     float64

	KitchenHours float64 // that preparing took
}

// BatchYear is what became of an opening batch from Setting.Opens on [kg].
type BatchYear struct {
	ThereKg float64 // on that day, or when it comes in later
	EatenKg float64
	LostKg  float64
	SownKg  float64 // as planting stock
	LeftKg  float64
	Out     cal.Date // the day the last of it was eaten or spoiled, or planted where all was planting stock; None: it outlasts the table

	StoredWeek  []float32   // eaten, by seven days from the first [kg]
	GroupStored [][]float32 // of StoredWeek, what each group ate
}

// PlantingYear is what became of one supply [kg].
type PlantingYear struct {
	Planting string
	FreshKg  float64 // eaten from the ground
	PutKg    float64 // brought to a store, before preparing
	OverKg   float64
	FullKg   float64  // of OverKg: its store had no room
	NoTimeKg float64  // of OverKg: the kitchen had no time
	GroundKg float64  // still standing or hanging at the table's end, or at its own end when it lies in a store as a batch
	EatenKg  float64  // eaten from store
	LostKg   float64  // lost in store, preparing included
	SownKg   float64  // from store, as planting stock
	StoreKg  float64  // still in store at the table's end
	From, To cal.Date // first and last day it was eaten from the ground; None: never

	FreshWeek               []float32   // eaten from the ground, by seven days from the first [kg]
	StoredWeek              []float32   // eaten from store
	GroupFresh, GroupStored [][]float32 // of these, what each group ate
}

// NewYear returns room for the results of one future.
func (p *Pantry) NewYear() *Year {
	y := &Year{
		Courses: make([]Course, len(p.course)),
		Stores:  make([]StoreYear, len(p.in.Stores)),
		Batches: make([]BatchYear, len(p.openings)),
		Claims:  make([]ClaimYear, len(p.in.Claims)),
		days:    p.until,
		groups:  len(p.in.Groups),
	}
	for v := range y.Courses {
		days := make([]float32, 4*p.until)
		cut := func(i int) []float32 { return days[i*p.until : (i+1)*p.until : (i+1)*p.until] }
		y.Courses[v] = Course{Want: p.course[v][:p.until], Fresh: cut(0), Stored: cut(1), Short: cut(2), Over: cut(3)}
		if p.buys[v] != nil {
			y.Courses[v].Bought = make([]float32, p.until)
		}
	}
	for i := range y.Stores {
		y.Stores[i].LevelKg = make([]float32, p.until)
	}
	return y
}

// reset empties the year for a run over supplies.
func (y *Year) reset(supplies []*Supply) {
	for v := range y.Courses {
		c := &y.Courses[v]
		clear(c.Fresh)
		clear(c.Stored)
		clear(c.Bought)
		clear(c.Short)
		clear(c.Over)
	}
	for i := range y.Stores {
		y.Stores[i] = StoreYear{LevelKg: y.Stores[i].LevelKg}
	}
	week := y.weekRoom((2*len(supplies) + len(y.Batches)) * (1 + y.groups))
	groups := func() [][]float32 {
		var out [][]float32
		for range y.groups {
			out = append(out, week())
		}
		return out
	}
	for i := range y.Batches {
		y.Batches[i] = BatchYear{Out: cal.None, StoredWeek: week(), GroupStored: groups()}
	}
	y.Plantings = y.Plantings[:0]
	for _, s := range supplies {
		y.Plantings = append(y.Plantings, PlantingYear{Planting: s.Planting, From: cal.None, To: cal.None,
			FreshWeek: week(), StoredWeek: week(), GroupFresh: groups(), GroupStored: groups()})
	}
	y.Balance = Balance{}
}

// weekRoom clears room for n courses of weeks and returns what hands them out.
func (y *Year) weekRoom(n int) func() []float32 {
	weeks := (y.days + 6) / 7
	if cap(y.weeks) < n*weeks {
		y.weeks = make([]float32, n*weeks)
	}
	y.weeks = y.weeks[:n*weeks]
	clear(y.weeks)
	next := 0
	return func() []float32 {
		next += weeks
		return y.weeks[next-weeks : next : next]
	}
}
