package desk

import (
	"maps"
	"slices"

	"garner/internal/cal"
	"garner/internal/num"
	"garner/internal/outlook"
	"garner/internal/place"
	"garner/internal/space"
)

// bedWorking makes beds' years out of one table. The office must be computing.
type bedWorking struct {
	*Office
	*namer
	table  *outlook.Table
	fates  map[string]*outlook.Fate // by planting
	ground *space.Ground
	until  cal.Date // the day after the year
}

func (o *Office) bedWorking(a *asked, t *outlook.Table, g *space.Ground, weeks int) *bedWorking {
	w := &bedWorking{Office: o, namer: newNamer(a), table: t, fates: map[string]*outlook.Fate{}, ground: g, until: t.From + cal.Date(7*weeks)}
	for i := range t.Plantings {
		w.fates[t.Plantings[i].Planting] = &t.Plantings[i]
	}
	return w
}

// year is one bed's year, without its covers.
func (w *bedWorking) year(b place.Bed) *BedYear {
	key := w.name(b)
	if y, known := w.views.beds.get(key); known {
		return y
	}
	y := &BedYear{Bed: b}
	if s := w.ground.Bed(b.ID); s != nil {
		leaves := w.bedLeaves(w.a, w.table, w.namer, b.ID)
		for i := range s.Holds {
			if h, in := w.held(&s.Holds[i], leaves); in {
				y.Held = append(y.Held, h)
			}
		}
		w.free(y, s)
		w.wrong(y, s)
	}
	w.views.beds.keep(key, y)
	return y
}

// name names all that a bed's year depends on.
func (w *bedWorking) name(b place.Bed) num.Digest {
	d := num.NewDigester("bed year")
	d.Text(b.ID)
	d.Int(w.a.version)
	d.Int(w.a.sky)
	d.Int(int64(w.a.setting.Today))
	d.Int(int64(w.table.From))
	d.Int(int64(w.table.Weeks))
	d.Int(int64(w.table.Years))
	if of, ok := w.table.BedName(b.ID); ok {
		d.Digest(of)
	}
	w.namePlantings(d, b.ID)
	return d.Sum()
}

// namePlantings adds what the table's name of a bed does not tell of its
// plantings: how they lean on each other, and those that hold ground without
// growing.
func (w *bedWorking) namePlantings(d *num.Digester, bed string) {
	for _, id := range slices.Sorted(maps.Keys(w.plantings)) {
		p := w.plantings[id]
		if p.Bed != bed {
			continue
		}
		for _, text := range []string{p.ID, p.Crop, p.Use, p.Variety, string(p.Method), string(p.Relation), p.To} {
			d.Text(text)
		}
		d.Int(int64(p.Date))
		d.Int(int64(p.ClearBy))
		d.Float(p.AreaM2)
	}
}

// held tells a planting's place in its bed's year, and whether it has one.
func (w *bedWorking) held(s *space.Hold, leaves map[string][]float32) (HeldGround, bool) {
	f := w.fates[s.Planting]
	if f == nil || s.Lost || s.From >= w.until || s.Clear.P50.IsSet() && s.Clear.P50 <= w.table.From {
		return HeldGround{}, false
	}
	steps := int(w.until-w.table.From) / 7 * outlook.StepsAWeek
	h := HeldGround{PlantingLine: w.line(w.table, f, cut(leaves[s.Planting], steps)), Crop: f.Crop, Short: w.cropName(f.Crop),
		Relation: s.Relation, To: s.To, Share: min(1, s.Share), HoldsM2: s.AreaM2, Clear: Odds(s.Clear), From: s.From}
	h.Name, h.Picked = w.use(f.Crop, f.Use), cut(h.Picked, steps)
	h.Movable = h.Movable && !s.Fixed
	h.Stays = !h.Clear.P50.IsSet() || h.Clear.P50 >= w.until
	for _, p := range s.Pieces {
		h.Pieces = append(h.Pieces, BedPiece(p))
	}
	return h, true
}

func cut(course []float32, steps int) []float32 { return course[:min(len(course), steps)] }

// cropName is the plain name of a crop, in the plural.
func (n *namer) cropName(id string) string {
	if c, ok := n.a.setting.Book.Crop(id); ok {
		return c.Plural
	}
	return id
}

// free tells the bed's free ground.
func (w *bedWorking) free(y *BedYear, s *space.Bed) {
	for _, g := range s.Gaps(w.table.From, w.until) {
		if !g.From.P50.IsSet() || g.From.P50 >= w.until {
			continue
		}
		for _, f := range w.released(s, &g) {
			if g.Open || g.Until >= w.until {
				f.Until = cal.None
			}
			y.Free = append(y.Free, f)
		}
	}
}

// wrong tells what does not fit in the bed.
func (w *bedWorking) wrong(y *BedYear, s *space.Bed) {
	for _, o := range s.Overlaps() {
		if o.From >= w.until {
			continue
		}
		wrong := WrongGround{Wrong: string(o.Wrong), Planting: o.Planting, From: o.From, Until: min(o.Until, w.until), OverM2: o.OverM2, Odds: o.Odds, Mend: o.Mend}
		for _, id := range o.Plantings {
			if id != o.Planting {
				wrong.With = append(wrong.With, id)
			}
		}
		y.Wrong = append(y.Wrong, wrong)
	}
}
