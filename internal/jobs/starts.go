package jobs

import (
	"math"

	"garner/internal/cal"
	"garner/internal/plan"
	"garner/internal/words"
)

// starts are the jobs that bring a planting into its bed: raising and sowing, setting
// or planting.
func (d *deriver) starts(l *life) {
	if l.started || l.ended {
		return
	}
	if l.method == string(plan.Plant) && l.p.Date > d.Today && l.p.Relation != plan.Moved && l.use.RaiseDays > 0 && !l.unraised && !l.raised.recorded && !d.plantsOnHand(l) {
		d.raise(l)
	}
	kind := startKind(l)
	j := begin(kind, "", string(kind)+":"+l.p.ID, d.stop(l.bed))
	j.Planting = l.p.ID
	j.Amount = Amount{M2: l.p.AreaM2, RowM: l.rowM}
	switch kind {
	case Sow, SowGreen:
		j.Amount.SeedG = l.seedG()
		j.Needs = d.needs(l, "seed", j.Amount.SeedG, "g")
	case Set:
		j.Amount.Plants = l.plants // setting is counted by the piece
		j.Needs = d.needs(l, "sets", l.use.StockKg(l.method, l.p.AreaM2), "kg")
	default:
		j.Amount.Plants = l.plants
		j.Needs = d.needs(l, "plants", l.plants, "plants")
	}
	reason := "planned"
	if l.p.Relation == plan.After && kind != Set {
		reason = "follows"
	}
	j = d.until(d.day(told(j, l.name), l.p.Date), l)
	if kind == PlantOut || kind == Replant {
		d.pastFrost(&j, l)
	}
	d.begun(why(j, reason, l.p.Date))
}

// pastFrost keeps plants in until the nights are likely to spare them.
func (d *deriver) pastFrost(j *Job, l *life) {
	due := j.Due(d.Today)
	if day := d.later(l, due); day > due && day <= j.Last {
		j.Notes = append(j.Notes, words.P("jobs.moved_frost", words.Args{"date": due}))
		j.Best = day
	}
}

// begun takes in a job with which a planting begins. One that was due long ago, with
// nothing said of it, is taken for done, as the table takes it.
func (d *deriver) begun(j Job) {
	if _, put := d.answers.of(j.ID).putOff[0]; put || !d.unsaid(j.Best) {
		d.once(j)
	}
}

// leastSlack is how long a planting whose ground is wanted again may be late at the
// least [d]: what follows gives way. Judgement.
const leastSlack = 7

// until ends a job of putting a planting in on the last sensible day for it, where that
// was worked out, and so early that it is ready before its ground is wanted again.
func (d *deriver) until(j Job, l *life) Job {
	if last, told := d.lastDay(l, j.Best); told {
		j.Last, j.Reckoned = max(j.Best, last), true
	}
	if l.p.ClearBy.IsSet() && l.ready.is() {
		slack := max(leastSlack, l.p.ClearBy-1-l.ready.mid)
		j.Last = max(j.Best, min(j.Last, j.Best+slack))
	}
	return j
}

// unsaid tells whether a day lies so long ago that silence means done.
func (d *deriver) unsaid(best cal.Date) bool { return best < d.Today-longUnsaid }

// longUnsaid is how long a sowing is asked for that nobody recorded [d]. Judgement.
const longUnsaid = 28

// lastDay is the last sensible day to put a planting in, asked for where the job may be
// told at all.
func (d *deriver) lastDay(l *life, best cal.Date) (cal.Date, bool) {
	if d.LastDay == nil || best >= d.Until || d.unsaid(best) {
		return cal.None, false
	}
	return d.LastDay(&l.p)
}

// startKind is the work with which a planting comes into its bed.
func startKind(l *life) Kind {
	switch {
	case l.p.Relation == plan.Moved:
		return Replant
	case l.method == string(plan.Seed) && !l.use.Feeds():
		return SowGreen
	case l.method == string(plan.Seed):
		return Sow
	case l.method == string(plan.Set):
		return Set
	}
	return PlantOut
}

// raise sows in trays or cells what is planted out later, with some to spare for
// those that are lost.
func (d *deriver) raise(l *life) {
	j := begin(SowIndoors, "", string(SowIndoors)+":"+l.p.ID, d.elsewhere("", AtIndoors))
	j.Planting = l.p.ID
	j.Amount.Plants = math.Ceil(l.plants / (1 - math.Min(0.9, l.use.StandLoss)))
	if l.use.SeedsPerGram > 0 {
		j.Amount.SeedG = j.Amount.Plants / l.use.SeedsPerGram
	}
	j.Needs = d.needs(l, "seed", j.Amount.SeedG, "g")
	j = d.day(told(j, l.name), l.raised.mid)
	if last, told := d.lastDay(l, j.Best); told {
		j.Last, j.Reckoned = max(j.Best, last-(l.p.Date-j.Best)), true
	}
	d.begun(why(j, "raised", l.p.Date))
}

// seedG is the seed that is sown in rows [g]; 0: the book does not tell.
func (l *life) seedG() float64 {
	if l.use.SeedsPerGram <= 0 {
		return 0
	}
	return l.rowM * l.use.SowPerM / l.use.SeedsPerGram
}

// needs is what a planting takes, held against what is on hand.
func (d *deriver) needs(l *life, form string, amount float64, unit string) []Need {
	if amount <= 0 {
		return nil
	}
	n := Need{Form: form, Amount: amount, Unit: unit}
	for _, lot := range d.Holding.OnHand {
		if lot.Form != form || lot.Crop != l.p.Crop || lot.Use != "" && lot.Use != l.use.Name || lot.Variety != "" && lot.Variety != l.p.Variety {
			continue
		}
		has := lot.Amount
		if lot.Unit == "seeds" && l.use.SeedsPerGram > 0 {
			has /= l.use.SeedsPerGram
		}
		n.Lot, n.Enough = lot.ID, has >= amount
		if n.Enough {
			break
		}
	}
	return []Need{n}
}

// plantsOnHand tells whether a planting's plants are there, so that none are raised.
func (d *deriver) plantsOnHand(l *life) bool {
	n := d.needs(l, "plants", l.plants, "plants")
	return len(n) > 0 && n[0].Enough
}
