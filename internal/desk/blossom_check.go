package desk

import (
	"slices"

	"garner/internal/crop"
	"garner/internal/fault"
	"garner/internal/plan"
	"garner/internal/risk"
	"garner/internal/words"
)

// blossomOf is the crop whose blossom a planting or a tree on the plan has; nil where
// there is no such planting or tree, or its name tells of none.
func (w *lossWork) blossomOf(b *crop.Book, id string) *crop.Crop {
	for i := range w.holding.Features {
		if f := &w.holding.Features[i]; f.ID == id {
			if called := b.Called(f.Name); len(called) == 1 {
				return called[0]
			}
			return nil
		}
	}
	plantings, _ := plan.Resolve(w.holding.Plans, w.holding.Plantings, w.holding.Changes, w.holding.Plan)
	at := slices.IndexFunc(plantings, func(p plan.Planting) bool { return p.ID == id })
	if at < 0 {
		return nil
	}
	c, _ := b.Crop(plantings[at].Crop)
	return c
}

// itsBlossom refuses a stage of blossom that belongs to another crop than the one it is
// told of.
func (w *lossWork) itsBlossom(id, stage string) error {
	b, err := bookOf(w.holding)
	if err != nil {
		return err
	}
	harms, err := risk.Load()
	if err != nil {
		return err
	}
	c := w.blossomOf(b, id)
	if c == nil {
		return fault.New(fault.Invalid, "desk.blossom_none", words.Args{"given": id}).In(fault.Place{Column: stageColumn + id})
	}
	var names []words.Phrase
	for _, s := range harms.Stages(c.ID) {
		if s.Stage == stage {
			return nil
		}
		names = append(names, s.Name())
	}
	if len(names) == 0 {
		return fault.New(fault.Invalid, "desk.blossom_none", words.Args{"given": c.Name}).In(fault.Place{Column: stageColumn + id})
	}
	return fault.New(fault.Invalid, "desk.blossom_other", words.Args{"given": stage, "crop": c.Name, "stages": names}).In(fault.Place{Column: stageColumn + id})
}

// stageColumn begins the name of the field in which a stage is told.
const stageColumn = "stage-"
