package pairing

import (
	"garner/internal/cal"
	"garner/internal/outlook"
	"garner/internal/plan"
	"garner/internal/season"
)

// Question is a pair of plantings on the same ground, and what may be done about
// it.
type Question struct {
	Table   *outlook.Table
	Upper   *plan.Planting // on whose ground the other stands
	Lower   *plan.Planting // stands under or between the upper
	Futures int            // how many of the table's to look at

	StripOn    cal.Date // day the upper's lower leaves would come off; None: not asked
	StripShare float64  // share of its leaf, 0-1
	ClearOn    cal.Date // day by which the upper would be cleared; None: not asked
}

// Answer is how a pair fares.
type Answer struct {
	Upper, Lower Side
	Ratio        float64 // land equivalent ratio per ground; 0: neither gives anything alone
	Weeks        []Week  // while either has leaf
	Stripped     *Offer
	Cleared      *Offer
}

// Side is one of the two, together and alone on the same ground.
type Side struct {
	Kg, AloneKg       float64 // mean over the futures
	Ready, AloneReady When
	Share             float64 // of its yield alone; 0 when it gives nothing alone
}

// When is a day over the futures.
type When struct {
	Middle cal.Date // None when it comes to it in fewer than half of the futures
	Odds   float64  // share of the futures in which it comes to it
}

// Week is the state of both in a week, mean over the futures.
type Week struct {
	Monday       cal.Date
	Upper, Lower float64 // cover of their own ground, 0-1
	Light        float64 // share of the bed's light at the lower's leaves, 0-1
	Poor, Good   float64 // the same in the tenth darkest and tenth brightest future
	Lit          bool    // the lower has leaf, so that Light is known
}

// Offer is what doing something to the upper crop gives.
type Offer struct {
	On         cal.Date
	UpperKg    float64 // more than without; negative less
	LowerKg    float64
	LowerReady When
	Sooner     int // the lower is ready so many days sooner than without; negative later
	Ratio      float64
}

// The variants of the bed.
const (
	together = iota
	lowerAlone
	upperAlone
	leafKept // the upper keeps its lower leaves, whatever is planned
	leafOff
	upperGone
	variants
)

// Ask works out how a pair fares.
func Ask(q Question) (*Answer, error) {
	watch := newWeeks(q)
	asked := make([]outlook.Variant, variants)
	asked[together].See = watch.see
	asked[lowerAlone].Change = q.without(q.Upper.ID)
	// Alone nobody would take its lower leaves off.
	keeps := q.upper(func(p *season.Planting) { p.Strips = nil })
	leaves := q.without(q.Lower.ID)
	asked[upperAlone].Change = func(planting string, p *season.Planting) {
		keeps(planting, p)
		leaves(planting, p)
	}
	asked[leafKept].Change = keeps
	asked[leafOff].Change = q.upper(func(p *season.Planting) { p.Strips = []season.Strip{{On: q.StripOn, Share: q.StripShare}} })
	asked[upperGone].Change = q.upper(func(p *season.Planting) {
		if !p.ClearBy.IsSet() || q.ClearOn < p.ClearBy {
			p.ClearBy = q.ClearOn
		}
	})
	fates, err := q.Table.Variants(q.Lower.Bed, q.Futures, asked)
	if err != nil {
		return nil, err
	}
	a := &Answer{Weeks: watch.weeks()}
	a.Upper = sideOf(fateOf(fates[together], q.Upper.ID), fateOf(fates[upperAlone], q.Upper.ID))
	a.Lower = sideOf(fateOf(fates[together], q.Lower.ID), fateOf(fates[lowerAlone], q.Lower.ID))
	a.Ratio = q.ratio(a.Upper.Share, a.Lower.Share)
	if q.StripOn.IsSet() {
		a.Stripped = q.offer(a, fates[leafKept], fates[leafOff], q.StripOn)
	}
	if q.ClearOn.IsSet() {
		a.Cleared = q.offer(a, fates[together], fates[upperGone], q.ClearOn)
	}
	return a, nil
}

func (q *Question) without(id string) func(string, *season.Planting) {
	return func(planting string, p *season.Planting) {
		if planting == id {
			outlook.Leave(p)
		}
	}
}

// upper changes the upper planting alone.
func (q *Question) upper(change func(*season.Planting)) func(string, *season.Planting) {
	return func(planting string, p *season.Planting) {
		if planting == q.Upper.ID {
			change(p)
		}
	}
}

// ratio is the ground that the two would need apart for what they give, by the
// ground they hold together (the land equivalent ratio when both hold the same).
func (q *Question) ratio(upper, lower float64) float64 {
	held := max(q.Upper.AreaM2, q.Lower.AreaM2)
	if held <= 0 {
		return 0
	}
	return (upper*q.Upper.AreaM2 + lower*q.Lower.AreaM2) / held
}

// offer is what one way gives over another.
func (q *Question) offer(a *Answer, without, with []outlook.Fate, on cal.Date) *Offer {
	before, after := fateOf(without, q.Lower.ID), fateOf(with, q.Lower.ID)
	upper := meanKg(fateOf(with, q.Upper.ID))
	return &Offer{On: on, UpperKg: upper - meanKg(fateOf(without, q.Upper.ID)), LowerKg: meanKg(after) - meanKg(before),
		LowerReady: ready(after), Sooner: sooner(ready(before), ready(after)),
		Ratio: q.ratio(part(upper, a.Upper.AloneKg), part(meanKg(after), a.Lower.AloneKg))}
}

// sooner is by how many days a crop is ready sooner; 0 where either is not known.
func sooner(before, after When) int {
	if !before.Middle.IsSet() || !after.Middle.IsSet() {
		return 0
	}
	return int(before.Middle - after.Middle)
}
