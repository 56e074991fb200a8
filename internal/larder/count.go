package larder

import (
	"cmp"
	"math"
	"slices"

	"garner/internal/cal"
	"garner/internal/crop"
)

// Count is what was weighed in the evening of a day of one batch, or of all that
// lay in a store.
type Count struct {
	On    cal.Date
	Store string
	Batch string  // empty: all that lay in the store
	Kg    float64 // >= 0
}

// Stock is what is known of a batch after its counts [kg].
type Stock struct {
	Kg      float64  // there when it was last counted; never counted: what was put in
	On      cal.Date // the day it was last counted; None: never
	EatenKg float64  // until then: what is missing beyond the small losses
	LostKg  float64  // until then, by the small losses of its way of keeping
}

// leftWhenSeen is the least that is left of the life of what was counted, in
// lives. Judgement: nobody counts as food what will not be good next week.
const leftWhenSeen = 0.1

// Recount lets counts correct the batches of a setting, and tells what became of
// each until it was last counted. Counts are taken in order of time; one before
// a batch was put in says nothing of it.
//
// What is missing against the small losses was eaten. A count of a whole store
// does not say of what: by judgement each vegetable has lost the same share, and
// of one vegetable what goes over first was eaten first. When more is there than
// was reckoned with, every batch lost as much less; where none was, what is found
// lies there in the shares in which it was put in.
//
// A batch that was counted is there from the next morning on, or from its
// Counted when that is earlier. One counted before the table's first day has
// gone on losing a little until then; what was eaten in between is not known.
func Recount(in Setting, counts []Count) ([]Opening, []Stock) {
	r := recounting{in: in, stocks: make([]Stock, len(in.Batches))}
	for i := range in.Batches {
		r.stocks[i] = Stock{Kg: in.Batches[i].Kg, On: cal.None}
	}
	counts = slices.Clone(counts)
	slices.SortStableFunc(counts, func(a, b Count) int { return cmp.Compare(a.On, b.On) })
	for i := range counts {
		r.take(&counts[i])
	}
	return r.openings(), r.stocks
}

// recounting is a setting whose batches are being corrected.
type recounting struct {
	in     Setting
	stocks []Stock
}

// reckoned is a batch as it should be on the day of a count.
type reckoned struct {
	batch int
	kg    float64
	last  cal.Date // on which it is good
}

// take corrects the batches that a count is about.
func (r *recounting) take(c *Count) {
	var there []reckoned
	sum := 0.0
	for i := range r.in.Batches {
		b := &r.in.Batches[i]
		if !b.Stored.IsSet() || b.Stored > c.On || !c.about(b) {
			continue
		}
		kg := r.stocks[i].Kg * r.remains(i, c.On)
		there = append(there, reckoned{batch: i, kg: kg})
		sum += kg
	}
	switch {
	case len(there) == 1:
		r.set(&there[0], c.Kg, c.On)
	case sum > 0 && c.Kg >= sum:
		for i := range there {
			r.set(&there[i], there[i].kg*c.Kg/sum, c.On)
		}
	case sum > 0:
		r.eatFirst(there, c.Kg/sum, c.On)
	case c.Kg > 0:
		r.find(there, c.Kg, c.On)
	}
}

// find shares out what was found where none was reckoned with: as it was put in.
func (r *recounting) find(there []reckoned, kg float64, on cal.Date) {
	put := 0.0
	for i := range there {
		put += r.in.Batches[there[i].batch].Kg
	}
	for i := range there {
		if put > 0 {
			r.set(&there[i], kg*r.in.Batches[there[i].batch].Kg/put, on)
		}
	}
}

// about tells whether a count is of a batch, perhaps among others.
func (c *Count) about(b *Opening) bool {
	if c.Batch != "" {
		return b.ID == c.Batch
	}
	return b.Store == c.Store
}

// eatFirst leaves a share of each vegetable; what is missing is taken from what
// goes over first.
func (r *recounting) eatFirst(there []reckoned, share float64, on cal.Date) {
	missing := map[string]float64{}
	for i := range there {
		missing[r.vegetable(&there[i])] += there[i].kg * (1 - share)
		there[i].last = r.lastGood(there[i].batch)
	}
	slices.SortStableFunc(there, func(a, b reckoned) int { return cmp.Compare(a.last, b.last) })
	for i := range there {
		v := r.vegetable(&there[i])
		eaten := min(there[i].kg, missing[v])
		missing[v] -= eaten
		r.set(&there[i], there[i].kg-eaten, on)
	}
}

func (r *recounting) vegetable(k *reckoned) string { return r.in.Batches[k.batch].Vegetable }

// set gives a batch the weight that it had in the evening of a day.
func (r *recounting) set(k *reckoned, kg float64, on cal.Date) {
	s := &r.stocks[k.batch]
	s.LostKg += s.Kg - k.kg
	s.EatenKg += math.Max(0, k.kg-kg)
	found := math.Max(0, kg-k.kg) // was neither lost nor eaten after all
	notLost := min(found, s.LostKg)
	s.LostKg -= notLost
	s.EatenKg -= min(found-notLost, s.EatenKg)
	s.Kg, s.On = kg, on
}

// remains is the share of a batch that small losses leave until a day, since it
// was counted or put in.
func (r *recounting) remains(batch int, until cal.Date) float64 {
	row, store, known := r.keeping(batch)
	since := r.stocks[batch].On
	if !since.IsSet() {
		since = r.in.Batches[batch].Stored
	}
	if !known || until <= since {
		return 1
	}
	return math.Pow(1-row.LossMonth, store.Humidity.LossFactor(row)*float64(until-since)/daysInMonth)
}

// lastGood is the last day on which a batch is good.
func (r *recounting) lastGood(batch int) cal.Date {
	row, store, known := r.keeping(batch)
	day := r.in.Batches[batch].Stored
	if !known {
		return day
	}
	for worn := 0.0; worn < 1 && day < r.in.Batches[batch].Stored+longestLookBack; day++ {
		worn += 1 / LifeDays(row, store.TemperatureC(day+1, r.in.Northern))
	}
	return day
}

// keeping is how a batch keeps and where; false when that is not known.
func (r *recounting) keeping(batch int) (row crop.Storage, store *Store, known bool) {
	b := &r.in.Batches[batch]
	at := slices.IndexFunc(r.in.Stores, func(s Store) bool { return s.ID == b.Store })
	if at < 0 || r.in.Keeping == nil {
		return row, nil, false
	}
	store = &r.in.Stores[at]
	row, known = r.in.Keeping(b.Crop, b.Use, store.Method)
	return row, store, known && keeps(row)
}

// openings are the batches as the counts leave them.
func (r *recounting) openings() []Opening {
	out := slices.Clone(r.in.Batches)
	for i := range out {
		s := &r.stocks[i]
		if !s.On.IsSet() {
			continue
		}
		out[i].Kg = s.Kg
		if s.On < r.in.First {
			out[i].Kg *= r.remains(i, r.in.First)
		}
		out[i].Seen = true
		if morning := s.On + 1; !out[i].Counted.IsSet() || morning < out[i].Counted {
			out[i].Counted = morning
		}
	}
	return out
}
