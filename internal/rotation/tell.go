package rotation

import (
	"unicode"
	"unicode/utf8"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/words"
)

// tellKin says why a crop comes back too soon after its kin.
func (h *History) tellKin(c *Clash, its *crop.Crop, s *stood, day cal.Date, south bool) words.Phrase {
	key := "rotation.stood"
	if !s.to.IsSet() || s.to > day {
		key = "rotation.stands"
	}
	before := words.P(key, words.Args{"crop": capital(s.crop.Plural), "stood": named(c.Last, south)})
	next, problem := named(c.Last+c.Years, south), h.problem(c.Problem)
	switch {
	case c.Years >= never:
		return words.P("rotation.never", words.Args{"before": before, "family": its.FamilyName})
	case problem == nil:
		return words.P("rotation.told", words.Args{"before": before, "years": c.Years, "family": its.FamilyName, "next": next})
	case its.Family != s.crop.Family:
		return words.P("rotation.told_across", words.Args{"before": before, "problem": capital(problem.Name), "years": c.Years,
			"candidate": its.Plural, "next": next})
	}
	return words.P("rotation.told_disease", words.Args{"before": before, "problem": capital(problem.Name), "years": c.Years,
		"family": its.FamilyName, "next": next})
}

// tellSeen says that a recorded disease is still in the ground.
func tellSeen(c *Clash, its *crop.Crop, s seen, south bool) words.Phrase {
	args := words.Args{"problem": capital(s.problem.Name), "seen": named(season(s.on, south), south), "years": c.Years,
		"candidate": its.Plural, "next": named(c.Last+c.Years, south)}
	switch {
	case c.Gentle:
		return words.P("rotation.seen_gently", args)
	case c.Years >= never:
		return words.P("rotation.seen_never", args)
	}
	return words.P("rotation.seen", args)
}

func (h *History) problem(id string) *Problem {
	for i := range h.facts.problems {
		if h.facts.problems[i].ID == id {
			return &h.facts.problems[i]
		}
	}
	return nil
}

// capital begins a name as a sentence begins.
func capital(name string) string {
	first, size := utf8.DecodeRuneInString(name)
	return string(unicode.ToUpper(first)) + name[size:]
}
