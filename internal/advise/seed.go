package advise

import (
	"math"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/plan"
)

// spareSeed is how much more seed is sown in cells than plants are wanted.
// judgement
const spareSeed = 1.3

// need works out the seed or plants for a candidate.
func (c *Candidate) need() {
	c.SeedG, c.Plants = Need(c.Use, c.Planting.Method, c.Planting.AreaM2)
}

// Need is the seed [g] and the plants, sets or tubers that a use takes on an area
// [m2]; 0 where it takes none, or where the book does not tell.
func Need(u *crop.Use, method plan.Method, areaM2 float64) (seedG, plants float64) {
	if method == plan.Seed {
		if u.SowPerM > 0 && u.SeedsPerGram > 0 && u.BetweenRowM > 0 {
			seedG = areaM2 / u.BetweenRowM * u.SowPerM / u.SeedsPerGram
		}
		return seedG, 0
	}
	plants = math.Ceil(areaM2*u.PlantsPerM2() - 1e-9)
	if method == plan.Plant && u.SeedsPerGram > 0 {
		seedG = plants * spareSeed / u.SeedsPerGram
	}
	return seedG, plants
}

// The forms and units of lots.
const (
	seedForm  = "seed"
	plantForm = "plants"
	inGrams   = "g"
)

// onHand finds seed or plants on hand for a candidate: plants where it is
// planted, else seed that still lives.
func (a *Adviser) onHand(c *Candidate) *plan.Lot {
	for _, form := range []string{plantForm, seedForm} {
		if form == plantForm && c.Planting.Method == plan.Seed {
			continue
		}
		for i := range a.holding.OnHand {
			l := &a.holding.OnHand[i]
			if l.Form == form && a.serves(l, c.Use.Crop, c.Use.Name) && a.alive(l, c.Use.SeedLifeYears) {
				return l
			}
		}
	}
	return nil
}

// serves tells whether a lot is of a use of a crop.
func (a *Adviser) serves(l *plan.Lot, crop, use string) bool {
	return l.Crop == crop && (l.Use == "" || l.Use == use) && l.Amount > 0
}

// alive tells whether seed still comes up, by the years the book gives it.
func (a *Adviser) alive(l *plan.Lot, years float64) bool {
	return l.Form == plantForm || !l.Since.IsSet() || years <= 0 || a.Today <= l.Since+cal.Date(365*years)
}

// enough tells whether the lot covers the need.
func (c *Candidate) enough() bool {
	l := c.Lot
	switch {
	case l.Form == plantForm:
		return l.Amount >= c.Plants
	case c.SeedG <= 0:
		return false
	case l.Unit == inGrams:
		return l.Amount >= c.SeedG
	}
	return l.Amount >= c.SeedG*c.Use.SeedsPerGram
}
