package space

import (
	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/plan"
	"garner/internal/record"
)

// clearing knows when plantings are gone: from records, the plan and the futures.
type clearing struct {
	book    *crop.Book
	fates   map[string]*outlook.Fate
	planted map[string]cal.Date        // as recorded
	ended   map[string]cal.Date        // as recorded, or lifted to be set elsewhere
	records map[string][]record.Record // of each planting
	from    cal.Date                   // the table's first day
}

// overAfter is how long after it went in a planting of which the table says
// nothing is taken to be gone [d]: the table follows plantings for as long. One
// that was lifted and set since is gone when the table begins, at the latest.
const overAfter = 500

func newClearing(t *outlook.Table, h *holding.Holding, book *crop.Book, plantings []plan.Planting) *clearing {
	c := &clearing{fates: map[string]*outlook.Fate{}, planted: map[string]cal.Date{}, ended: map[string]cal.Date{},
		records: map[string][]record.Record{}, from: t.From, book: book}
	for i := range t.Plantings {
		c.fates[t.Plantings[i].Planting] = &t.Plantings[i]
	}
	for _, r := range h.Records {
		c.note(r)
	}
	for planting, on := range outlook.Lifted(plantings, h.Records) {
		c.end(planting, on)
	}
	return c
}

// note takes what a record says of a planting's ground.
func (c *clearing) note(r record.Record) {
	if r.Planting == "" {
		return
	}
	c.records[r.Planting] = append(c.records[r.Planting], r)
	switch r.What {
	case record.Planted:
		c.planted[r.Planting] = r.Date
	case record.Cleared:
		c.end(r.Planting, r.Date)
	}
}

func (c *clearing) end(planting string, on cal.Date) {
	if known, ok := c.ended[planting]; !ok || on < known {
		c.ended[planting] = on
	}
}

// holds are what one planting holds of its bed: the part that stays to its end,
// and one for every share that was lost before.
func (c *clearing) holds(p *plan.Planting, b *Bed) []Hold {
	h := Hold{Planting: p.ID, Bed: b.ID, Crop: p.Crop, Use: p.Use, From: p.Date, AreaM2: p.AreaM2,
		Relation: p.Relation, To: p.To, Fixed: p.Date <= b.today}
	if on, ok := c.planted[p.ID]; ok {
		h.From, h.Fixed = on, true
	}
	if f := c.fates[p.ID]; f != nil {
		h.Crop, h.Use = f.Crop, f.Use
	}
	h.Perennial = perennial(c.book, h.Crop, h.Use)
	lost := record.Losses(c.records[p.ID], p.ID, p.AreaM2*plantsPerM2(c.book, p))
	if on := record.LostOn(lost); on.IsSet() {
		c.end(p.ID, on)
	}
	h.gone = c.gone(p, &h)
	h.Clear = spreadOf(h.gone)
	if b.AreaM2 > 0 {
		h.Share = h.AreaM2 / b.AreaM2
	}
	return h.parted(lost)
}

// parted splits off the shares of a planting that were lost, each cleared on the
// day of its loss.
func (h Hold) parted(losses []record.Loss) []Hold {
	whole, left := h, 1.0
	var lost []Hold
	for _, l := range losses {
		part := left * l.Share
		if l.Share >= 1 {
			break // the rest ends as the whole does
		}
		left -= part
		p := whole.part(part)
		p.Lost, p.gone = true, make([]cal.Date, len(whole.gone))
		for i, g := range whole.gone {
			p.gone[i] = earlier(g, later(l.On, h.From))
		}
		p.Clear = spreadOf(p.gone)
		lost = append(lost, p)
	}
	return append([]Hold{whole.part(left)}, lost...)
}

// part is the same hold on a share of its ground.
func (h Hold) part(share float64) Hold {
	h.AreaM2 *= share
	h.Share *= share
	return h
}

// gone gives a planting's clearing day by future; one day where all agree.
func (c *clearing) gone(p *plan.Planting, h *Hold) []cal.Date {
	last := p.ClearBy
	if on, ok := c.ended[p.ID]; ok {
		last = earlier(last, on)
	}
	f := c.fates[p.ID]
	if f == nil {
		if !last.IsSet() && h.From < c.from {
			last = min(h.From+overAfter, c.from)
		}
		return []cal.Date{later(last, h.From)}
	}
	out := make([]cal.Date, len(f.Years))
	for i, y := range f.Years {
		out[i] = last
		if y.Gone >= 0 {
			out[i] = earlier(last, f.First+cal.Date(y.Gone)+1)
		}
		out[i] = later(out[i], h.From) // told roughly, it may be over before the day in the plan
	}
	return out
}

// perennial tells whether a crop stays for years.
func perennial(b *crop.Book, name, use string) bool {
	c, ok := b.Crop(name)
	if !ok {
		return false
	}
	u, err := c.Use(use)
	return err == nil && u.Pattern == crop.Perennial
}

// plantsPerM2 is how densely a planting stands, 0 when its crop is unknown.
func plantsPerM2(b *crop.Book, p *plan.Planting) float64 {
	c, ok := b.Crop(p.Crop)
	if !ok {
		return 0
	}
	u, err := c.Use(p.Use)
	if err != nil {
		return 0
	}
	return growth.Spaced(u, p.InRowM, p.BetweenRowM).PlantsPerM2()
}
