package desk

import (
	"strconv"
	"time"

	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/mend"
	"garner/internal/outlook"
	"garner/internal/plan"
	"garner/internal/words"
)

// MendView is a gap of a vegetable and what could be done about it.
type MendView struct {
	Vegetable, Plural string
	Today             cal.Date
	Gaps              []MendGap // in order of time
	At                int       // index of the gap that is answered; -1: there is none, or none from On on
	On                cal.Date  // the day asked about; None or zero: none
	Lines             []MendLine
	Years             int // of weather
	Looked            int // changes that were weighed
}

// MendGap is a run of weeks that are short more often than not.
type MendGap struct {
	First, Last cal.Date
	Weeks       int
	ShortKg     float64 // all that lacks in them
	Chance      float64 // mean chance of a week being short
}

// MendLine is one proposal.
type MendLine struct {
	Kind         string // as in package mend
	Title        words.Phrase
	Planting     string // id; of a cover, one that it helps
	Bed          string // id; empty: in none
	Crop, Use    string
	Method       string
	Date         cal.Date // on which it begins; None: it is of no day
	AreaM2       float64  // of the planting
	GapKg        float64  // less is short in the gap
	DropKg       float64  // less is short over the whole table
	Elsewhere    []LessView
	Weeks        int     // of the gap that are short no more
	Short        float64 // chance of a week of it being short as it stands
	Left         float64 // and with the proposal
	Odds         float64 // of a usable crop; 0: not asked
	Takes        mend.Takes
	BuyKgPerWeek float64        // that may be bought then, of Buy
	Does         []words.Phrase // what it does, in sentences
	Costs        []words.Phrase // what it takes, in parts of a sentence
	Reason       *words.Phrase  // of a sowing, with its last day; nil: none
	Remarks      []words.Phrase // what else should be said of a sowing
	Warning      *words.Phrase
	Try          []plan.Change // that make it; empty: no want asks for what would be bought
}

// None says that there is no gap, or that all lie before the day asked about.
func (v *MendView) None() words.Phrase {
	if len(v.Gaps) > 0 {
		return words.P("desk.mend_none_from", words.Args{"vegetable": v.Plural, "on": v.On})
	}
	return words.P("desk.mend_none", words.Args{"vegetable": v.Plural})
}

// Remains tells whether a proposal is one of those that always remain: to buy, and to
// leave it.
func (l *MendLine) Remains() bool {
	return mend.Kind(l.Kind) == mend.Buy || mend.Kind(l.Kind) == mend.Leave
}

// MendView looks for what would mend a gap of a vegetable: the one on a day, or the
// next; without a day the one in which most lacks.
func (o *Office) MendView(vegetable string, on cal.Date, try []plan.Change) (*MendView, error) {
	return o.MendViewWithin(vegetable, on, try, forEver)
}

// MendViewWithin is MendView for somebody who waits so long and no longer: the view
// is nil when it is still being worked out then, and found the next time.
func (o *Office) MendViewWithin(vegetable string, on cal.Date, try []plan.Change, patience time.Duration) (*MendView, error) {
	a, err := o.ask(try)
	if err != nil {
		return nil, err
	}
	d := a.answer("mend 1")
	d.Text(vegetable)
	d.Int(int64(on))
	key := d.Sum()
	if v, known := o.views.mends.get(key); known {
		return v, nil
	}
	v, _, err := weighed(o, key, patience, func() (*MendView, error) {
		adviser, err := o.adviser(a)
		if err != nil {
			return nil, err
		}
		v, err := mendView(a, mend.New(adviser, a.holding, a.setting.Book), vegetable, on)
		if err == nil {
			o.views.mends.keep(key, v)
		}
		return v, err
	})
	return v, err
}

func mendView(a *asked, m *mend.Mender, vegetable string, on cal.Date) (*MendView, error) {
	r, err := m.Mend(question(a.holding, vegetable, on))
	if fault.KindOf(err) == fault.NotFound {
		return nil, notAtTable(a.setting.Book, vegetable)
	}
	if err != nil {
		return nil, err
	}
	v := &MendView{Vegetable: vegetable, Plural: vegetablePlural(a.setting.Book, vegetable), Today: a.setting.Today, At: r.At, On: on,
		Years: a.setting.Years, Looked: r.Looked}
	for i := range r.Gaps {
		v.Gaps = append(v.Gaps, mendGap(&r.Gaps[i]))
	}
	n := newNamer(a)
	for i := range r.Proposals {
		v.Lines = append(v.Lines, n.mendLine(&r.Proposals[i], v))
	}
	return v, nil
}

// question asks for a row of the table: one that a group's members fill, or a
// vegetable's own.
func question(h *holding.Holding, name string, on cal.Date) mend.Question {
	q := mend.Question{Vegetable: name, Feeds: feeds(h, name), On: on}
	if g := groupNamed(h, name); g != nil {
		q.Group = g.ID
	}
	return q
}

func mendGap(g *outlook.Gap) MendGap {
	return MendGap{First: g.First, Last: g.Last, Weeks: g.Weeks, ShortKg: g.ShortKg, Chance: g.Chance}
}

func (n *namer) mendLine(p *mend.Proposal, v *MendView) MendLine {
	g := &v.Gaps[v.At]
	l := MendLine{Kind: string(p.Kind), Title: n.mendTitle(p), Planting: p.Planting.ID, Bed: p.Planting.Bed, Crop: p.Planting.Crop,
		Use: p.Planting.Use, Method: string(p.Planting.Method), Date: cal.None, AreaM2: p.Planting.AreaM2, GapKg: p.GapKg, DropKg: p.DropKg,
		Weeks: p.Weeks, Short: p.Short, Left: p.Left, Odds: p.Odds, Takes: p.Takes, Warning: p.Warning, Try: tryMend(p, v.Vegetable), BuyKgPerWeek: p.Purchase.KgPerWeek}
	switch p.Kind {
	case mend.Buy, mend.Leave:
	case mend.Cover:
		l.Date = p.Spell.On
	default:
		l.Date = p.Planting.Date
	}
	for _, c := range p.Elsewhere {
		l.Elsewhere = append(l.Elsewhere, LessView{Vegetable: c.Vegetable, Plural: vegetablePlural(n.a.setting.Book, c.Vegetable), Kg: c.Kg})
	}
	l.Does, l.Costs = mendDoes(&l, g), mendCosts(&l)
	if p.Candidate != nil {
		l.Reason, l.Remarks = &p.Candidate.Reason, p.Candidate.Remarks
		if len(p.Alike) > 0 {
			var beds []string
			for _, bed := range p.Alike {
				beds = append(beds, n.bed(bed))
			}
			l.Does = append(l.Does, words.P("desk.mend_alike", words.Args{"beds": beds}))
		}
		switch c := p.Candidate; {
		case c.Lot != nil && c.Enough:
			l.Does = append(l.Does, words.P("desk.mend_lot_enough", nil))
		case c.Lot != nil:
			l.Does = append(l.Does, words.P("desk.mend_lot_some", nil))
		}
	}
	return l
}

// tryMend is a proposal as changes of the plan that can be tried and kept.
func tryMend(p *mend.Proposal, vegetable string) []plan.Change {
	set := func(field string) []plan.Change {
		return []plan.Change{{Action: "set", Planting: p.Planting.ID, Field: field, Value: plantingCells(&p.Planting)[field]}}
	}
	switch p.Kind {
	case mend.Sow:
		return []plan.Change{addedBy(plantingCells(&p.Planting))}
	case mend.Cover:
		return []plan.Change{{Action: CoverAction, Planting: p.Planting.ID, Value: WriteCover(p.Spell.Spell)}}
	case mend.Store:
		return set("store")
	case mend.Enlarge:
		return set("area_m2")
	case mend.Shift:
		return set("date")
	case mend.Leave:
		return []plan.Change{{Action: LeaveAction, Planting: vegetable, Field: p.Span.From.String(), Value: WriteSpan(p.Span.From, p.Span.To)}}
	case mend.Buy:
		if p.Purchase.KgPerWeek > 0 {
			return []plan.Change{{Action: BuyAction, Planting: vegetable, Field: p.Purchase.From.String(), Value: WriteBuy(p.Purchase)}}
		}
	}
	return nil
}

// areaCell writes an area as a cell of a row.
func areaCell(m2 float64) string { return strconv.FormatFloat(m2, 'f', -1, 64) }
