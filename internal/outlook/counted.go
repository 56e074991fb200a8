package outlook

import (
	"garner/internal/cal"
	"garner/internal/larder"
	"garner/internal/record"
)

// recounted are batches as the counts of the records leave them.
func (j *job) recounted(batches []larder.Opening) []larder.Opening {
	counts := CountsIn(j.Holding.Records)
	if len(counts) == 0 {
		return batches
	}
	made, _ := larder.Recount(larder.Setting{First: j.From - runUp, Northern: j.northern(), Stores: j.Holding.Stores,
		Batches: batches, Keeping: j.keeping}, counts)
	return made
}

// CountsIn are the counts among records. One that is not in kg says nothing that
// can be reckoned with.
func CountsIn(records []record.Record) []larder.Count {
	var out []larder.Count
	for i := range records {
		if r := &records[i]; r.What == record.Counted && r.Unit == "kg" {
			out = append(out, larder.Count{On: r.Date, Store: r.Store, Batch: r.Batch, Kg: r.Value})
		}
	}
	return out
}

// storesFrom is the day from which a planting goes to its store: what went there
// before the table begins, or was laid there this week, is in the batches.
func (j *job) storesFrom(planting string) cal.Date {
	from := j.From
	for i := range j.Holding.Batches {
		b := &j.Holding.Batches[i]
		if b.Planting == planting && b.Planting != "" && b.Stored.IsSet() && b.Stored <= j.Today {
			from = max(from, b.Stored+1)
		}
	}
	return from
}

// booked tells whether a planting is off its ground and lies in a store as a
// batch: what ended within the table's first days is not laid there again.
func (j *job) booked(planting string) bool {
	gone := j.done.of(planting).gone
	if !gone.IsSet() || gone > j.Today {
		return false
	}
	for i := range j.Holding.Batches {
		if b := &j.Holding.Batches[i]; b.Planting == planting && b.Planting != "" {
			return true
		}
	}
	return false
}
