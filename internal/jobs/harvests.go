package jobs

import (
	"math"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/plan"
)

// worthPicking is the least expected of a pick for it to be told [kg]: a helping.
// Judgement.
const worthPicking = 0.1

// aWeek is the time over which putting off is weighed [d].
const aWeek = 7

// harvests are the jobs that take a planting's food, and the planting itself, off the
// ground.
func (d *deriver) harvests(l *life) {
	if l.use.Feeds() {
		d.picks(l)
	}
	if l.ended || !l.gone.is() {
		return
	}
	if l.p.Relation != plan.Moved && d.movedOn(l) {
		return // it is lifted by the job that sets it elsewhere
	}
	switch {
	case l.lifted():
		d.lift(l)
	case !l.use.Feeds():
		d.clear(l, CutGreen, "cut_green")
	case l.use.Pattern != crop.Perennial || l.p.ClearBy.IsSet():
		d.clear(l, Clear, d.clearWhy(l))
	}
}

// movedOn tells whether a planting goes on as another.
func (d *deriver) movedOn(l *life) bool {
	for _, o := range d.lives {
		if o.p.Relation == plan.Moved && o.p.To == l.p.ID {
			return true
		}
	}
	return false
}

// picks are the turns in which a planting is picked or pulled for the table.
func (d *deriver) picks(l *life) {
	if l.ended || !l.pick.is() {
		return
	}
	every := d.every(l)
	j := begin(Pick, "", "pick:"+l.p.ID, d.stop(l.bed))
	j.Planting, j.Odds, j.Forecast = l.p.ID, l.pick.odds, !l.pick.known
	d.repeat(j, again{from: l.pick.mid, every: every, until: l.end(), done: l.picks, since: l.picked}, func(next *Job, on cal.Date) bool {
		if l.lifted() && l.liftKg >= worthLifting && l.gone.is() && max(on, d.Today)+cal.Date(every) > l.gone.mid {
			return false // it is lifted before it would be picked again
		}
		kg := l.weighs(d, max(on, d.Today), every)
		if kg < worthPicking {
			return false
		}
		next.Amount.Kg = kg
		if l.use.Pattern == crop.Pull && l.use.PieceG > 0 {
			next.Amount.Plants = math.Ceil(kg * 1000 / piece(l.use))
			*next = titled(*next, "pull", l.name)
			next.Amount.Plants = 0 // picking is counted by weight
		} else {
			*next = told(*next, l.name)
		}
		next.SpoilKg = l.spoils(max(on, d.Today))
		*next = why(*next, l.pickWhy(), on)
		return true
	})
}

// piece is the usual weight of what is pulled at the table [g].
func piece(u *crop.Use) float64 {
	if u.TableG > 0 {
		return u.TableG
	}
	return u.PieceG
}

// pickWhy is the reason for a pick by how the crop is harvested.
func (l *life) pickWhy() string {
	switch l.use.Pattern {
	case crop.Pull:
		return "eaten"
	case crop.Picking:
		return "ripening"
	}
	return "grown"
}

// every is how often a planting is picked [d].
func (d *deriver) every(l *life) int {
	for _, r := range d.facts.picks {
		if names(r.crops, l.crop.ID, l.crop.Family) && names(r.groups, l.use.Group) && names(r.patterns, string(l.use.Pattern)) {
			return r.every
		}
	}
	return aWeek
}

// weighs is what a pick is expected to weigh: what comes ready until the next one, or
// of what stands, what is eaten of it [kg].
func (l *life) weighs(d *deriver, on cal.Date, every int) float64 {
	grown := l.food.between(on, on+cal.Date(every))
	if l.flows && l.use.Pattern != crop.LeafThenHead {
		return grown
	}
	week := int(on-d.Table.From) / aWeek
	if fresh := d.fresh[l.p.ID]; on >= d.Table.From && week < len(fresh) {
		return math.Max(grown, fresh[week]*float64(every)/aWeek)
	}
	return grown
}

// spoils is the share of a week's flow that is past its best a week on [kg].
func (l *life) spoils(on cal.Date) float64 {
	if !l.flows {
		return 0
	}
	return l.food.between(on, on+aWeek) * math.Max(0, 1-l.use.HoldDays/aWeek)
}

// lift takes up what goes into a store.
func (d *deriver) lift(l *life) {
	j := begin(Lift, "", "lift:"+l.p.ID, d.stop(l.bed))
	j.Planting, j.Store = l.p.ID, l.p.Store
	j.Amount.M2 = l.p.AreaM2
	if l.liftKg < worthLifting { // it is eaten by then
		j.Kind, j.Store = Clear, ""
		d.once(why(told(d.day(d.ending(j, l), l.gone.mid), l.name), d.clearWhy(l), l.freeBy()))
		return
	}
	j.Amount.Kg = l.liftKg
	best, reason := l.gone.mid, "lift"
	if hard := d.hardNight(l); hard.IsSet() && hard < best {
		best, reason = hard, "hard_night"
	}
	j = d.day(d.ending(j, l), best)
	if l.ready.is() {
		j.First = min(j.Best, max(j.First, l.ready.mid))
	}
	if l.p.ClearBy.IsSet() {
		j.Last = max(j.Best, min(j.Last, l.p.ClearBy+d.kinds[Lift].after))
	}
	if reason == "hard_night" {
		j.Last = j.Best
	}
	d.once(why(told(j, l.name), reason, j.Best))
}

// clear frees the ground.
func (d *deriver) clear(l *life, kind Kind, reason string) {
	j := begin(kind, "", string(kind)+":"+l.p.ID, d.stop(l.bed))
	j.Planting, j.Amount.M2 = l.p.ID, l.p.AreaM2
	d.once(why(told(d.day(d.ending(j, l), l.gone.mid), l.name), reason, l.freeBy()))
}

// freeBy is the day by which the ground is to be free, or is likely to be.
func (l *life) freeBy() cal.Date {
	if l.p.ClearBy.IsSet() && l.gone.mid+1 >= l.p.ClearBy {
		return l.p.ClearBy
	}
	return l.gone.mid
}

// ending tells whether the end is planned or a forecast.
func (d *deriver) ending(j Job, l *life) Job {
	if l.gone.known || l.p.ClearBy.IsSet() && l.gone.mid+1 >= l.p.ClearBy {
		return j
	}
	j.Forecast, j.Odds = true, l.gone.odds
	return j
}

// clearWhy is why ground is cleared: something follows on it, or it is over.
func (d *deriver) clearWhy(l *life) string {
	for _, o := range d.lives {
		if o.p.Relation == plan.After && o.p.To == l.p.ID {
			return "wanted"
		}
	}
	if l.p.ClearBy.IsSet() && l.gone.mid+1 >= l.p.ClearBy {
		return "clear_by"
	}
	return "over"
}
