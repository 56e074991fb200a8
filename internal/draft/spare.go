package draft

import "garner/internal/place"

// cornerShare is the share of a bed below which no cover is laid over it for what is
// sown there, when something else grows beside it. judgement.
const cornerShare = 0.1

// spare takes out what would have a whole bed covered for a corner of it while other
// things grow there, which come under the cover too though the problem does not see it.
// Rows in the open grow in its place. It tells how many covers are not laid for it.
func (g *gathering) spare() int {
	spared := 0
	for {
		rows := g.draft.rowsOf(g.s.Units)
		parts := g.draft.corner(rows)
		if len(parts) == 0 {
			return spared
		}
		g.try(parts, true)
		if len(g.draft.rowsOf(g.s.Units)) > len(rows) { // what grew would lie in more beds
			g.undo()
			for _, p := range parts {
				g.shift(p.Sowing, -p.Units)
			}
			g.s.Settle()
		}
		g.keep()
		spared++
	}
}

// corner are the units below the first cover that is laid for a corner of a bed; none
// when there is no such cover.
func (d *Draft) corner(rows []Row) []Part {
	for _, c := range d.Covers(rows) {
		var parts []Part
		m2, beside := 0.0, d.standsBeside(&c)
		for i := range rows {
			r := &rows[i]
			clear := d.Columns[r.Parts[0].Sowing].Clear
			if r.Planting.Bed != c.Bed || r.Planting.Date >= c.Off || clear <= c.On {
				continue
			}
			if r.Under.Kind == c.Kind {
				parts, m2 = append(parts, r.Parts...), m2+r.Planting.AreaM2
			} else {
				beside = true
			}
		}
		if beside && m2 < cornerShare*d.bedM2(c.Bed) {
			return parts
		}
	}
	return nil
}

// standsBeside tells whether something that is kept stands in a bed below a cover, in
// the mean of the futures.
func (d *Draft) standsBeside(c *place.CoverSpell) bool {
	bed := d.ground.Bed(c.Bed)
	if bed == nil {
		return false
	}
	for _, h := range bed.Holds {
		if !h.Lost && h.From < c.Off && (!h.Clear.P50.IsSet() || h.Clear.P50 > c.On) {
			return true
		}
	}
	return false
}

func (d *Draft) bedM2(id string) float64 {
	for i := range d.setting.Holding.Beds {
		if b := &d.setting.Holding.Beds[i]; b.ID == id {
			return b.AreaM2()
		}
	}
	return 0
}
