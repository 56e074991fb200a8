package climate

import (
	"cmp"
	"slices"

	"garner/internal/cal"
)

// Lay lays records over each other, the best first, and returns one record with
// the days of all. A day's two temperatures come from the first record that knows
// both, so that never one station's minimum stands beside another's maximum; every
// other value comes from the first record that knows it. Where no record knows
// both temperatures, the first that knows one gives it. The records stay as they
// are; nil ones are passed over.
func Lay(id string, records ...*Record) *Record {
	at := map[cal.Date]int{}
	out := &Record{ID: id}
	for _, r := range records {
		if r == nil {
			continue
		}
		for i := range r.Days {
			o := &r.Days[i]
			k, known := at[o.Date]
			if !known {
				at[o.Date] = len(out.Days)
				out.Days = append(out.Days, *o)
				continue
			}
			out.Days[k].fill(o)
		}
	}
	slices.SortFunc(out.Days, func(a, b Observation) int { return cmp.Compare(a.Date, b.Date) })
	return out
}

// fill takes from another record of the day what this one does not know.
func (o *Observation) fill(other *Observation) {
	whole, theirs := o.TMinC.Known && o.TMaxC.Known, other.TMinC.Known && other.TMaxC.Known
	if none := !o.TMinC.Known && !o.TMaxC.Known; none || !whole && theirs {
		o.TMinC, o.TMaxC = other.TMinC, other.TMaxC
	}
	for _, v := range []struct{ mine, theirs *Maybe }{
		{&o.RainMM, &other.RainMM}, {&o.SunH, &other.SunH}, {&o.RadiationMJ, &other.RadiationMJ},
		{&o.WindMS, &other.WindMS},
	} {
		if !v.mine.Known {
			*v.mine = *v.theirs
		}
	}
	if !o.HumidityPct.Known && !o.DewC.Known {
		o.HumidityPct, o.DewC = other.HumidityPct, other.DewC
	}
}
