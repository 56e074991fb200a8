package desk

import (
	"garner/internal/cal"
	"garner/internal/num"
	"garner/internal/outlook"
	"garner/internal/place"
)

// bedYear is one bed's year, without its covers. The office must be computing.
func (o *Office) bedYear(a *asked, t *outlook.Table, n *namer, b place.Bed, fates []*outlook.Fate) *BedYear {
	key := bedYearName(a, t, b)
	if y := o.views.bedYear(key); y != nil {
		return y
	}
	y := &BedYear{Bed: b}
	leaves := o.bedLeaves(a, t, n, b.ID)
	steps := min(groundWeeks, t.Weeks) * outlook.StepsAWeek
	for _, f := range fates {
		if h, in := n.held(t, f, leaves[f.Planting], b, steps); in {
			y.Held = append(y.Held, h)
		}
	}
	until := t.From + cal.Date(7*min(groundWeeks, t.Weeks))
	y.layOut(t.From, until)
	o.views.keepBedYear(key, y)
	return y
}

// bedYearName names all that a bed's year depends on.
func bedYearName(a *asked, t *outlook.Table, b place.Bed) num.Digest {
	d := num.NewDigester("bed year")
	d.Text(b.ID)
	d.Int(a.version)
	d.Int(int64(a.setting.Today))
	d.Int(int64(t.From))
	d.Int(int64(t.Weeks))
	d.Int(int64(t.Years))
	if of, ok := t.BedName(b.ID); ok {
		d.Digest(of)
	}
	return d.Sum()
}

// held tells a planting's place in its bed's year, and whether it has one.
func (n *namer) held(t *outlook.Table, f *outlook.Fate, leaf []float32, b place.Bed, steps int) (HeldGround, bool) {
	p := n.plantings[f.Planting]
	h := HeldGround{PlantingLine: n.line(t, f, cut(leaf, steps)), Crop: f.Crop, Short: n.cropName(f.Crop), Relation: p.Relation, To: p.To}
	h.Name, h.Picked = n.use(p.Crop, p.Use), cut(h.Picked, steps)
	h.Clear = clearing(f)
	until := t.From + cal.Date(steps/outlook.StepsAWeek*7)
	h.Stays = !h.Clear.P50.IsSet() || h.Clear.P50 >= until
	if area := b.AreaM2(); area > 0 {
		h.Share = max(0, min(1, p.AreaM2/area))
	}
	return h, p.Date < until && (h.Stays || h.Clear.P50 > t.From)
}

func cut(course []float32, steps int) []float32 { return course[:min(len(course), steps)] }

// clearing are the days on which a planting's ground is clear, of the futures in
// which that is known; None where it is not in any.
func clearing(f *outlook.Fate) Odds {
	var days []float64
	for _, y := range f.Years {
		if y.Over >= 0 {
			days = append(days, float64(y.Over))
		}
	}
	return oddsOf(f.First, days)
}

// cropName is the plain name of a crop, in the plural.
func (n *namer) cropName(id string) string {
	if c, ok := n.a.setting.Book.Crop(id); ok {
		return c.Plural
	}
	return id
}
