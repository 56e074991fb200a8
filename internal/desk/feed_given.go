package desk

import (
	"slices"

	"garner/internal/fault"
	"garner/internal/journal"
	"garner/internal/record"
	"garner/internal/words"
)

// FeedGiven is the feed that was given to plantings today.
type FeedGiven struct {
	Plantings []string // ids; those that are not due today are passed over
	Dry       bool     // scattered; else stirred into water
}

// Feed records that plantings were fed today, each with what was told for it. It is one
// entry. What somebody else has fed meanwhile is not fed twice.
func (o *Office) Feed(by Author, g FeedGiven) (*KeptEntry, error) {
	return o.write(by, func() (journal.Entry, error) {
		view, err := o.FeedView()
		if err != nil {
			return journal.Entry{}, err
		}
		due := view.dueOf(g.Plantings)
		if len(due) == 0 || g.Dry && !view.Dry {
			return journal.Entry{}, fault.List{fault.New(fault.Invalid, "desk.feed_not_due", nil)}
		}
		w, err := o.doing(nil)
		if err != nil {
			return journal.Entry{}, err
		}
		sum := 0.0
		for i := range due {
			cells, amount := due[i].record(view, g.Dry)
			if err := w.add("records", cells); err != nil {
				return journal.Entry{}, err
			}
			sum += amount
		}
		if len(due) == 1 {
			return w.entry(w.names.said(w.changes[0]))
		}
		if g.Dry {
			return w.entry(words.P("desk.edit_fed_dry", words.Args{"n": len(due), "g": sum}))
		}
		return w.entry(words.P("desk.edit_fed", words.Args{"n": len(due), "l": sum}))
	})
}

// dueOf are the turns of some plantings that are due today.
func (v *FeedView) dueOf(plantings []string) []FeedRow {
	return slices.DeleteFunc(slices.Clone(v.Turns), func(f FeedRow) bool {
		return f.Due > v.Today || !slices.Contains(plantings, f.Planting)
	})
}

// gramsOfKg are the grams in a kilogram.
const gramsOfKg = 1000

// record is a feed given today, with its amount [L or g].
func (f *FeedRow) record(v *FeedView, dry bool) (map[string]string, float64) {
	cells := map[string]string{"date": v.Today.String(), "what": string(record.Fed), "planting": f.Planting}
	if dry {
		cells["value"], cells["unit"] = numberCell(f.DryG/gramsOfKg), record.KgUnit
		return cells, f.DryG
	}
	cells["value"], cells["unit"] = numberCell(f.Litres), "L"
	return cells, f.Litres
}
