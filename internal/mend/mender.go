package mend

import (
	"slices"
	"sort"

	"garner/internal/advise"
	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/plan"
)

// Mender answers for one holding and its table. It may be asked from many places
// at once.
type Mender struct {
	adviser *advise.Adviser
	holding *holding.Holding
	book    *crop.Book
	today   cal.Date
}

// New makes a mender over an adviser of the same holding and book.
func New(a *advise.Adviser, h *holding.Holding, b *crop.Book) *Mender {
	return &Mender{adviser: a, holding: h, book: b, today: a.Today}
}

// What a proposal must mend of a gap to be told.
const (
	leastWorth = 0.02 // [kg]
	leastShare = 0.02 // of what lacks
)

// Mend looks for what would mend a gap.
func (m *Mender) Mend(q Question) (*Answer, error) {
	r, err := m.row(&q)
	if err != nil {
		return nil, err
	}
	out := &Answer{Vegetable: q.Vegetable, Gaps: m.adviser.Table.Gaps(&r.weekly)}
	if out.At = chosen(out.Gaps, q.On); out.At < 0 {
		return out, nil
	}
	w := &weighing{Mender: m, row: r, gap: &out.Gaps[out.At]}
	found, err := w.sowings()
	if err != nil {
		return nil, err
	}
	changed, err := w.weigh(slices.Concat(w.covers(), w.stores(), w.larger(), w.shifts()))
	if err != nil {
		return nil, err
	}
	out.Looked = w.looked
	if out.Proposals, err = w.tell(best(append(found, changed...))); err != nil {
		return nil, err
	}
	last, err := w.last()
	out.Proposals = append(out.Proposals, last...)
	return out, err
}

// weighing is one gap with what is weighed against it.
type weighing struct {
	*Mender
	row    *row
	gap    *outlook.Gap
	looked int
}

// feeding are the plantings of the plan that fill the row, with their uses.
func (w *weighing) feeding() (plantings []plan.Planting, uses []*crop.Use) {
	for _, p := range w.adviser.Scales().Plantings() {
		if u := w.useOf(&p); u != nil && u.Feeds() && w.row.fedBy(u.Vegetable) {
			plantings, uses = append(plantings, p), append(uses, u)
		}
	}
	return plantings, uses
}

// useOf is the use of a planting; nil when the book has none.
func (m *Mender) useOf(p *plan.Planting) *crop.Use {
	c, ok := m.book.Crop(p.Crop)
	if !ok {
		return nil
	}
	u, err := c.Use(p.Use)
	if err != nil {
		return nil
	}
	return u
}

// weigh weighs what is proposed and keeps what mends something of the gap.
func (w *weighing) weigh(list []Proposal) ([]Proposal, error) {
	edits := make([]outlook.Edit, len(list))
	for i := range list {
		edits[i] = list[i].Edit
	}
	weights, err := w.adviser.Scales().Weigh(edits)
	if err != nil {
		return nil, err
	}
	w.looked += len(list)
	var out []Proposal
	for i := range list {
		if p := &list[i]; w.judge(p, &weights[i]) {
			out = append(out, *p)
		}
	}
	return out, nil
}

// judge fills in what a proposal does, and tells whether it is worth a word.
func (w *weighing) judge(p *Proposal, weight *outlook.Weight) bool {
	p.DropKg, p.Short, p.Left = weight.DropKg, w.gap.Chance, w.gap.Chance
	for i := range weight.Drops {
		d := &weight.Drops[i]
		if d.Vegetable == w.row.weekly.Name {
			w.within(p, d)
		} else if d.Kg <= -leastWorth {
			p.Elsewhere = append(p.Elsewhere, Cost{d.Vegetable, -d.Kg})
		}
	}
	sort.SliceStable(p.Elsewhere, func(i, k int) bool { return p.Elsewhere[i].Kg > p.Elsewhere[k].Kg })
	for i := range weight.Fates {
		if f := &weight.Fates[i]; f.Planting == p.Planting.ID {
			w.weeksHeld(p, f)
		}
	}
	return p.score() >= max(leastWorth, leastShare*w.gap.ShortKg)
}

// within sums what a proposal does in the weeks of the gap.
func (w *weighing) within(p *Proposal, d *outlook.Drop) {
	p.Left = 0
	for k := w.gap.From; k < w.gap.From+w.gap.Weeks; k++ {
		p.GapKg += d.ByWeek[k]
		p.Left += d.Chance[k] / float64(w.gap.Weeks)
		if !outlook.Likely(d.Chance[k]) {
			p.Weeks++
		}
	}
	if outside := d.Kg - p.GapKg; outside <= -leastWorth {
		p.Elsewhere = append(p.Elsewhere, Cost{d.Vegetable, -outside})
	}
}
