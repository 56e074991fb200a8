package larder

import (
	"math"

	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/words"
)

// gatheredDays is how long what hung on a plant at its end stays good in the
// kitchen [d]. Judgement, from the home refrigerator lives of USDA/FSIS
// FoodKeeper: summer squash 4 to 5 days, kale 3 to 5.
const gatheredDays = 5

// source is a supply within one run.
type source struct {
	standing, flow []float32
	first          int // day of the table on which the arrays begin; may be negative
	start, end     int // days within the table on which it gives
	last           int // last day of the supply, perhaps beyond the table
	hold           int
	vegetable      int32
	keeping        int32 // of its store; none: -1
	lift           bool
	storeFrom      int // day within the table from which it goes to its store
	booked         bool
	life           float64 // lives of its lots, times this

	begun      bool    // a standing planting that reached the table
	left       float64 // share of it still standing
	taken      float64 // share of it taken
	standingKg float64 // taken, gathered and left of what stood
}

const none = -1

// laySources readies the future's supplies.
func (s *Scratch) laySources(f *Future) error {
	if err := checkLives(f); err != nil {
		return err
	}
	s.sources = s.sources[:0]
	for i, supply := range f.Supplies {
		src, err := s.newSource(supply)
		if err != nil {
			return err
		}
		src.life = lifeAt(f.SupplyLife, i)
		s.sources = append(s.sources, src)
	}
	return nil
}

// checkLives refuses life factors that are no numbers above zero.
func checkLives(f *Future) error {
	for _, factors := range [2][]float64{f.SupplyLife, f.BatchLife} {
		for _, factor := range factors {
			if !(factor > 0) || math.IsInf(factor, 0) {
				return fault.New(fault.Internal, "larder.life_factor", words.Args{"factor": factor})
			}
		}
	}
	return nil
}

// lifeAt reads a list of life factors, 1 where there is none.
func lifeAt(factors []float64, i int) float64 {
	if i < len(factors) {
		return factors[i]
	}
	return 1
}

func (s *Scratch) newSource(supply *Supply) (source, error) {
	p := s.pantry
	v, known := p.byName[supply.Vegetable]
	if !known {
		return source{}, fault.New(fault.NotFound, "larder.supply_vegetable",
			words.Args{"planting": supply.Planting, "vegetable": supply.Vegetable})
	}
	if len(supply.Standing) > 0 && len(supply.Flow) > 0 || supply.HoldDays < 0 || !sound(supply.Standing) || !sound(supply.Flow) {
		return source{}, fault.New(fault.Internal, "larder.supply_unsound", words.Args{"planting": supply.Planting})
	}
	k, err := s.keepingOf(supply)
	if err != nil {
		return source{}, err
	}
	first, end := int(supply.First-p.in.First), int(supply.End()-p.in.First)
	last := end - 1
	if end == p.in.Days {
		last = end // cut off by the table: it goes on, rather than coming to its end
	}
	return source{standing: supply.Standing, flow: supply.Flow, first: first,
		start: max(first, 0), end: min(end, p.in.Days), last: last, hold: supply.HoldDays,
		vegetable: v, keeping: k, lift: supply.Lift, storeFrom: int(supply.StoreFrom) - int(p.in.First), booked: supply.Booked, left: 1}, nil
}

// sound tells whether weights are numbers of zero or more.
func sound(weights []float32) bool {
	for _, kg := range weights {
		if !(kg >= 0 && kg <= math.MaxFloat32) {
			return false
		}
	}
	return true
}

// keepingOf finds or makes the table of a supply's crop in its store; a supply
// without a store, or whose crop does not keep by the store's method, has none.
func (s *Scratch) keepingOf(supply *Supply) (int32, error) {
	if supply.Store == "" {
		return none, nil
	}
	store, known := s.pantry.byStore[supply.Store]
	if !known {
		return none, fault.New(fault.NotFound, "larder.supply_store",
			words.Args{"planting": supply.Planting, "store": supply.Store})
	}
	k := keepingKey{supply.Crop, supply.Use, store}
	if at, made := s.index[k]; made {
		return at, nil
	}
	at := int32(none)
	if row, ok := s.pantry.row(supply.Crop, supply.Use, store); ok {
		at = int32(len(s.keepings))
		s.keepings = append(s.keepings, newKeeping(row, k, s.pantry.in.Stores[store].Humidity, s.pantry.warmth[store], s.pantry.in.Days))
		s.levels = append(s.levels, 0)
	}
	s.index[k] = at
	return at, nil
}

// whole returns the weight of the whole planting on a day, were none taken.
func (src *source) whole(day int) float64 { return float64(src.standing[day-src.first]) }

// goodUntil returns the last day on which what became ready on a day is good.
func (src *source) goodUntil(day int) int { return min(day+src.hold, src.last+gatheredDays) }

// date turns a day of the table into a date.
func (s *Scratch) date(day int) cal.Date { return s.pantry.in.First + cal.Date(day) }
