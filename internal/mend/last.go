package mend

import (
	"math"

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
		if p := &out[i]; p.Kind == Buy && p.Want.ID != "" {
			p.Takes.BoughtKg = p.GapKg // in the weeks that lack more than the mean, not all of it
		}
	}
	return out, nil
}

// buy is that what lacks may be bought: the want of the gap's days takes so much more
// a week as lacks in a mean week of the gap.
func (w *weighing) buy() Proposal {
	p := Proposal{Kind: Buy}
	p.Takes.BoughtKg = w.gap.ShortKg
	if want := w.wanted(); want != nil {
		p.Want = *want
		p.Want.BuyKgPerWeek = math.Ceil((want.BuyKgPerWeek+w.gap.ShortKg/float64(w.gap.Weeks))*100-1e-6) / 100
		p.Edit.Wants = []larder.Want{p.Want}
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

// wanted is the want of the row that asks for something on most days of the gap; nil
// when there is none.
func (w *weighing) wanted() *larder.Want {
	var found *larder.Want
	most := 0
	for i := range w.holding.Wants {
		want := &w.holding.Wants[i]
		if want.Group != w.row.group || w.row.group == "" && want.Vegetable != w.row.weekly.Name || !want.Wanted() {
			continue
		}
		days := 0
		for d := w.gap.First; d <= w.gap.Last; d++ {
			if want.InSeason(d) {
				days++
			}
		}
		if days > most {
			found, most = want, days
		}
	}
	return found
}
