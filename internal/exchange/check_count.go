package exchange

import (
	"garner/internal/fault"
	"garner/internal/record"
	"garner/internal/words"
)

// pickSlack is what a batch may weigh beyond its picks for rounding [kg].
const pickSlack = 0.01

// checkCount holds a count to the batch that it is of.
func (c *checker) checkCount(row int, r *record.Record) {
	switch {
	case r.What != record.Counted && r.Batch != "":
		c.wrong("records", row, "batch", fault.New(fault.Invalid, "exchange.batch_not_counted", words.Args{"what": string(r.What)}))
		return
	case r.What != record.Counted:
		return
	case r.Unit != "" && r.Unit != "kg":
		c.warnings.add(fault.New(fault.Invalid, "exchange.count_unit", words.Args{"unit": r.Unit}).In(c.place("records", row, "unit")))
	}
	at, known := c.ids["batches"][r.Batch]
	if !known {
		return
	}
	b := &c.h.Batches[at]
	if r.Store != "" && r.Store != b.Store {
		c.wrong("records", row, "store", fault.New(fault.Conflict, "exchange.count_other_store", words.Args{"batch": b.ID, "store": b.Store, "given": r.Store}))
	}
	if r.Date.IsSet() && b.Stored.IsSet() && r.Date < b.Stored {
		c.wrong("records", row, "date", fault.New(fault.Conflict, "exchange.count_before_batch", words.Args{"batch": b.ID, "stored": b.Stored.String()}))
	}
	if r.Unit == "kg" && r.Value > b.Kg+pickSlack {
		c.warnings.add(fault.New(fault.Conflict, "exchange.count_above_batch", words.Args{"batch": b.ID, "given": r.Value, "kg": b.Kg}).In(c.place("records", row, "value")))
	}
}

// warnOfBatches warns of plantings of which more lies in stores than was picked,
// where the picks were weighed.
func (c *checker) warnOfBatches() {
	picked := map[string]float64{}
	for i := range c.h.Records {
		if r := &c.h.Records[i]; r.Planting != "" && r.Picks() && r.Unit == "kg" {
			picked[r.Planting] += r.Value
		}
	}
	stored := map[string]float64{}
	for i, b := range c.h.Batches {
		stored[b.Planting] += b.Kg
		if kg, weighed := picked[b.Planting]; weighed && stored[b.Planting] > kg+pickSlack {
			c.warnings.add(fault.New(fault.Conflict, "exchange.batch_above_picks",
				words.Args{"batch": b.ID, "planting": b.Planting, "kg": stored[b.Planting], "picked": kg}).In(c.place("batches", i, "kg")))
		}
	}
}
