package draft

import (
	"fmt"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/outlook"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/season"
)

// mostPlants: what stands closer is sown, not planted out [1/m2]. judgement, as for
// advice on a single space.
const mostPlants = 80

// eachUse goes through the uses that feed a demand and are over within a season.
func (b *builder) eachUse(do func(c *crop.Crop, u *crop.Use) error) error {
	for _, c := range b.Book.Crops() {
		for _, u := range c.Uses {
			if _, wanted := b.draft.demands[u.Vegetable]; !wanted || !u.Feeds() || u.Pattern == crop.Perennial {
				continue
			}
			if err := do(c, u); err != nil {
				return err
			}
		}
	}
	return nil
}

// profiles are those of a use on a kind of ground.
func (b *builder) profiles(k *kind, c *crop.Crop, u *crop.Use) ([]profile, error) {
	return b.tried(k, c, u, nil, func(plan.Method, int) bool { return true })
}

// tried are the profiles of a use on a kind of ground below covers, of the starts that
// are asked for.
func (b *builder) tried(k *kind, c *crop.Crop, u *crop.Use, covers []place.CoverSpell, asked func(plan.Method, int) bool) ([]profile, error) {
	var all []plan.Planting
	var weeks []int
	for _, method := range u.Methods {
		if method == string(plan.Plant) && u.PlantsPerM2() > mostPlants && u.Allows(string(plan.Seed)) {
			continue
		}
		for week := k.first; week <= k.last; week++ {
			if date := b.draft.monday(week); b.begins(u, plan.Method(method), date) && asked(plan.Method(method), week) {
				p := plan.New(fmt.Sprintf("draft/%s/%s/%s/%d", c.ID, u.Name, method, week), b.Holding.Plan)
				p.Bed, p.Crop, p.Use, p.Method, p.Date, p.AreaM2 = k.bed, c.ID, u.Name, plan.Method(method), date, 1
				all, weeks = append(all, p), append(weeks, week)
			}
		}
	}
	if len(all) == 0 {
		return nil, nil
	}
	tried, err := b.scales.TryUnder(k.bed, covers, all, len(b.problem.Futures))
	if err != nil {
		return nil, err
	}
	var out []profile
	for i := range tried {
		odds := b.fares(&tried[i], u, all[i].Date)
		if odds < leastOdds {
			continue
		}
		base := profile{use: u, crop: c, method: all[i].Method, week: weeks[i], odds: odds}
		out = append(out, b.variants(base, &tried[i])...)
	}
	return out, nil
}

// begins tells whether a use may be started on a day: it is its time of the year,
// and plants that go out can have been raised since today.
func (b *builder) begins(u *crop.Use, method plan.Method, date cal.Date) bool {
	if season.TooEarly(u, growth.StartOf(string(method)), date, b.northern) {
		return false
	}
	raised := method == plan.Plant || method == plan.Cutting
	return date >= b.Today && (!raised || date-cal.Date(u.RaiseDays) >= b.Today)
}

// variants are the ways to take one sowing: to its end or cleared earlier, eaten
// fresh or kept.
func (b *builder) variants(base profile, t *outlook.Tried) []profile {
	days := b.Days()
	outs := make([]outcome, len(t.Years))
	for f, o := range t.Years {
		outs[f] = outcomeOf(o, t.First, b.From, days)
	}
	ways := []way{{freeBy(outs), nil}}
	k := b.keepings[base.use]
	if k != nil {
		ways = append(ways, way{ways[0].free, k})
	}
	if early := earlier(outs); early+soonDays <= ways[0].free {
		if !stands(outs) {
			k = nil // what is cleared early is not what is grown for the store
		}
		ways = append(ways, way{early, k})
	}
	var out []profile
	for _, w := range ways {
		p := base
		p.free, p.store, p.waits = w.free, w.store, stands(outs)
		sum := 0.0
		for f := range outs {
			lots := outs[f].lots(p.use, w.free, w.store, days)
			for _, l := range lots {
				sum += l.Kg
			}
			p.lots = append(p.lots, lots)
		}
		if sum > 0 {
			out = append(out, p)
		}
	}
	return out
}

// way is how a sowing ends: the day its ground is free, and where what is left goes.
type way struct {
	free  int
	store *keeping
}

// stands tells whether a crop waits in the ground under any future.
func stands(outs []outcome) bool {
	for i := range outs {
		if len(outs[i].standing) > 0 {
			return true
		}
	}
	return false
}
