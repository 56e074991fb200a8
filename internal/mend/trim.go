package mend

import (
	"sort"

	"garner/internal/advise"
	"garner/internal/cal"
	"garner/internal/outlook"
	"garner/internal/plan"
	"garner/internal/space"
)

// Glut is what of a vegetable cannot be used, and which sowings could be smaller.
type Glut struct {
	Vegetable string
	OverKg    float64 // that goes over in the table, mean over the futures [kg]
	Trims     []Trim  // the best first
}

// Trim is one sowing made smaller or dropped.
type Trim struct {
	Edit     outlook.Edit
	Planting plan.Planting     // as it stands
	AreaM2   float64           // ground it keeps; 0: it is dropped
	FreedM2  float64           // ground that comes free
	Until    cal.Date          // to which the ground is free then; None: open
	OverKg   float64           // by how much less goes over [kg]
	LossKg   float64           // by how much more is short over the whole table, all vegetables [kg]
	Next     *advise.Candidate // the best other crop for the ground, its worth on top of the trim; nil: none is worth it
}

// Gain is what a trim comes to at the table with what takes its place [kg of
// shortage].
func (t *Trim) Gain() float64 {
	if t.Next == nil {
		return -t.LossKg
	}
	return t.Next.DropKg - t.LossKg
}

// What a trim may cost, and how many are told.
const (
	leastOver = 0.3  // less that goes over, to be worth a word [kg]
	mostLoss  = 0.15 // more that is short, as a share of the less that goes over. judgement
	mostTrims = 5
)

// keptShares are the shares of its ground that a sowing keeps; at none it is
// dropped.
var keptShares = []float64{0, 0.5, 0.75}

// Trim looks for the sowings to come of a vegetable that could be smaller without
// much loss, and for what the ground could give instead.
func (m *Mender) Trim(q Question) (*Glut, error) {
	r, err := m.row(&q)
	if err != nil {
		return nil, err
	}
	out := &Glut{Vegetable: q.Vegetable}
	for _, kg := range r.weekly.Over {
		out.OverKg += kg
	}
	w := &weighing{Mender: m, row: r}
	list := w.trims()
	edits := make([]outlook.Edit, len(list))
	for i := range list {
		edits[i] = list[i].Edit
	}
	weights, err := m.adviser.Scales().Weigh(edits)
	if err != nil {
		return nil, err
	}
	for i := range list {
		list[i].judge(&weights[i], r.weekly.Name)
	}
	out.Trims = bestTrims(list)
	if err := w.fill(out.Trims); err != nil {
		return nil, err
	}
	sort.SliceStable(out.Trims, func(i, k int) bool { return out.Trims[i].Gain() > out.Trims[k].Gain() })
	return out, nil
}

// trims are the sowings to come, each smaller by several shares.
func (w *weighing) trims() []Trim {
	var out []Trim
	plantings, _ := w.feeding()
	for _, p := range plantings {
		bed, h := w.toCome(&p)
		if h == nil || w.carries(p.ID) {
			continue
		}
		for _, share := range keptShares {
			t := Trim{Planting: p, AreaM2: rounded(share * p.AreaM2), Until: heldAgain(bed, h)}
			if share > 0 && t.AreaM2 == 0 {
				continue // too small to be made smaller
			}
			t.FreedM2 = rounded(p.AreaM2 - t.AreaM2)
			if smaller := p; share > 0 {
				smaller.AreaM2 = t.AreaM2
				t.Edit.Set = []plan.Planting{smaller}
			} else {
				t.Edit.Remove = []string{p.ID}
			}
			out = append(out, t)
		}
	}
	return out
}

// carries tells whether another planting stands under, between or after one, or is
// lifted from it.
func (w *weighing) carries(id string) bool {
	for _, p := range w.adviser.Scales().Plantings() {
		if p.To == id {
			return true
		}
	}
	return false
}

// heldAgain is the day on which another planting goes in where one stood; None when
// none does within the table.
func heldAgain(bed *space.Bed, h *space.Hold) cal.Date {
	day := cal.None
	for i := range bed.Holds {
		o := &bed.Holds[i]
		if o.Planting == h.Planting || o.Guest || o.From <= h.From || !space.Meet(h.Pieces, o.Pieces) {
			continue
		}
		if !day.IsSet() || o.From < day {
			day = o.From
		}
	}
	return day
}

func (t *Trim) judge(weight *outlook.Weight, vegetable string) {
	t.LossKg = max(0, -weight.DropKg)
	for i := range weight.Drops {
		if d := &weight.Drops[i]; d.Vegetable == vegetable {
			t.OverKg = d.OverKg
		}
	}
}

// bestTrims keeps of each sowing the cut that saves most at a fair loss, and of all
// the best few.
func bestTrims(list []Trim) []Trim {
	at := map[string]int{}
	var out []Trim
	for _, t := range list {
		if t.OverKg < leastOver || t.LossKg > mostLoss*t.OverKg {
			continue
		}
		k, known := at[t.Planting.ID]
		switch {
		case !known:
			at[t.Planting.ID] = len(out)
			out = append(out, t)
		case t.saves() > out[k].saves():
			out[k] = t
		}
	}
	sort.SliceStable(out, func(i, k int) bool { return out[i].saves() > out[k].saves() })
	return out[:min(len(out), mostTrims)]
}

// saves is what no longer goes over, less what is lost.
func (t *Trim) saves() float64 { return t.OverKg - t.LossKg }

// fill looks for what the ground of trims could give instead.
func (w *weighing) fill(list []Trim) error {
	for i := range list {
		t := &list[i]
		s := advise.Space{Bed: t.Planting.Bed, From: t.Planting.Date, Until: t.Until, AreaM2: t.FreedM2}
		if s.AreaM2 < leastM2 || s.Until.IsSet() && s.Until-s.From < leastDays || s.From >= w.adviser.Table.End()-leastDays {
			continue
		}
		found, err := w.adviser.Instead(t.Edit, w.row.weekly.Name, s)
		if err != nil {
			return err
		}
		if len(found) == 0 {
			continue
		}
		t.Next = &found[0]
		if err := w.adviser.Tell(t.Next, s); err != nil {
			return err
		}
	}
	return nil
}
