package desk

import (
	"time"

	"garner/internal/advise"
	"garner/internal/cal"
	"garner/internal/plan"
	"garner/internal/words"
)

// KeepOrClearView sets leaving a standing planting against clearing it.
type KeepOrClearView struct {
	Planting, Name string
	Bed, BedName   string
	AreaM2         float64
	Version        int64 // of the planting's row
	Today          cal.Date
	Until          cal.Date // the ground is held again from here on; None: open
	Weeks          []ClearWeek
	Best           int
	Next           *CandidateView // the best follow-on from the best week; nil: none is worth it
	Says           words.Phrase
}

// ClearWeek is clearing in one week: what leaving it until then gives, against
// clearing it at once, and what the best follow-on from then gives on top [kg of
// shortage].
type ClearWeek struct {
	Clear                   cal.Date
	KeepKg, NextKg, TotalKg float64
	Next                    string // name of the follow-on; empty: none is worth it
	NextDate                cal.Date
}

// KeepOrClearView answers for a planting that stands today.
func (o *Office) KeepOrClearView(id string, try []plan.Change) (*KeepOrClearView, error) {
	return o.KeepOrClearViewWithin(id, try, forEver)
}

// KeepOrClearViewWithin is KeepOrClearView for somebody who waits so long and no
// longer: the view is nil when it is still being worked out then.
func (o *Office) KeepOrClearViewWithin(id string, try []plan.Change, patience time.Duration) (*KeepOrClearView, error) {
	a, err := o.ask(try)
	if err != nil {
		return nil, err
	}
	d := a.answer("keep or clear")
	d.Text(id)
	key := d.Sum()
	if v, known := o.views.choices.get(key); known {
		return v, nil
	}
	v, _, err := weighed(o, key, patience, func() (*KeepOrClearView, error) {
		adviser, err := o.adviser(a)
		if err != nil {
			return nil, err
		}
		v, err := keepView(a, adviser, id)
		if err != nil {
			return nil, err
		}
		if row, version, err := o.keeper.Row("plantings", id); err == nil && row != nil {
			v.Version = version
		}
		o.views.choices.keep(key, v)
		return v, nil
	})
	return v, err
}

// ClearBy gives a planting the day by which its ground must be free, in one entry.
// Over a draft it becomes a step of it, and the plan below stays as it is.
func (o *Office) ClearBy(by Author, planting string, day cal.Date, base int64) (*KeptEntry, error) {
	h, err := o.Holding()
	if err != nil {
		return nil, err
	}
	draft, err := draftInForce(h)
	if err != nil {
		return nil, err
	}
	if draft {
		return o.keepTry(by, []plan.Change{{Action: "set", Planting: planting, Field: "clear_by", Value: day.String()}})
	}
	return o.Save(by, "plantings", planting, map[string]string{"clear_by": day.String()}, base)
}

func keepView(a *asked, adviser *advise.Adviser, id string) (*KeepOrClearView, error) {
	c, err := adviser.KeepOrClear(id)
	if err != nil {
		return nil, err
	}
	n := newNamer(a)
	v := &KeepOrClearView{Planting: id, Name: n.planting(id), Bed: c.Bed, BedName: n.bed(c.Bed), AreaM2: c.AreaM2, Today: adviser.Today,
		Until: c.Until, Best: c.Best, Says: c.Reason}
	for _, w := range c.Weeks {
		week := ClearWeek{Clear: w.Clear, KeepKg: w.KeepKg, NextKg: w.NextKg, TotalKg: w.TotalKg, NextDate: w.NextDate}
		if w.NextCrop != "" {
			week.Next = n.use(w.NextCrop, w.NextUse)
		}
		v.Weeks = append(v.Weeks, week)
	}
	if c.Next != nil {
		next := candidateView(n, c.Next)
		v.Next = &next
	}
	return v, nil
}
