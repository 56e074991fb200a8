package jobs

import (
	"garner/internal/cal"
	"garner/internal/larder"
	"garner/internal/record"
	"garner/internal/words"
)

// stores are counted and looked through while something lies in them.
func (d *deriver) stores() {
	for i := range d.Holding.Stores {
		s := &d.Holding.Stores[i]
		every := d.countEvery(s)
		from, counts, last := d.lastCount(s)
		if !from.IsSet() || every == 0 {
			continue
		}
		j := begin(Count, "", "count:"+s.ID, Stop{Part: AtStore, Store: s.ID})
		j.Stop = d.elsewhere("", AtStore)
		j.Stop.Store, j.Store = s.ID, s.ID
		j.Title = words.P("jobs.title_count", nil)
		a := again{from: from + cal.Date(every), every: every, until: endless, done: counts, since: last}
		d.repeat(j, a, func(next *Job, on cal.Date) bool {
			if last.IsSet() {
				*next = why(*next, "counted", last)
			} else {
				*next = why(*next, "uncounted", from)
			}
			return d.holds(s.ID, on)
		})
	}
}

// countEvery is how often a store is counted [d].
func (d *deriver) countEvery(s *larder.Store) int {
	for _, r := range d.facts.stores {
		if names(r.methods, s.Method) {
			return r.every
		}
	}
	return 0
}

// lastCount is when something was first put into a store, how often it was counted
// and when last.
func (d *deriver) lastCount(s *larder.Store) (from cal.Date, counts int, last cal.Date) {
	from, last = cal.None, cal.None
	for _, b := range d.Holding.Batches {
		if b.Store == s.ID && (!from.IsSet() || b.Stored < from) {
			from = b.Stored
		}
	}
	for _, r := range d.Holding.Records {
		if r.What == record.Counted && r.Store == s.ID && r.Date <= d.Today {
			counts++
			last = max(last, r.Date)
		}
	}
	if !from.IsSet() {
		from = last
	}
	return from, counts, last
}

// leastHeld is what a store must hold for a look through to be worth it [kg].
// Judgement.
const leastHeld = 0.5

// holds tells whether a store is expected to hold something on a day.
func (d *deriver) holds(store string, on cal.Date) bool {
	day := int(max(on, d.Today) - d.Table.From)
	for i := range d.Table.Stores {
		s := &d.Table.Stores[i]
		if s.Store != store || day < 0 {
			continue
		}
		sum := 0.0
		for _, level := range s.LevelKg {
			if day < len(level) {
				sum += float64(level[day])
			}
		}
		if sum >= leastHeld*float64(len(s.LevelKg)) {
			return true
		}
	}
	return false
}
