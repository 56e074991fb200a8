package draft

import "garner/internal/programme"

// noHours says that hours are not limited.
const noHours = -1

// resources are the room in each store less what is kept fills there and, when told, the hours of the grower less
// those that what is kept takes. It returns the index of the hours.
func (b *builder) resources(taken []float64) int {
	for i := range b.Holding.Stores {
		s := &b.Holding.Stores[i]
		room, filled := make([]float64, b.Weeks), b.filled(s.ID)
		for week := range room {
			room[week] = max(0, s.Holds())
			if filled[week] > 0 {
				room[week] = roundKg(max(0, room[week]-filled[week]))
			}
		}
		b.problem.Resources = append(b.problem.Resources, programme.Resource{ID: s.ID, Unit: "kg", PerWeek: room})
	}
	hours, told := b.setting.hours()
	if !told {
		return noHours
	}
	left := make([]float64, b.Weeks)
	for week := range left {
		left[week] = max(0, roundCost(hours-taken[week]))
	}
	b.problem.Resources = append(b.problem.Resources, programme.Resource{ID: "hours", Unit: "h", PerWeek: left})
	return len(b.problem.Resources) - 1
}

// filled is what lies in a store in the table of what is kept, at the close of the first
// day of each week, mean over the futures [kg].
func (b *builder) filled(store string) []float64 {
	out := make([]float64, b.Weeks)
	for i := range b.scales.Table.Stores {
		s := &b.scales.Table.Stores[i]
		if s.Store != store {
			continue
		}
		for _, levels := range s.LevelKg {
			for week := range out {
				if day := 7 * week; day < len(levels) {
					out[week] += float64(levels[day]) / float64(len(s.LevelKg))
				}
			}
		}
	}
	return out
}

// lookEvery is how often the room in a store is looked at [weeks].
const lookEvery = 4

// roomOf is what a unit takes of its store: the mean over the futures of what lies
// there, eaten evenly from when it is brought in to when it is no longer good.
func (b *builder) roomOf(p *profile, lots [][]programme.Lot) []programme.Use {
	if p.store == nil {
		return nil
	}
	at := 0
	for i := range b.Holding.Stores {
		if b.Holding.Stores[i].ID == p.store.store {
			at = i
		}
	}
	load := make([]float64, b.Weeks)
	for _, future := range lots {
		for _, l := range future {
			in := l.First
			if p.use.LiftAtEnd > 0 {
				in = max(in, p.free/7)
			}
			for week := in; week <= min(l.Last, b.Weeks-1); week++ {
				load[week] += l.Kg * float64(l.Last+1-week) / float64(l.Last+1-l.First) / float64(len(lots))
			}
		}
	}
	var out []programme.Use
	for week := 0; week < b.Weeks; week += lookEvery {
		if kg := roundKg(load[week]); kg > 0 {
			out = append(out, programme.Use{Resource: at, Week: week, Amount: kg})
		}
	}
	return out
}
