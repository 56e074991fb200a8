package larder

import (
	"math"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/fault"
	"garner/internal/words"
)

// Setting is what does not change from future to future for a group of
// vegetables that share stores.
type Setting struct {
	First      cal.Date // the table's first day
	Days       int      // > 0
	Opens      cal.Date // what becomes of batches is told from this day on; the zero date: from the first
	Northern   bool     // the coldest month is January (south: July)
	Vegetables []string // the order of results, and of turns at a store that fills up on the same day
	Wants      []Want   // of these vegetables
	Groups     []Group  // of these vegetables; their rows come after them
	Left       []GapLeft
	Purchases  []Purchase
	Eaters     float64 // who usually sit at the table; needed with visits only
	Visits     []Visit
	Stores     []Store
	Batches    []Opening
	Claims     []Claim // held back from what is eaten
	// KitchenHours are those a week for preserving [h]; 0: not limited.
	KitchenHours float64
	// Keeping is the book's row for a crop and use kept by a method. It is asked
	// from several workers at once.
	Keeping func(crop, use, method string) (crop.Storage, bool)
}

// Opening is a batch in store when the table begins. Its Kg is what is there on
// the table's first day, or on the day it was counted if that is later, ready to
// eat; its age counts from Stored. One stored later than that arrives on its
// day.
type Opening struct {
	Batch
	Vegetable string
	Counted   cal.Date // the zero date: on the table's first day
	Seen      bool     // it was looked at then and is good, whatever its life
}

// Pantry is a checked setting with everything worked out that all futures
// share. It is never changed, so that workers may share it.
type Pantry struct {
	in         Setting
	wants      [][]float64 // by row, vegetables and then groups, and day [kg]
	course     [][]float32 // the same, as results show it
	buys       [][]float64 // by row and day, what may be bought [kg]; nil: nothing of it
	warmth     [][]float64 // by store and day, lookAhead days beyond the table [C]
	byName     map[string]int32
	byGroup    map[string]int32 // by id, its row
	members    [][]int32        // by group, the best liked first
	byStore    map[string]int32
	keepings   []keeping // those of the openings
	index      map[keepingKey]int32
	openings   []opening
	opens      int       // day from which batches are told
	holds      []float64 // by store [kg]
	hoursPerKg []float64 // by store, in the kitchen
	claims     []claim   // those of the table's days, in order of time
	until      int       // days that are run, <= in.Days
}

type keepingKey struct {
	crop, use string
	store     int32
}

// opening is a batch with its places worked out.
type opening struct {
	kg        float64
	vegetable int32
	keeping   int32
	day       int     // on which it is first there
	from      int     // first day whose warmth wears it within the table
	worn      float64 // lives used up before the table begins
	seen      bool    // it was good on day
}

// NewPantry checks a setting and works out what all futures share. All faults
// are told at once, as a fault.List.
func NewPantry(in Setting) (*Pantry, error) {
	p := &Pantry{in: in, until: in.Days, opens: max(0, int(in.Opens)-int(in.First)), byName: map[string]int32{}, byGroup: map[string]int32{}, byStore: map[string]int32{}, index: map[keepingKey]int32{}}
	if in.Days <= 0 || !in.First.IsSet() {
		return nil, fault.List{fault.New(fault.Invalid, "larder.no_days", words.Args{"days": in.Days})}
	}
	var faults fault.List
	faults = p.nameVegetables(faults)
	faults = p.nameGroups(faults)
	faults = p.nameStores(faults)
	faults = p.layWants(faults)
	faults = p.layOpenings(faults)
	faults = p.layClaims(faults)
	if len(faults) > 0 {
		return nil, faults
	}
	return p, nil
}

func (p *Pantry) nameVegetables(faults fault.List) fault.List {
	for i, name := range p.in.Vegetables {
		if _, twice := p.byName[name]; twice {
			faults = append(faults, fault.New(fault.Conflict, "larder.vegetable_twice", words.Args{"vegetable": name}))
		}
		p.byName[name] = int32(i)
	}
	return faults
}

func (p *Pantry) nameStores(faults fault.List) fault.List {
	for i := range p.in.Stores {
		s := &p.in.Stores[i]
		if _, twice := p.byStore[s.ID]; twice {
			faults = append(faults, fault.New(fault.Conflict, "larder.store_twice", words.Args{"store": s.ID}))
		}
		holds := s.Holds()
		p.holds = append(p.holds, holds)
		p.hoursPerKg = append(p.hoursPerKg, HoursPerKg(s.Method))
		if !(holds > 0) || math.IsInf(holds, 0) {
			faults = append(faults, fault.New(fault.Invalid, "larder.capacity", words.Args{"store": s.Name, "kg": holds}))
		}
		if !(math.Abs(s.WinterC) <= 50 && math.Abs(s.SummerC) <= 50) {
			faults = append(faults, fault.New(fault.OutOfRange, "larder.store_temperature",
				words.Args{"store": s.Name, "winter": s.WinterC, "summer": s.SummerC}))
		}
		p.byStore[s.ID] = int32(i)
		p.warmth = append(p.warmth, make([]float64, p.in.Days+lookAhead))
		for d := range p.warmth[i] {
			p.warmth[i][d] = s.TemperatureC(p.in.First+cal.Date(d), p.in.Northern)
		}
	}
	return faults
}

func (p *Pantry) layWants(faults fault.List) fault.List {
	rows := len(p.in.Vegetables) + len(p.in.Groups)
	p.wants, p.course, p.buys = make([][]float64, rows), make([][]float32, rows), make([][]float64, rows)
	for v := range p.wants {
		p.wants[v] = make([]float64, p.in.Days)
		p.course[v] = make([]float32, p.in.Days)
	}
	for i := range p.in.Wants {
		w := &p.in.Wants[i]
		v, known := p.rowOf(w.Vegetable, w.Group)
		switch {
		case !known && w.Group != "":
			faults = append(faults, fault.New(fault.NotFound, "larder.want_group", words.Args{"group": w.Group}))
		case !known:
			faults = append(faults, fault.New(fault.NotFound, "larder.want_vegetable", words.Args{"vegetable": w.Vegetable}))
		case !(w.KgPerWeek >= 0) || math.IsInf(w.KgPerWeek, 0):
			faults = append(faults, fault.New(fault.Invalid, "larder.want_weight", words.Args{"vegetable": w.Vegetable, "kg": w.KgPerWeek}))
		case !(w.BuyKgPerWeek >= 0) || math.IsInf(w.BuyKgPerWeek, 0):
			faults = append(faults, fault.New(fault.Invalid, "larder.want_buy", words.Args{"vegetable": w.Vegetable, "kg": w.BuyKgPerWeek}))
		default:
			w.addTo(p.wants[v], p.in.First, w.KgPerWeek)
			p.allow(int(v), w)
		}
	}
	faults = p.layPurchases(faults)
	faults = p.layVisits(faults)
	faults = p.layLeft(faults)
	for v, days := range p.wants {
		for d, kg := range days {
			p.course[v][d] = float32(kg)
		}
	}
	return faults
}

// allow adds what a want lets be bought of its vegetable.
func (p *Pantry) allow(v int, w *Want) {
	if w.BuyKgPerWeek == 0 {
		return
	}
	if p.buys[v] == nil {
		p.buys[v] = make([]float64, p.in.Days)
	}
	w.addTo(p.buys[v], p.in.First, w.BuyKgPerWeek)
}

func (p *Pantry) layOpenings(faults fault.List) fault.List {
	p.openings = make([]opening, len(p.in.Batches))
	for i := range p.in.Batches {
		made, wrong := p.open(&p.in.Batches[i])
		if wrong != nil {
			faults = append(faults, wrong)
			continue
		}
		p.openings[i] = made
	}
	return faults
}

// open finds a batch's places and how far its life is spent.
func (p *Pantry) open(b *Opening) (opening, *fault.Error) {
	v, known := p.byName[b.Vegetable]
	if !known {
		return opening{}, fault.New(fault.NotFound, "larder.batch_vegetable", words.Args{"batch": b.ID, "vegetable": b.Vegetable})
	}
	store, known := p.byStore[b.Store]
	if !known {
		return opening{}, fault.New(fault.NotFound, "larder.batch_store", words.Args{"batch": b.ID, "store": b.Store})
	}
	if !(b.Kg >= 0) || math.IsInf(b.Kg, 0) {
		return opening{}, fault.New(fault.Invalid, "larder.batch_weight", words.Args{"batch": b.ID, "kg": b.Kg})
	}
	if !b.Stored.IsSet() {
		return opening{}, fault.New(fault.Invalid, "larder.batch_date", words.Args{"batch": b.ID})
	}
	row, ok := p.row(b.Crop, b.Use, store)
	if !ok {
		return opening{}, fault.New(fault.Conflict, "larder.batch_method",
			words.Args{"batch": b.ID, "crop": b.Crop, "method": p.in.Stores[store].Method})
	}
	key := keepingKey{b.Crop, b.Use, store}
	k, made := p.index[key]
	if !made {
		k = int32(len(p.keepings))
		p.keepings = append(p.keepings, newKeeping(row, key, p.in.Stores[store].Humidity, p.warmth[store], p.in.Days))
		p.index[key] = k
	}
	day := max(0, int(b.Stored-p.in.First), int(b.Counted-p.in.First))
	from := max(0, int(b.Stored+1-p.in.First))
	return opening{kg: b.Kg, vegetable: v, keeping: k, day: day, from: from, worn: p.worn(row, store, b.Stored), seen: b.Seen}, nil
}

// longestLookBack is enough for anything that keeps [d].
const longestLookBack = 3660

// worn returns the lives used up from the day after stored to the day before
// the table begins.
func (p *Pantry) worn(row crop.Storage, store int32, stored cal.Date) float64 {
	sum := 0.0
	for day := max(stored, p.in.First-longestLookBack) + 1; day < p.in.First; day++ {
		sum += 1 / LifeDays(row, p.in.Stores[store].TemperatureC(day, p.in.Northern))
	}
	return sum
}

// row asks the book how a crop keeps in a store.
func (p *Pantry) row(name, use string, store int32) (crop.Storage, bool) {
	if p.in.Keeping == nil {
		return crop.Storage{}, false
	}
	row, ok := p.in.Keeping(name, use, p.in.Stores[store].Method)
	return row, ok && keeps(row)
}
