package outlook

import (
	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/larder"
)

// Stock is a vegetable that lies in store when the table begins, under every
// future.
type Stock struct {
	Vegetable string
	Kg        float64 // in all its batches when the table begins, mean over the futures
	Batches   []BatchFate
	Out       []cal.Date // by future, the day the last of it is eaten or spoiled; None: it outlasts the table
	After     []After    // by future
}

// BatchFate is one batch under every future; the weights are means [kg]. One that
// was last counted before the table begins has been eaten from since; what is
// eaten, lost, planted and left is of what is there when the table begins.
type BatchFate struct {
	larder.Batch            // with the weight that was told, or last counted
	ThereKg      float64    // when the table begins, or when it comes in later
	Good         cal.Date   // the last day it is good, were none of it eaten; not before a day on which it was seen to be
	Out          []cal.Date // by future, as of a Stock
	EatenKg      float64
	LostKg       float64 // little by little, and spoiled at the end
	SownKg       float64 // as planting stock
	LeftKg       float64 // still there when the table ends
}

// After is what follows a stock once it has run out under one future.
type After struct {
	Judged bool // it runs out within the table, and some is wanted afterwards
	Met    bool // ground or store give what is wanted over the next days on which some is wanted
	Wait   int  // days from running out until they do, 0 when Met; NoWait: not within the table
}

// NoWait marks a stock that nothing follows within the table.
const NoWait = -1

// followDays is over how many wanted days what follows a stock must meet the want
// [d]: a week, as the table counts its gaps.
const followDays = 7

// longestLife is how far a batch's life is followed [d]; nothing keeps longer.
const longestLife = 3660

// Stocks returns the vegetables in store when the table begins, in the table's
// order. A batch of nothing is left out.
func (t *Table) Stocks() []Stock {
	var out []Stock
	for i := range t.Vegetables {
		v := &t.Vegetables[i]
		for _, g := range t.groups {
			if s := g.stock(t, v); len(s.Batches) > 0 {
				out = append(out, s)
			}
		}
	}
	return out
}

// stock draws together a vegetable's batches; none where the group has none.
func (g *groupWork) stock(t *Table, v *Vegetable) Stock {
	s := Stock{Vegetable: v.Name, Out: make([]cal.Date, t.Years), After: make([]After, t.Years)}
	for i := range g.setting.Batches {
		b := &g.setting.Batches[i]
		if b.Vegetable != v.Name || b.Kg <= 0 {
			continue
		}
		fate := BatchFate{Batch: b.Batch, Good: g.good(b), Out: make([]cal.Date, t.Years)}
		for f, y := range g.result.years {
			made := &y.Batches[i]
			fate.Out[f] = made.Out
			fate.ThereKg += made.ThereKg
			fate.EatenKg += made.EatenKg / float64(t.Years)
			fate.LostKg += made.LostKg / float64(t.Years)
			fate.SownKg += made.SownKg / float64(t.Years)
			fate.LeftKg += made.LeftKg / float64(t.Years)
			s.Out[f] = latest(s.Out[f], made.Out, len(s.Batches) == 0)
		}
		fate.ThereKg /= float64(t.Years) // a sum first: the same in all years is exactly that
		s.Kg += fate.ThereKg
		s.Batches = append(s.Batches, fate)
	}
	if len(s.Batches) > 0 {
		for f := range s.After {
			s.After[f] = following(&v.Years[f], t.From, s.Out[f])
		}
	}
	return s
}

// latest is the later of two days of running out, None being later than any.
func latest(a, b cal.Date, first bool) cal.Date {
	switch {
	case first:
		return b
	case !a.IsSet() || !b.IsSet():
		return cal.None
	}
	return max(a, b)
}

// following looks at the wanted days that follow a stock's running out.
func following(c *larder.Course, from, out cal.Date) After {
	if !out.IsSet() {
		return After{}
	}
	wanted := wantedDays(c, max(0, int(out-from)+1))
	if len(wanted) == 0 {
		return After{}
	}
	for i, day := range wanted {
		if metOver(c, wanted[i:min(len(wanted), i+followDays)]) {
			if i == 0 {
				return After{Judged: true, Met: true}
			}
			return After{Judged: true, Wait: int(from) + day - int(out)}
		}
	}
	return After{Judged: true, Wait: NoWait}
}

// wantedDays are the days from one on, on which some is wanted.
func wantedDays(c *larder.Course, first int) []int {
	var out []int
	for day := first; day < len(c.Want); day++ {
		if c.Want[day] > 0 {
			out = append(out, day)
		}
	}
	return out
}

// metOver tells whether no more of what is home-grown lacks over some days than a
// week may lack that is no gap; what is bought lacks.
func metOver(c *larder.Course, days []int) bool {
	want, short := 0.0, 0.0
	for _, day := range days {
		want += float64(c.Want[day])
		short += float64(c.Short[day])
		if c.Bought != nil {
			short += float64(c.Bought[day])
		}
	}
	return short <= gapShare*want
}

// good is the last day on which a batch is good in its store.
func (g *groupWork) good(b *larder.Opening) cal.Date {
	for i := range g.setting.Stores {
		store := &g.setting.Stores[i]
		if store.ID != b.Store {
			continue
		}
		if row, ok := g.setting.Keeping(b.Crop, b.Use, store.Method); ok {
			good := lastGood(row, store, b.Stored, g.setting.Northern)
			if b.Seen {
				good = max(good, b.Counted)
			}
			return good
		}
	}
	return cal.None
}

// lastGood is the day in whose course a life begun after another day is used up.
func lastGood(row crop.Storage, store *larder.Store, stored cal.Date, northern bool) cal.Date {
	const whole = 1 - 1e-9 // keeps a life of whole days whole against rounding
	worn := 0.0
	for day := stored + 1; day < stored+longestLife; day++ {
		if worn += 1 / larder.LifeDays(row, store.TemperatureC(day, northern)); worn >= whole {
			return day
		}
	}
	return stored + longestLife
}
