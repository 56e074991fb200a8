package space

import (
	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/plan"
	"garner/internal/soilcare"
)

// Ground is a holding's beds with what holds them.
type Ground struct {
	Today cal.Date
	From  cal.Date // the table's first day
	Until cal.Date // the day after the table
	Beds  []Bed    // in the order of the holding
}

// Bed is a bed with what holds its ground.
type Bed struct {
	ID         string
	Site       string
	AreaM2     float64
	TurnRoundD int    // days from clearing until it can be sown again
	Holds      []Hold // in the order of their days

	until   cal.Date // the day after the table
	futures int
	today   cal.Date
}

// Of lays out the plantings of a holding's plan in force on its beds. The table
// must be that of the same holding. It fails when the plan cannot be resolved.
func Of(t *outlook.Table, h *holding.Holding, book *crop.Book, today cal.Date) (*Ground, error) {
	plantings, faults := plan.Resolve(h.Plans, h.Plantings, h.Changes, h.Plan)
	if len(faults) > 0 {
		return nil, faults
	}
	g := &Ground{Today: today, From: t.From, Until: t.From + cal.Date(7*t.Weeks)}
	c := newClearing(t, h, book, plantings)
	byBed := map[string][]plan.Planting{}
	for _, p := range plantings {
		byBed[p.Bed] = append(byBed[p.Bed], p)
	}
	for _, b := range h.Beds {
		turnRound, err := soilcare.TurnRound(b, false)
		if err != nil {
			return nil, err
		}
		bed := Bed{ID: b.ID, Site: b.Site, AreaM2: b.AreaM2(), TurnRoundD: turnRound, until: g.Until, futures: t.Years, today: today}
		for i := range byBed[b.ID] {
			bed.Holds = append(bed.Holds, c.holds(&byBed[b.ID][i], &bed)...)
		}
		bed.lay()
		g.Beds = append(g.Beds, bed)
	}
	return g, nil
}

// Bed returns a bed by its id; nil when the holding has none of that name.
func (g *Ground) Bed(id string) *Bed {
	for i := range g.Beds {
		if g.Beds[i].ID == id {
			return &g.Beds[i]
		}
	}
	return nil
}

// Hold returns what a planting holds of the bed, without what of it was lost; nil
// when it holds nothing.
func (b *Bed) Hold(planting string) *Hold {
	for i := range b.Holds {
		if b.Holds[i].Planting == planting && !b.Holds[i].Lost {
			return &b.Holds[i]
		}
	}
	return nil
}
