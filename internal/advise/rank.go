package advise

import (
	"sort"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/outlook"
	"garner/internal/plan"
	"garner/internal/soilcare"
)

// Advice is what a space could be used for.
type Advice struct {
	Space      Space
	Candidates []Candidate      // the most worth first; those that clash with the rotation last
	Offers     []soilcare.Offer // to cover the ground where nothing for the table is worth it, or beside it
	Tried      int              // uses that were looked at
}

// weighedUses is how many uses go to the second stage, and leastWorth what a
// candidate must be worth to be told [kg].
const (
	weighedUses = 80
	leastWorth  = 0.02
)

// Rank ranks what could be put into a space.
func (a *Adviser) Rank(s Space) (*Advice, error) {
	ways, err := a.screen(a.ways(s, startDays(&s, a.Table.End())))
	if err != nil {
		return nil, err
	}
	out := &Advice{Space: s, Tried: a.usesTried()}
	if out.Candidates, err = a.weigh(shortlist(ways)); err != nil {
		return nil, err
	}
	return out, a.finish(out)
}

func (a *Adviser) usesTried() int {
	n := 0
	a.eachUse(func(*crop.Crop, *crop.Use) { n++ })
	return n
}

// shortlist takes the best way of each use, and where they come near it the first
// possible one and the best one that is sown.
func shortlist(ways []way) []way {
	type pick struct{ best, first, sown int }
	picks := map[string]*pick{}
	var order []*pick
	for i := range ways { // the best first
		w := &ways[i]
		p := picks[key(w.use)]
		switch {
		case p == nil && len(order) == weighedUses:
			continue
		case p == nil:
			p = &pick{i, i, -1}
			picks[key(w.use)] = p
			order = append(order, p)
		case w.guess < nearly*ways[p.best].guess:
			continue
		case w.planting.Date < ways[p.first].planting.Date:
			p.first = i
		}
		if p.sown < 0 && w.planting.Method == plan.Seed {
			p.sown = i
		}
	}
	var out []way
	for _, p := range order {
		out = append(out, ways[p.best])
		if p.first != p.best {
			out = append(out, ways[p.first])
		}
		if p.sown >= 0 && p.sown != p.best && p.sown != p.first {
			out = append(out, ways[p.sown])
		}
	}
	return out
}

// nearly is the share of the best estimate from which another way is weighed as
// well; sowing is less work than raising plants, and is taken for that share of
// the worth.
const (
	nearly = 0.85
	easier = 0.93 // judgement
)

// weigh weighs ways exactly and keeps the best of each use.
func (a *Adviser) weigh(ways []way) ([]Candidate, error) {
	edits := make([]outlook.Edit, len(ways))
	for i := range ways {
		edits[i].Set = []plan.Planting{ways[i].planting}
	}
	weights, err := a.scales.Weigh(edits)
	if err != nil {
		return nil, err
	}
	at := map[string]int{}
	var out []Candidate
	for i := range ways {
		c := a.candidate(&ways[i], &weights[i])
		if c.DropKg < leastWorth || c.Odds < leastOdds {
			continue
		}
		k := key(ways[i].use) + ways[i].lotID()
		n, known := at[k]
		switch {
		case !known:
			at[k] = len(out)
			out = append(out, c)
		case c.preferred() > out[n].preferred():
			out[n] = c
		}
	}
	sort.SliceStable(out, func(i, k int) bool { return before(&out[i], &out[k]) })
	return out, nil
}

// preferred is the worth by which one way of a use is chosen over another.
func (c *Candidate) preferred() float64 {
	if c.Planting.Method == plan.Plant && (c.Lot == nil || c.Lot.Form != plantForm) {
		return easier * c.DropKg
	}
	return c.DropKg
}

// before orders candidates: those without a clash first, then by worth.
func before(x, y *Candidate) bool {
	if (x.Clash == nil) != (y.Clash == nil) {
		return x.Clash == nil
	}
	return x.DropKg > y.DropKg
}

// finish tells the last days, the reasons and what else the ground could have.
func (a *Adviser) finish(out *Advice) error {
	shown := out.Candidates
	if err := a.lastDays(shown, out.Space); err != nil {
		return err
	}
	for i := range shown {
		if a.Remarks != nil {
			shown[i].Remarks = a.Remarks(&shown[i].Planting)
		}
		shown[i].Reason = shown[i].reason()
	}
	var err error
	out.Offers, err = soilcare.Bare(a.book, out.Space.From, out.Space.Until, !a.northern(out.Space.Bed))
	return err
}

// How finely the last sensible day is looked for.
const (
	lastYears = 24
	lastStep  = 7  // [d]
	lastFar   = 98 // how far after the best day it is looked for [d]
)

// lastDays looks for the last sensible day of each candidate.
func (a *Adviser) lastDays(list []Candidate, s Space) error {
	var plantings []plan.Planting
	for i := range list {
		for _, d := range a.later(&list[i], s) {
			p := list[i].Planting
			p.Date = d
			plantings = append(plantings, p)
		}
	}
	tried, err := a.scales.Try(s.Bed, plantings, lastYears)
	if err != nil {
		return err
	}
	for i := range list {
		days := a.later(&list[i], s)
		odds := make([]float64, len(days))
		for k := range days {
			p := list[i].Planting
			p.Date = days[k]
			odds[k] = a.oddsOf(&tried[k].Fate, list[i].Use, &p)
		}
		list[i].Last = max(lastDay(days, odds), list[i].Planting.Date)
		tried = tried[len(days):]
	}
	return nil
}

// later are the days on which a candidate could still go in.
func (a *Adviser) later(c *Candidate, s Space) []cal.Date {
	last := min(c.Planting.Date+lastFar, a.Table.End()-leastDays)
	if s.Until.IsSet() {
		last = min(last, s.Until-leastDays)
	}
	out := []cal.Date{c.Planting.Date}
	for d := c.Planting.Date + lastStep; d <= last && a.started(s.Bed, c.Use, c.Planting.Method, d); d += lastStep {
		out = append(out, d)
	}
	return out
}
