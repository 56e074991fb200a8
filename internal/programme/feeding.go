package programme

// Feeder feeds demands from lots. It is one worker's working space; the zero value
// is ready.
type Feeder struct {
	ready []float64 // by last week: what can be eaten now [kg]
	next  []int32   // lots of the same first week, linked
	heads []int32   // by week
	lots  []Lot
}

// begin empties the feeder for weeks 0 to weeks-1.
func (f *Feeder) begin(weeks int) {
	if len(f.heads) != weeks {
		f.heads = make([]int32, weeks)
		f.ready = make([]float64, weeks+1)
	}
	for u := range f.heads {
		f.heads[u] = -1
	}
	f.lots, f.next = f.lots[:0], f.next[:0]
}

// add brings in lots, each times a number of units.
func (f *Feeder) add(lots []Lot, units float64) {
	for i := range lots {
		l := &lots[i]
		f.next = append(f.next, f.heads[l.First])
		f.heads[l.First] = int32(len(f.lots))
		f.lots = append(f.lots, Lot{First: l.First, Last: l.Last, Kg: l.Kg * units})
	}
}

// feed meets the sum of the levels week by week from what goes over first, and
// returns what was fed and what went over [kg].
func (f *Feeder) feed(levels []Level) (fed, over float64) {
	weeks := len(f.heads)
	clear(f.ready)
	low, high := weeks, -1 // where ready may hold anything
	for u := range weeks {
		for at := f.heads[u]; at >= 0; at = f.next[at] {
			l := &f.lots[at]
			f.ready[l.Last] += l.Kg
			low, high = min(low, l.Last), max(high, l.Last)
		}
		for low < u && low <= high {
			over += f.ready[low]
			low++
		}
		need := 0.0
		for i := range levels {
			need += levels[i].PerWeek[u]
		}
		for need > 0 && low <= high {
			have := f.ready[low]
			if have > need {
				f.ready[low] -= need
				fed += need
				break
			}
			fed += have
			need -= have
			f.ready[low] = 0
			low++
		}
	}
	for ; low < weeks && low <= high; low++ {
		over += f.ready[low]
	}
	return fed, over
}

// Cost is what one future of a demand costs with the lots brought in: what lacks
// of each level and what goes over.
func (f *Feeder) cost(d *Demand, wanted []float64) float64 {
	sum, before, over := 0.0, 0.0, 0.0
	for i := range d.Levels {
		fed, left := f.feed(d.Levels[:i+1])
		sum += d.Levels[i].Cost * (wanted[i] - (fed - before))
		before, over = fed, left
	}
	return sum + d.OverCost*over
}
