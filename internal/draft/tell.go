package draft

import (
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
	w := &d.Problem.Sowings[r.Sowing]
	first, last, kg := d.feeds(w)
	// What lacks less is the rise of the objective without it, less its own work.
	portions := s.Price(programme.Change{Sowing: r.Sowing, Units: -r.Units}) + float64(r.Units)*w.Cost
	args := words.Args{"crop": d.Columns[r.Sowing].Use.Label, "from": d.monday(first), "until": d.monday(min(last, d.Problem.Weeks-1)) + 6,
		"kg": kg * float64(r.Units), "portions": max(0, portions), "odds": d.Columns[r.Sowing].Odds}
	if len(r.Instead) == 0 {
		return words.P("draft.row", args)
	}
	args["instead"] = d.names(r.Instead)
	return words.P("draft.row_instead", args)
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
