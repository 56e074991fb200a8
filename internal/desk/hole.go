package desk

import (
	"errors"
	"math"
	"sort"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/plan"
	"garner/internal/record"
	"garner/internal/space"
)

// HoleView is what an entry took from the table: the difference between the
// whole table with it and without.
type HoleView struct {
	Gaps  []OpenedGap // of which vegetables, when; the heaviest first
	Less  []LessView  // vegetables of which there is less, without more weeks short
	Freed *FreedView  // ground that came free; nil: none
}

// OpenedGap is a run of weeks that were not short before and are now, more often
// than not.
type OpenedGap struct {
	Vegetable   string
	Plural      string
	First, Last cal.Date
	Weeks       int
	Kg          float64 // more that lacks in them, mean over the futures
}

// LessView is a vegetable of which more lacks over the table, mean over the
// futures.
type LessView struct {
	Vegetable string
	Plural    string
	Kg        float64
}

// FreedView is ground that came free.
type FreedView struct {
	Bed, BedName string
	From         cal.Date // the bed has been turned round since; not before today
	AreaM2       float64
}

// leastKg is the weight under which a difference is not told.
const leastKg = 0.05

// Hole tells what an entry about a planting took from the table. An entry that
// was taken back, or over which others have been written, took nothing that can
// be told: a fault of kind Conflict.
func (o *Office) Hole(entry, planting string) (*HoleView, error) {
	e, err := o.keeper.Entry(entry)
	if err != nil {
		return nil, err
	}
	if e == nil {
		return nil, fault.New(fault.NotFound, "desk.undo_unknown", nil)
	}
	inverse := e.Inverse()
	past := fault.New(fault.Conflict, "desk.hole_past", nil)
	if e.UndoneBy != "" {
		return nil, past
	}
	var moved *Conflict
	if err := o.standsFor(inverse.Changes); errors.As(err, &moved) {
		return nil, past
	} else if err != nil {
		return nil, err
	}
	would, err := o.keeper.Would(inverse.Changes)
	if err != nil {
		return nil, err
	}
	if would.Holding == nil {
		return nil, past
	}
	was, err := o.tableWith(would.Holding)
	if err != nil {
		return nil, err
	}
	after, err := o.ask(nil)
	if err != nil {
		return nil, err
	}
	is, err := o.table(after)
	if err != nil {
		return nil, err
	}
	v := &HoleView{}
	v.compare(was, is)
	for i := range v.Gaps {
		v.Gaps[i].Plural = vegetablePlural(after.setting.Book, v.Gaps[i].Vegetable)
	}
	for i := range v.Less {
		v.Less[i].Plural = vegetablePlural(after.setting.Book, v.Less[i].Vegetable)
	}
	v.Freed, err = freed(would.Holding, was, after, planting)
	return v, err
}

// tableWith computes the table of a holding that is not the one that stands.
func (o *Office) tableWith(h *holding.Holding) (*outlook.Table, error) {
	a, err := o.askOf(&asked{holding: h, tried: true})
	if err != nil {
		return nil, err
	}
	return o.table(a)
}

// compare finds what of the second table lacks that did not in the first.
func (v *HoleView) compare(was, is *outlook.Table) {
	before := map[string]outlook.Weekly{}
	for i := range was.Vegetables {
		before[was.Vegetables[i].Name] = was.Weekly(i, false)
	}
	for i := range is.Vegetables {
		w := is.Weekly(i, false)
		b, known := before[w.Name]
		if !known || len(b.Short) != len(w.Short) {
			continue
		}
		gaps := opened(is.From, &b, &w)
		more := 0.0
		for k := range w.Short {
			more += w.Short[k] - b.Short[k]
		}
		v.Gaps = append(v.Gaps, gaps...)
		if len(gaps) == 0 && more >= leastKg {
			v.Less = append(v.Less, LessView{Vegetable: w.Name, Kg: more})
		}
	}
	sort.SliceStable(v.Gaps, func(i, k int) bool { return v.Gaps[i].Kg > v.Gaps[k].Kg })
	sort.SliceStable(v.Less, func(i, k int) bool { return v.Less[i].Kg > v.Less[k].Kg })
}

// opened lists the runs of weeks of one vegetable that are short now and were
// not.
func opened(from cal.Date, was, is *outlook.Weekly) []OpenedGap {
	var out []OpenedGap
	for k := 0; k < len(is.Want); k++ {
		if !newlyShort(was, is, k) {
			continue
		}
		g := OpenedGap{Vegetable: is.Name, First: from + cal.Date(7*k)}
		for ; k < len(is.Want) && newlyShort(was, is, k); k++ {
			g.Weeks++
			g.Kg += is.Short[k] - was.Short[k]
		}
		g.Last = from + cal.Date(7*k) - 1
		out = append(out, g)
	}
	return out
}

func newlyShort(was, is *outlook.Weekly, k int) bool {
	return outlook.LikelyShort(is, k) && !outlook.LikelyShort(was, k)
}

// freed is the ground that a planting held before and holds no more. The ground of
// one that stood under or between another is still the other's.
func freed(before *holding.Holding, was *outlook.Table, after *asked, planting string) (*FreedView, error) {
	p, known := newNamer(after).plantings[planting]
	if !known {
		return nil, nil
	}
	day := after.setting.Today
	held := heldOn(before, after.setting.Book, &p, clearedBy(before.Records, day), day)
	holds := heldOn(after.holding, after.setting.Book, &p, clearedBy(after.holding.Records, day), day)
	if held-holds < leastFreedM2 {
		return nil, nil
	}
	ground, err := space.Of(was, before, after.setting.Book, day)
	if err != nil {
		return nil, err
	}
	turnRound := 0
	if b := ground.Bed(p.Bed); b != nil {
		if h := b.Hold(planting); h != nil && h.Guest {
			return nil, nil
		}
		turnRound = b.TurnRoundD
	}
	lost := day
	if losses := lossesOf(after.holding, after.setting.Book, &p); len(losses) > 0 {
		lost = losses[len(losses)-1].On
	}
	f := &FreedView{Bed: p.Bed, BedName: p.Bed, From: day, AreaM2: math.Round((held-holds)*100) / 100}
	for _, b := range after.holding.Beds {
		if b.ID == p.Bed {
			f.BedName, f.From = b.Name, max(day, lost+cal.Date(turnRound))
		}
	}
	return f, nil
}

// leastFreedM2 is ground that is worth a word [m2].
const leastFreedM2 = 0.05

// heldOn is the ground that a planting holds on a day by what was recorded [m2],
// given what was cleared by then.
func heldOn(h *holding.Holding, b *crop.Book, p *plan.Planting, cleared map[string]bool, day cal.Date) float64 {
	if cleared[p.ID] {
		return 0
	}
	return p.AreaM2 * record.Left(lossesOf(h, b, p), day)
}

// lossesOf are the losses recorded of a planting.
func lossesOf(h *holding.Holding, b *crop.Book, p *plan.Planting) []record.Loss {
	plants := 0.0
	if _, u, err := useOf(b, p.Crop, p.Use); err == nil {
		plants = p.AreaM2 * spacedPlants(u, p)
	}
	return record.Losses(h.Records, p.ID, plants)
}
