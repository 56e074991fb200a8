package desk

import (
	"slices"

	"garner/internal/draft"
	"garner/internal/exchange"
	"garner/internal/holding"
	"garner/internal/journal"
	"garner/internal/outlook"
	"garner/internal/plan"
	"garner/internal/words"
)

// KeepWishes puts what is asked of every drafted year in the place of what was asked
// before, in one entry. Wishes that stay keep their ids, and a limit of hours that is
// another keeps its own; what is new gets one.
func (o *Office) KeepWishes(by Author, wishes []plan.Wish) (*KeptEntry, error) {
	return o.write(by, func() (journal.Entry, error) {
		h, err := o.Holding()
		if err != nil {
			return journal.Entry{}, err
		}
		n, err := o.naming()
		if err != nil {
			return journal.Entry{}, err
		}
		own := holding.Holding{Wishes: wishesOver(h.Wishes, wishes)}
		changes := becoming("wishes", n.rows["wishes"], exchange.Rows(&own)["wishes"])
		what := words.P("desk.edit_wishes", words.Args{"n": len(own.Wishes)})
		if len(changes) == 1 {
			what = n.said(changes[0])
		}
		return journal.Entry{What: what, Changes: changes}, nil
	})
}

// wishesOver are the wishes that are asked now, those that were asked before first and
// in their order, each once.
func wishesOver(before, asked []plan.Wish) []plan.Wish {
	var out []plan.Wish
	taken := map[string]bool{}
	for _, w := range before {
		taken[w.ID] = true
		if at := slices.IndexFunc(asked, func(a plan.Wish) bool { return sameWish(&a, &w) }); at >= 0 {
			w.Hours = asked[at].Hours
			out = append(out, w)
		}
	}
	for _, w := range asked {
		if slices.ContainsFunc(out, func(k plan.Wish) bool { return sameWish(&k, &w) }) {
			continue
		}
		w.ID = idFor("wishes", nil, taken)
		taken[w.ID] = true
		out = append(out, w)
	}
	return out
}

// sameWish tells whether two wishes ask the same, whatever the hours.
func sameWish(a, b *plan.Wish) bool {
	return a.Kind == b.Kind && a.Planting == b.Planting && a.Crop == b.Crop && a.Bed == b.Bed
}

// wishes are what is kept with the holding, then what is asked for this once, with crops and
// beds by their ids. Hours asked for once take the place of those kept. A planting that
// is kept as it is and is no longer of the plan is told.
func (o *DraftOptions) wishes(s outlook.Setting, present []plan.Planting) (out []draft.Wish, notes []words.Phrase, err error) {
	add := func(w draft.Wish) {
		if !slices.Contains(out, w) {
			out = append(out, w)
		}
	}
	for _, w := range s.Holding.Wishes {
		there := slices.ContainsFunc(present, func(p plan.Planting) bool { return p.ID == w.Planting })
		switch {
		case o.Alone || w.Kind == plan.Hours && o.Hours != nil:
		case w.Kind == plan.Pin && !there:
			notes = append(notes, words.P("desk.wish_gone", words.Args{"planting": w.Planting}))
		default:
			add(draft.Wish{Kind: w.Kind, Planting: w.Planting, Crop: w.Crop, Bed: w.Bed, Hours: w.Hours})
		}
	}
	for _, id := range o.Pins {
		add(draft.Wish{Kind: draft.Pin, Planting: id})
	}
	for _, f := range o.Forbids {
		c, _, err := s.Book.Find(f.Crop)
		if err != nil {
			return nil, nil, err
		}
		bed, err := namedBed(s.Holding, f.Bed)
		if err != nil {
			return nil, nil, err
		}
		add(draft.Wish{Kind: draft.Forbid, Crop: c.ID, Bed: bed})
	}
	if o.Hours != nil {
		add(draft.Wish{Kind: draft.Hours, Hours: *o.Hours})
	}
	return out, notes, nil
}
