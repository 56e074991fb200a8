package draft

import (
	"math"

	"garner/internal/plan"
	"garner/internal/programme"
	"garner/internal/words"
)

// Tell says of each row why it is in the draft: what it feeds and from when to when,
// what would lack without it, and what it stands in the place of.
func (d *Draft) Tell(rows []Row, units programme.Solution) ([]words.Phrase, error) {
	s, err := d.Problem.Of(units)
	if err != nil {
		return nil, err
	}
	out := make([]words.Phrase, len(rows))
	for i := range rows {
		out[i] = d.say(&rows[i], s)
	}
	return out, nil
}

func (d *Draft) say(r *Row, s *programme.Standing) words.Phrase {
	first, last, kg, cost, without := d.Problem.Weeks, 0, 0.0, 0.0, []programme.Change(nil)
	for _, p := range r.Parts {
		w := &d.Problem.Sowings[p.Sowing]
		from, to, each := d.feeds(w)
		first, last, kg = min(first, from), max(last, to), kg+float64(p.Units)*each
		cost += float64(p.Units) * w.Cost
		without = append(without, programme.Change{Sowing: p.Sowing, Units: -p.Units})
	}
	// What lacks less is the rise of the objective without it, less its own work.
	portions := s.Price(without...) + cost
	args := words.Args{"from": d.monday(first), "until": d.monday(min(last, d.Problem.Weeks-1)) + 6,
		"kg": kg, "portions": int(math.Round(max(0, portions))), "odds": d.Odds(r)}
	if len(r.Instead) == 0 {
		return words.P("draft.row", args)
	}
	args["instead"] = d.names(r.Instead)
	return words.P("draft.row_instead", args)
}

// Odds are those of a usable crop, mean over the ground of a row.
func (d *Draft) Odds(r *Row) float64 {
	sum, units := 0.0, 0
	for _, p := range r.Parts {
		sum, units = sum+float64(p.Units)*d.Columns[p.Sowing].Odds, units+p.Units
	}
	return sum / float64(max(1, units))
}

// feeds are the first and the last week in which a sowing can be eaten, and what a
// unit of it gives, mean over the futures [kg].
func (d *Draft) feeds(w *programme.Sowing) (first, last int, kg float64) {
	first = d.Problem.Weeks
	for _, future := range w.Lots {
		for _, l := range future {
			first, last = min(first, l.First), max(last, l.Last)
			kg += l.Kg / float64(len(w.Lots))
		}
	}
	return first, last, kg
}

// names are what plantings are, each once.
func (d *Draft) names(all []plan.Planting) []string {
	var out []string
	seen := map[string]bool{}
	for i := range all {
		c, ok := d.setting.Book.Crop(all[i].Crop)
		if !ok || seen[c.ID] {
			continue
		}
		seen[c.ID] = true
		out = append(out, c.Plural)
	}
	return out
}
