package draft

import (
	"math"
	"sort"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/outlook"
	"garner/internal/plan"
	"garner/internal/programme"
	"garner/internal/season"
)

// profile is what a square metre of one sowing gives when it is cleared on one day
// and kept in one way.
type profile struct {
	use    *crop.Use
	crop   *crop.Crop
	method plan.Method
	week   int // in which it goes in
	free   int // first day on which its ground is free, counted from the table's first
	store  *keeping
	lots   [][]programme.Lot // by future [kg/m2]
	odds   float64
	waits  bool        // in the ground until it is taken
	under  cover.Spell // the cover it stands under for a time; no kind: none beside those that lie as planned
}

// outcome is how a sowing fares under one future, in days from the table's first.
type outcome struct {
	ready, gone   int // gone: first day it is over; no end within the table: its days
	standingFrom  int
	flowFrom      int
	standing, off []float32
}

func outcomeOf(o *season.Outcome, first, from cal.Date, days int) outcome {
	shift := int(first - from)
	out := outcome{ready: -1, gone: days, standing: o.Standing, off: o.Flow}
	if o.Ready >= 0 {
		out.ready = o.Ready + shift
	}
	if o.Gone >= 0 {
		out.gone = min(days, o.Gone+shift+1)
	}
	out.standingFrom, out.flowFrom = o.Ready+shift, o.First+shift
	return out
}

// lots are what a sowing gives under one future when its ground is cleared on a day
// and what is left is kept in a store, if any.
func (o *outcome) lots(u *crop.Use, clear int, k *keeping, days int) []programme.Lot {
	var out []programme.Lot
	if lot, ok := o.standingLot(clear, k, days); ok {
		out = append(out, lot)
	}
	return append(out, o.flowLots(int(u.HoldDays), clear, k, days)...)
}

// standingLot is a crop that waits in the ground: one lot, good in the weeks in most
// of which it stands, as heavy as in the middle of its time.
func (o *outcome) standingLot(clear int, k *keeping, days int) (programme.Lot, bool) {
	end := min(o.standingFrom+len(o.standing), clear)
	if len(o.standing) == 0 || end <= o.standingFrom {
		return programme.Lot{}, false
	}
	kg := float64(o.standing[(end-o.standingFrom)/2])
	until := end
	if k != nil {
		until = k.until(end)
		kg *= k.left(until - end)
	}
	return lotOf(o.standingFrom, until, kg, days)
}

// flowLots are what ripens in each week: good from its first picking until the last
// has hung as long as it holds on the plant.
func (o *outcome) flowLots(hold, clear int, k *keeping, days int) []programme.Lot {
	var out []programme.Lot
	end := min(o.flowFrom+len(o.off), clear, days)
	for day := max(0, o.flowFrom); day < end; {
		week, kg, first, last := day/7, 0.0, -1, 0
		for ; day < end && day/7 == week; day++ {
			if picked := float64(o.off[day-o.flowFrom]); picked > 0 {
				kg += picked
				last = day
				if first < 0 {
					first = day
				}
			}
		}
		until := last + hold
		if k != nil && until < days {
			in := until
			until = k.until(in)
			kg *= k.left(until - in)
		}
		if lot, ok := lotOf(first, until, kg, days); ok {
			out = append(out, lot)
		}
	}
	return out
}

// lotOf is food that is good from one day until another, in the weeks in most of
// which it is.
func lotOf(from, until int, kg float64, days int) (programme.Lot, bool) {
	weeks := days / 7
	l := programme.Lot{First: max(0, (from+3)/7), Last: weeks, Kg: kg}
	if until < days {
		l.Last = max(l.First, (until+3)/7-1)
	}
	return l, kg > 0 && l.First < weeks
}

// freeBy is the first day by which the ground is free in clearShare of the futures.
func freeBy(outs []outcome) int {
	return tail(outs, func(o *outcome) int { return o.gone })
}

func tail(outs []outcome, of func(*outcome) int) int {
	days := make([]int, len(outs))
	for i := range outs {
		days[i] = of(&outs[i])
	}
	sort.Ints(days)
	return days[int(math.Ceil(clearShare*float64(len(days))))-1]
}

// earlier is a day on which the ground may be cleared before the crop is over: soon
// after it is ready when it waits, when most is picked when it is picked over.
func earlier(outs []outcome) int {
	return tail(outs, func(o *outcome) int {
		if o.ready < 0 {
			return o.gone
		}
		day := o.ready
		if len(o.standing) > 0 {
			day = o.ready + soonDays
		}
		sum, all := 0.0, 0.0
		for _, kg := range o.off {
			all += float64(kg)
		}
		for i, kg := range o.off {
			if sum += float64(kg); sum >= mostOfIt*all {
				return max(day, o.flowFrom+i+1)
			}
		}
		return day
	})
}

// usable tells whether a square metre gave a usable crop by the last day on which it
// may come ready.
func usable(o *season.Outcome, u *crop.Use, due int) bool {
	if o.Ready < 0 || o.Ready > due || !(o.End == growth.Harvested || o.End == growth.Unfinished) {
		return false
	}
	picked, stood := 0.0, 0.0
	for _, kg := range o.Flow {
		picked += float64(kg)
	}
	for _, kg := range o.Standing {
		stood = max(stood, float64(kg))
	}
	return picked+stood >= u.FairShare*u.YieldKgM2
}

// fares tells with which odds a sowing gives a usable crop; 0 where the soil is too
// cold for it to be sown.
func (b *builder) fares(t *outlook.Tried, u *crop.Use, date cal.Date) float64 {
	warm, good := 0, 0
	due := math.MaxInt
	if last := season.Due(u, date, b.northern); last.IsSet() {
		due = int(last - t.First)
	}
	for f, o := range t.Years {
		if t.SoilC[f] >= u.SoilMinimumC {
			warm++
		}
		if usable(o, u, due) {
			good++
		}
	}
	if n := float64(len(t.Years)); n > 0 && float64(warm) >= leastWarm*n {
		return float64(good) / n
	}
	return 0
}
