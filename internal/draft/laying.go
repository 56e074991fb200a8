package draft

import (
	"cmp"
	"slices"

	"garner/internal/cover"
	"garner/internal/plan"
	"garner/internal/programme"
)

// laying is a solution while it is laid into beds.
type laying struct {
	draft *Draft
	rows  []Row
	at    map[joint]int                  // rows by what a plan tells of them
	under map[string]map[cover.Spell]int // units that stand under a cover, by bed
}

// joint is what a plan tells of a planting, without its ground: what is alike in this
// is one row.
type joint struct {
	planting plan.Planting
	under    cover.Spell
}

func (d *Draft) newLaying() *laying {
	return &laying{draft: d, at: map[joint]int{}, under: map[string]map[cover.Spell]int{}}
}

// unit is one unit of a class of ground while it is laid out.
type unit struct {
	bed  string
	free int // first week in which it is free
	had  map[string]bool
}

// claim is what a sowing wants of its class of ground.
type claim struct{ sowing, units int }

// class gives every unit of every sowing of a class its ground, in the order of first
// weeks. As no week asks for more units than there are, one is always free.
func (l *laying) class(class int, taken programme.Solution) {
	var ground []unit
	for _, p := range l.draft.Classes[class].Pieces {
		for range p.Units {
			ground = append(ground, unit{bed: p.Bed, had: map[string]bool{}})
		}
	}
	for _, c := range l.draft.claims(class, taken) {
		for left := c.units; left > 0; {
			left -= l.lay(ground, c.sowing, left)
		}
	}
}

// claims are the sowings that a class takes by first week. Of those of one week the
// largest is laid first, so that it finds room in one bed.
func (d *Draft) claims(class int, taken programme.Solution) []claim {
	var out []claim
	for j, n := range taken {
		if n > 0 && d.Problem.Sowings[j].Ground == class {
			out = append(out, claim{j, n})
		}
	}
	slices.SortStableFunc(out, func(a, b claim) int {
		return cmp.Or(cmp.Compare(d.Problem.Sowings[a.sowing].First, d.Problem.Sowings[b.sowing].First), cmp.Compare(b.units, a.units))
	})
	return out
}

// lay puts some of a sowing into the bed that suits it best and tells how many units
// it put there.
func (l *laying) lay(ground []unit, sowing, wanted int) int {
	w, c := &l.draft.Problem.Sowings[sowing], &l.draft.Columns[sowing]
	rooms := roomsOf(ground, w.First, c.Use.Family)
	best := &rooms[0]
	for i := 1; i < len(rooms); i++ {
		if l.suits(&rooms[i], best, sowing, wanted) {
			best = &rooms[i]
		}
	}
	row := l.row(sowing, best.bed)
	n := min(wanted, len(best.units))
	for _, i := range best.units[:n] {
		row.Again = row.Again || l.draft.comesBack(sowing) && ground[i].had[c.Use.Family]
		ground[i].free, ground[i].had[c.Use.Family] = w.Last+1, true
	}
	row.Planting.AreaM2 += float64(n) * l.draft.Classes[w.Ground].UnitM2
	row.take(sowing, n)
	if c.Under.Kind != "" {
		if l.under[best.bed] == nil {
			l.under[best.bed] = map[cover.Spell]int{}
		}
		l.under[best.bed][c.Under] += n
	}
	return n
}

// room is the units of one bed that are free for a sowing and alike in whether they
// had its family; those that lay idle least come first.
type room struct {
	bed   string
	had   bool
	units []int
}

// roomsOf are the rooms of a class in a week, in the order of its units.
func roomsOf(ground []unit, week int, family string) []room {
	var out []room
	for i := range ground {
		u := &ground[i]
		if u.free > week {
			continue
		}
		at := slices.IndexFunc(out, func(r room) bool { return r.bed == u.bed && r.had == u.had[family] })
		if at < 0 {
			at = len(out)
			out = append(out, room{bed: u.bed, had: u.had[family]})
		}
		out[at].units = append(out[at].units, i)
	}
	for _, r := range out {
		slices.SortStableFunc(r.units, func(a, b int) int { return cmp.Compare(ground[b].free, ground[a].free) })
	}
	return out
}

// suits tells whether a room suits a sowing better than another: one that had none of
// the family comes first; then one that has the cover it is meant to stand under, or
// none when it is meant for none; then one in which the sowing has a row already; then
// one that takes all of it, and of those the smallest, else the largest.
func (l *laying) suits(a, b *room, sowing, wanted int) bool {
	if a.had != b.had {
		return !a.had
	}
	if x, y := l.covered(a.bed, sowing), l.covered(b.bed, sowing); x != y {
		return x
	}
	if x, y := l.known(a.bed, sowing), l.known(b.bed, sowing); x != y {
		return x
	}
	x, y := len(a.units), len(b.units)
	if (x >= wanted) != (y >= wanted) {
		return x >= wanted
	}
	if x >= wanted {
		return x < y
	}
	return x > y
}

// covered tells whether a bed has, by what is laid already, the cover that a sowing is
// meant for; for one that is meant for none, whether no cover comes to lie over it.
func (l *laying) covered(bed string, sowing int) bool {
	c := &l.draft.Columns[sowing]
	if c.Under.Kind != "" {
		return l.under[bed][c.Under] > 0
	}
	for s := range l.under[bed] {
		if s.On < c.Clear && s.Off > c.Date {
			return false
		}
	}
	return true
}

// known tells whether a sowing, or one that is alike, has a row in a bed.
func (l *laying) known(bed string, sowing int) bool {
	_, known := l.at[l.draft.joint(sowing, bed)]
	return known
}

func (d *Draft) joint(sowing int, bed string) joint {
	return joint{d.planting(sowing, bed), d.Columns[sowing].Under}
}

// row is the row of a sowing in a bed, which it makes when there is none.
func (l *laying) row(sowing int, bed string) *Row {
	key := l.draft.joint(sowing, bed)
	i, known := l.at[key]
	if !known {
		i = len(l.rows)
		l.at[key] = i
		l.rows = append(l.rows, Row{Planting: key.planting, Under: key.under})
	}
	return &l.rows[i]
}

// take adds units of a sowing to a row.
func (r *Row) take(sowing, units int) {
	for i := range r.Parts {
		if r.Parts[i].Sowing == sowing {
			r.Parts[i].Units += units
			return
		}
	}
	r.Parts = append(r.Parts, Part{sowing, units})
}
