package exchange

import (
	"garner/internal/fault"
	"garner/internal/record"
	"garner/internal/words"
)

// checkStores looks at stores and at what lies in them.
func (c *checker) checkStores() {
	c.warnOfBatches()
	for i, s := range c.h.Stores {
		c.checkCapacity(i)
		if s.SummerC < s.WinterC {
			c.wrong("stores", i, "summer_c", fault.New(fault.Invalid, "exchange.summer_colder", words.Args{"summer": s.SummerC, "winter": s.WinterC}))
		}
	}
	for i, b := range c.h.Batches {
		c.knownPlanting("batches", i, b.Planting)
		if b.Stored.IsSet() && c.h.Today.IsSet() && b.Stored > c.h.Today {
			c.wrong("batches", i, "stored", fault.New(fault.Invalid, "exchange.after_today", words.Args{"given": b.Stored.String(), "today": c.h.Today.String()}))
		}
	}
}

// knownPlanting reports a planting that no plan and no draft has.
func (c *checker) knownPlanting(table string, row int, id string) {
	if id != "" && !c.stands(id) {
		c.wrong(table, row, "planting", unknownID(id, "plantings.csv", c.idsOf("plantings")))
	}
}

// subjects says what a kind of record is about; at least one of the columns
// must be filled. Other kinds may be about anything.
var subjects = map[record.What][]string{
	record.Emerged:   {"planting"},
	record.Planted:   {"planting"},
	record.FirstPick: {"planting"},
	record.Picked:    {"planting"},
	record.LastPick:  {"planting"},
	record.Died:      {"planting"},
	record.Cleared:   {"planting", "bed"},
	record.Counted:   {"store", "batch"},
	record.Watered:   {"planting", "bed"},
	record.Covered:   {"planting", "bed"},
	record.Failing:   {"planting"},
	record.Moved:     {"planting"},
	record.Disease:   {"planting", "bed"},
	record.Sighted:   {"planting", "bed"},
	record.Composted: {"bed"},
	record.Manured:   {"bed"},
	record.Limed:     {"bed"},
	record.Mulched:   {"bed"},
	record.Raised:    {"planting"},
	record.Pricked:   {"planting"},
	record.Fed:       {"planting", "bed"},
	record.Blossomed: {"planting", "feature"},
}

// checkRecords looks at what was seen and done.
func (c *checker) checkRecords() {
	for i := range c.h.Records {
		r := &c.h.Records[i]
		c.knownPlanting("records", i, r.Planting)
		c.checkSubject(i, r)
		if r.Unit == "share" && r.Value > 1 {
			c.wrong("records", i, "value", fault.New(fault.OutOfRange, "exchange.share_above_one", words.Args{"given": r.Value}))
		}
		c.checkLost(i, r)
		c.checkStage(i, r)
		c.checkCount(i, r)
		if r.Date.IsSet() && c.h.Today.IsSet() && r.Date > c.h.Today {
			c.wrong("records", i, "date", fault.New(fault.Invalid, "exchange.after_today", words.Args{"given": r.Date.String(), "today": c.h.Today.String()}))
		}
	}
}

// checkLost finds losses told in what is no part of a planting.
func (c *checker) checkLost(row int, r *record.Record) {
	switch r.What {
	case record.Died, record.Failing, record.Moved:
		if r.Unit != "" && r.Unit != record.ShareUnit && r.Unit != record.PlantsUnit && !c.faulty("records", row, "unit") {
			c.wrong("records", row, "unit", fault.New(fault.Invalid, "exchange.lost_unit", words.Args{"what": string(r.What), "unit": r.Unit}))
		}
	}
}

// checkStage finds a stage of blossom on a pest, one of a pest on blossom, and
// blossom of which no stage is told.
func (c *checker) checkStage(row int, r *record.Record) {
	if blossom := r.What == record.Blossomed; !c.faulty("records", row, "stage") && (blossom != r.Stage.OfBlossom()) && (blossom || r.Stage != "") {
		key := "exchange.stage_not_blossom"
		if blossom {
			key = "exchange.stage_of_blossom"
		}
		c.wrong("records", row, "stage", fault.New(fault.Invalid, key, words.Args{"given": string(r.Stage), "what": string(r.What)}))
	}
}

func (c *checker) checkSubject(row int, r *record.Record) {
	needed := subjects[r.What]
	if len(needed) == 0 {
		return
	}
	filled := map[string]string{"planting": r.Planting, "bed": r.Bed, "store": r.Store, "batch": r.Batch, "feature": r.Feature}
	for _, column := range needed {
		if filled[column] != "" {
			return
		}
	}
	key := "exchange.about_what"
	switch {
	case r.What == record.Counted:
		key = "exchange.about_stored"
	case r.What == record.Blossomed:
		key = "exchange.about_blossom"
	case len(needed) > 1:
		key = "exchange.about_either"
	}
	c.wrong("records", row, needed[0], fault.New(fault.Invalid, key, words.Args{"what": string(r.What), "column": needed[0]}))
}
