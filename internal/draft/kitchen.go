package draft

import (
	"garner/internal/larder"
	"garner/internal/programme"
)

// kitchen makes the kitchen's hours a week a resource, when the household limits them,
// less those that what is kept takes: the rises of its stores.
func (b *builder) kitchen() {
	b.kitchenRow = noHours
	if !(b.Holding.KitchenH > 0) {
		return
	}
	taken := make([]float64, b.Weeks)
	for i := range b.scales.Table.Stores {
		s := &b.scales.Table.Stores[i]
		hours := larder.HoursPerKg(b.methodOf(s.Store)) / float64(max(1, len(s.LevelKg)))
		for _, levels := range s.LevelKg {
			for day := 1; day < min(len(levels), 7*b.Weeks); day++ {
				taken[day/7] += hours * max(0, float64(levels[day]-levels[day-1]))
			}
		}
	}
	left := make([]float64, b.Weeks)
	for week := range left {
		left[week] = max(0, roundCost(b.Holding.KitchenH-taken[week]))
	}
	b.kitchenRow = len(b.problem.Resources)
	b.problem.Resources = append(b.problem.Resources, programme.Resource{ID: "kitchen", Unit: "h", PerWeek: left})
}

// methodOf is how a store keeps.
func (b *builder) methodOf(store string) string {
	for i := range b.Holding.Stores {
		if b.Holding.Stores[i].ID == store {
			return b.Holding.Stores[i].Method
		}
	}
	return ""
}

// preparing is what a unit takes of the kitchen's hours, mean over the futures: what of
// each lot is left when it is brought in, eaten evenly over its life. What waits in the
// ground is brought in when that is cleared, what is picked when it has hung its time.
func (b *builder) preparing(p *profile, lots [][]programme.Lot) []programme.Use {
	if b.kitchenRow == noHours || p.store == nil || !larder.Preserves(p.store.row.Method) {
		return nil
	}
	hours := make([]float64, b.Weeks)
	for _, future := range lots {
		for _, l := range future {
			in := l.First + int(p.use.HoldDays)/7
			if p.waits {
				in = max(l.First, p.free/7)
			}
			if in >= b.Weeks || in > l.Last {
				continue
			}
			kg := l.Kg * float64(l.Last+1-in) / float64(l.Last+1-l.First) / p.store.left(7*(l.Last+1-in))
			hours[in] += kg * larder.HoursPerKg(p.store.row.Method) / float64(len(lots))
		}
	}
	var out []programme.Use
	for week, h := range hours {
		if h = roundCost(h); h > 0 {
			out = append(out, programme.Use{Resource: b.kitchenRow, Week: week, Amount: h})
		}
	}
	return out
}
