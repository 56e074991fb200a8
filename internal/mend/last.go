package mend

import (
	"math"
	"slices"

	"garner/internal/larder"
	"garner/internal/outlook"
)

// last are what always remains: to buy, and to leave it. They are weighed as all else
// is, and told whatever they are worth.
func (w *weighing) last() ([]Proposal, error) {
	out := []Proposal{w.buy(), w.leave()}
	edits := make([]outlook.Edit, len(out))
	for i := range out {
		edits[i] = out[i].Edit
	}
	weights, err := w.adviser.Scales().Weigh(edits)
	if err != nil {
		return nil, err
	}
	w.looked += len(out)
	for i := range out {
		w.judge(&out[i], &weights[i])
		if p := &out[i]; p.Kind == Buy && len(p.Edit.Buys) > 0 {
			p.Takes.BoughtKg = p.GapKg // what the table buys, which may be less than lacks
		}
	}
	return out, nil
}

// buy is that what lacks may be bought in the days of the gap, at most as much a week as
// is wanted in any week of it; nothing when no want asks for it then.
func (w *weighing) buy() Proposal {
	p := Proposal{Kind: Buy}
	p.Takes.BoughtKg = w.gap.ShortKg
	if w.wanted() {
		p.Purchase = larder.Purchase{Vegetable: w.row.weekly.Name, From: w.gap.First, To: w.gap.Last,
			KgPerWeek: math.Ceil(slices.Max(w.row.weekly.Want[w.gap.From:w.gap.From+w.gap.Weeks])*100-1e-3) / 100}
		if w.row.group != "" {
			p.Purchase.Vegetable, p.Purchase.Group = "", w.row.group
		}
		p.Edit.Buys = []larder.Purchase{p.Purchase}
	}
	return p
}

// leave is to do without in the days of the gap.
func (w *weighing) leave() Proposal {
	p := Proposal{Kind: Leave, Span: larder.GapLeft{Vegetable: w.row.weekly.Name, From: w.gap.First, To: w.gap.Last}}
	if w.row.group != "" {
		p.Span.Vegetable, p.Span.Group = "", w.row.group
	}
	p.Edit.Left = []larder.GapLeft{p.Span}
	return p
}

// wanted tells whether a want of the row asks for something on some day of the gap.
func (w *weighing) wanted() bool {
	for i := range w.holding.Wants {
		want := &w.holding.Wants[i]
		if want.Group != w.row.group || w.row.group == "" && want.Vegetable != w.row.weekly.Name || !want.Wanted() {
			continue
		}
		for d := w.gap.First; d <= w.gap.Last; d++ {
			if want.InSeason(d) {
				return true
			}
		}
	}
	return false
}
