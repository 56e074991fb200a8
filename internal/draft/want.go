package draft

import (
	"garner/internal/appetite"
	"garner/internal/crop"
	"garner/internal/larder"
	"garner/internal/programme"
	"garner/internal/words"
)

// wants makes a demand of each vegetable that somebody wants within the problem, one
// of those that stand in for each other, and tells of what the crop book does not grow.
func (b *builder) wants() {
	groups := b.likedGroups()
	weighed := appetite.ByWeight(b.Book, b.Holding.Eaters, groups, b.Holding.Wants)
	parties := b.parties(groups, weighed)
	for i := range weighed {
		w := &weighed[i]
		party := parties[rowOf(w.Vegetable, w.Group)]
		if w.KgPerWeek <= 0 || party == nil || party.demand != noDemand {
			continue
		}
		levels := b.levels(party, weighed)
		if len(levels) == 0 { // all of it is left
			continue
		}
		party.demand = len(b.problem.Demands)
		for _, vegetable := range party.vegetables {
			b.draft.demands[vegetable] = party.demand
		}
		for _, name := range party.groups {
			b.groupRows[name] = party.demand
		}
		b.problem.Demands = append(b.problem.Demands, programme.Demand{ID: party.name, OverCost: roundCost(overPortion / party.portionKg),
			Levels: levels})
	}
}

// noDemand says that a party is not wanted.
const noDemand = -1

// row is a vegetable, or a group by its id, as the table tells it.
type row struct{ vegetable, group string }

// rowOf is the row that a want is about: its group's when it has one.
func rowOf(vegetable, group string) row {
	if group != "" {
		return row{group: group}
	}
	return row{vegetable: vegetable}
}

// party is what makes one demand: a vegetable, or all that stand in for each other.
type party struct {
	name       string   // the vegetable, or the first of its groups
	vegetables []string // those of them that the crop book grows
	groups     []string // names
	rows       []row
	portionKg  float64 // mean of its vegetables' [kg]
	demand     int     // of the problem; noDemand: none
}

// likedGroups are the groups that a want names, with their members.
func (b *builder) likedGroups() []larder.Group {
	wanted := map[string]bool{}
	for i := range b.Holding.Wants {
		wanted[b.Holding.Wants[i].Group] = true
	}
	var out []larder.Group
	for _, g := range larder.Gather(b.Holding.Groups, b.Holding.Members) {
		if wanted[g.ID] && len(g.Members) > 0 {
			out = append(out, g)
		}
	}
	return out
}

// parties find for each wanted row what it makes a demand with. A row whose
// vegetables no seasonal crop gives has none, and that is told.
func (b *builder) parties(groups []larder.Group, wants []larder.Want) map[row]*party {
	out := map[row]*party{}
	for i := range groups {
		b.join(out, &groups[i])
	}
	for i := range wants {
		w := &wants[i]
		if at := rowOf(w.Vegetable, w.Group); w.KgPerWeek > 0 && out[at] == nil && at.group == "" {
			out[at] = &party{name: w.Vegetable, vegetables: []string{w.Vegetable}, rows: []row{at}, demand: noDemand}
		}
	}
	portions, seasonal := portionsOf(b.Book), seasonalIn(b.Book)
	looked := map[*party]bool{}
	for i := range wants {
		at := rowOf(wants[i].Vegetable, wants[i].Group)
		if p := out[at]; p != nil && !looked[p] {
			looked[p] = true
			if !b.weigh(p, portions, seasonal) {
				for _, r := range p.rows {
					delete(out, r)
				}
			}
		}
	}
	return out
}

// join makes a group and its members one party, with the parties that any of them
// belongs to already.
func (b *builder) join(parties map[row]*party, g *larder.Group) {
	own := &party{name: g.Name, groups: []string{g.Name}, rows: []row{{group: g.ID}}, demand: noDemand}
	for _, m := range g.Members {
		at := row{vegetable: m.Vegetable}
		switch known := parties[at]; known {
		case own:
		case nil:
			own.vegetables, own.rows = append(own.vegetables, m.Vegetable), append(own.rows, at)
		default:
			known.vegetables = append(known.vegetables, own.vegetables...)
			known.groups = append(known.groups, own.groups...)
			known.rows = append(known.rows, own.rows...)
			own = known
		}
		for _, r := range own.rows {
			parties[r] = own
		}
	}
}

// weigh finds the portion of a party and takes out what the book does not grow,
// which it tells of. It is false when no seasonal crop gives any of it.
func (b *builder) weigh(p *party, portions map[string]float64, seasonal map[string]bool) bool {
	var grown []string
	sum, can := 0.0, false
	for _, vegetable := range p.vegetables {
		portion, known := portions[vegetable]
		switch {
		case !known:
			b.draft.Notes = append(b.draft.Notes, words.P("draft.not_grown", words.Args{"vegetable": vegetable}))
			continue
		case !seasonal[vegetable]:
			b.draft.Notes = append(b.draft.Notes, words.P("draft.perennial", words.Args{"vegetable": vegetable}))
		default:
			can = true
		}
		grown, sum = append(grown, vegetable), sum+portion
	}
	p.vegetables, p.portionKg = grown, sum/float64(max(1, len(grown)))
	return can
}

// portionsOf are the weights of a portion of each vegetable of the book, as of the
// first use of it [kg].
func portionsOf(book *crop.Book) map[string]float64 {
	out := map[string]float64{}
	for _, c := range book.Crops() {
		for _, u := range c.Uses {
			if _, known := out[u.Vegetable]; !known && u.Feeds() && u.PortionG > 0 {
				out[u.Vegetable] = u.PortionG / 1000
			}
		}
	}
	return out
}

// seasonalIn are the vegetables that a draft can plan: those of crops that are over
// within a season. Perennials are kept as they are.
func seasonalIn(book *crop.Book) map[string]bool {
	out := map[string]bool{}
	for _, c := range book.Crops() {
		for _, u := range c.Uses {
			if u.Feeds() && u.Pattern != crop.Perennial {
				out[u.Vegetable] = true
			}
		}
	}
	return out
}
