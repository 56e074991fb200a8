package space

import (
	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/plan"
	"garner/internal/record"
)

// clearing knows when plantings are gone: from records, the plan and the futures.
type clearing struct {
	book    *crop.Book
	fates   map[string]*outlook.Fate
	planted map[string]cal.Date // as recorded
	ended   map[string]cal.Date // as recorded, or lifted to be set elsewhere
	lost    map[string][]loss   // shares recorded as lost, in order of time
	from    cal.Date            // the table's first day
}

// loss is a share of a planting, 0-1, that was lost on a day.
type loss struct {
	on    cal.Date
	share float64
}

// overAfter is how long after it went in a planting of which the table says
// nothing is taken to be gone [d]: the table follows plantings for as long.
const overAfter = 500

func newClearing(t *outlook.Table, h *holding.Holding, book *crop.Book, plantings []plan.Planting) *clearing {
	c := &clearing{fates: map[string]*outlook.Fate{}, planted: map[string]cal.Date{}, ended: map[string]cal.Date{},
		lost: map[string][]loss{}, from: t.From, book: book}
	for i := range t.Plantings {
		c.fates[t.Plantings[i].Planting] = &t.Plantings[i]
	}
	for _, r := range h.Records {
		c.note(r)
	}
	for _, p := range plantings {
		if p.Relation == plan.Moved && p.To != "" {
			c.end(p.To, p.Date)
		}
	}
	return c
}

// note takes what a record says of a planting's ground.
func (c *clearing) note(r record.Record) {
	if r.Planting == "" {
		return
	}
	part := r.Unit == "share" && r.Value > 0 && r.Value < 1
	switch r.What {
	case record.Planted:
		c.planted[r.Planting] = r.Date
	case record.Cleared:
		c.end(r.Planting, r.Date)
	case record.Died, record.Moved:
		if part {
			c.lost[r.Planting] = append(c.lost[r.Planting], loss{r.Date, r.Value})
			return
		}
		c.end(r.Planting, r.Date)
	case record.Failing:
		if part {
			c.lost[r.Planting] = append(c.lost[r.Planting], loss{r.Date, r.Value})
		}
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
	h.gone = c.gone(p, &h)
	h.Clear = spreadOf(h.gone)
	if b.AreaM2 > 0 {
		h.Share = h.AreaM2 / b.AreaM2
	}
	return h.parted(c.lost[p.ID])
}

// parted splits off the shares of a planting that were lost, each cleared on the
// day of its loss.
func (h Hold) parted(losses []loss) []Hold {
	whole, left := h, 1.0
	var lost []Hold
	for _, l := range losses {
		part := min(l.share, left)
		if part <= 0 {
			continue
		}
		left -= part
		p := whole.part(part)
		p.Lost, p.gone = true, make([]cal.Date, len(whole.gone))
		for i, g := range whole.gone {
			p.gone[i] = earlier(g, later(l.on, h.From))
		}
		p.Clear = spreadOf(p.gone)
		lost = append(lost, p)
	}
	if left <= speck {
		return lost
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
		if !last.IsSet() && h.From+overAfter <= c.from {
			last = h.From + overAfter
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
