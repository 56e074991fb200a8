package desk

import (
	"time"

	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/mend"
	"garner/internal/plan"
	"garner/internal/words"
)

// TrimView is what of a vegetable goes over, and which sowings could be smaller.
type TrimView struct {
	Vegetable, Plural string
	Today             cal.Date
	OverKg            float64 // goes over in the table
	Lines             []TrimLine
	Years             int
}

// TrimLine is one sowing made smaller or dropped.
type TrimLine struct {
	Planting string
	Title    words.Phrase
	Does     []words.Phrase
	AreaM2   float64 // ground it keeps; 0: it is dropped
	FreedM2  float64
	OverKg   float64 // less goes over
	LossKg   float64 // more is short
	Next     *CandidateView
	Then     *words.Phrase // what the ground gives instead; nil: nothing is worth it
	Try      []plan.Change // the trim alone
	TryNext  []plan.Change // with what takes its place; empty: nothing does
}

// TrimView looks for the sowings of a vegetable that could be smaller.
func (o *Office) TrimView(vegetable string, try []plan.Change) (*TrimView, error) {
	return o.TrimViewWithin(vegetable, try, forEver)
}

// TrimViewWithin is TrimView for somebody who waits so long and no longer, as
// MendViewWithin.
func (o *Office) TrimViewWithin(vegetable string, try []plan.Change, patience time.Duration) (*TrimView, error) {
	a, err := o.ask(try)
	if err != nil {
		return nil, err
	}
	d := a.answer("trim 1")
	d.Text(vegetable)
	key := d.Sum()
	if v, known := o.views.trims.get(key); known {
		return v, nil
	}
	v, _, err := weighed(o, key, patience, func() (*TrimView, error) {
		adviser, err := o.adviser(a)
		if err != nil {
			return nil, err
		}
		v, err := trimView(a, mend.New(adviser, a.holding, a.setting.Book), vegetable)
		if err == nil {
			o.views.trims.keep(key, v)
		}
		return v, err
	})
	return v, err
}

func trimView(a *asked, m *mend.Mender, vegetable string) (*TrimView, error) {
	g, err := m.Trim(mend.Question{Vegetable: vegetable})
	if fault.KindOf(err) == fault.NotFound {
		return nil, notAtTable(a.setting.Book, vegetable)
	}
	if err != nil {
		return nil, err
	}
	v := &TrimView{Vegetable: vegetable, Plural: vegetablePlural(a.setting.Book, vegetable), Today: a.setting.Today, OverKg: g.OverKg, Years: a.setting.Years}
	n := newNamer(a)
	for i := range g.Trims {
		v.Lines = append(v.Lines, n.trimLine(&g.Trims[i]))
	}
	return v, nil
}

func (n *namer) trimLine(t *mend.Trim) TrimLine {
	l := TrimLine{Planting: t.Planting.ID, AreaM2: t.AreaM2, FreedM2: t.FreedM2, OverKg: t.OverKg, LossKg: t.LossKg}
	args := words.Args{"name": n.planting(t.Planting.ID), "area": t.AreaM2, "before": t.Planting.AreaM2, "over": t.OverKg, "loss": t.LossKg}
	if t.AreaM2 > 0 {
		l.Title = words.P("desk.trim_shrink", args)
		l.Try = []plan.Change{{Action: "set", Planting: t.Planting.ID, Field: "area_m2", Value: areaCell(t.AreaM2)}}
	} else {
		l.Title = words.P("desk.trim_drop", args)
		l.Try = []plan.Change{{Action: "remove", Planting: t.Planting.ID}}
	}
	l.Does = append(l.Does, words.P("desk.trim_over", args))
	if t.LossKg >= leastKg {
		l.Does = append(l.Does, words.P("desk.trim_loss", args))
	} else {
		l.Does = append(l.Does, words.P("desk.trim_no_loss", args))
	}
	if t.Next != nil {
		next := candidateView(n, t.Next)
		l.Next = &next
		then := words.P("desk.trim_then", words.Args{"what": n.sowTitle(t.Next), "kg": t.Next.DropKg})
		l.Then = &then
		l.TryNext = append(append([]plan.Change{}, l.Try...), next.TryCandidate())
	}
	return l
}
