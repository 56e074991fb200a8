package jobs

import (
	"math"

	"garner/internal/plan"
)

// starts are the jobs that bring a planting into its bed: raising and sowing, setting
// or planting.
func (d *deriver) starts(l *life) {
	if l.started || l.ended {
		return
	}
	if l.method == string(plan.Plant) && l.p.Relation != plan.Moved && l.use.RaiseDays > 0 && !d.plantsOnHand(l) {
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
		j.Amount.Plants = l.plants
		j.Amount.Kg = l.use.StockKg(l.method, l.p.AreaM2)
		j.Needs = d.needs(l, "sets", j.Amount.Kg, "kg")
		j = d.day(told(j, l.name), l.p.Date)
		j.Amount.Kg = 0 // setting is counted by the piece
		d.once(why(j, "planned", l.p.Date))
		return
	default:
		j.Amount.Plants = l.plants
		j.Needs = d.needs(l, "plants", l.plants, "plants")
	}
	reason := "planned"
	if l.p.Relation == plan.After {
		reason = "follows"
	}
	d.once(why(d.day(told(j, l.name), l.p.Date), reason, l.p.Date))
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
	d.once(why(d.day(told(j, l.name), l.raised.mid), "raised", l.p.Date))
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
