package web

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"garner/internal/desk"
	"garner/internal/words"
)

// mostSums is how many vegetables are told one by one when a change touches many.
const mostSums = 3

// compared puts the ground as it stands beside it as tried: the table, the weeks
// that are short, and what is held twice.
func (s *groundShown) compared() (*triedBody, error) {
	before, after := s.view.Before, s.view
	names := map[string]string{}
	for _, b := range append(append([]*desk.BedYear{}, before.Beds...), after.Beds...) {
		for i := range b.Held {
			names[b.Held[i].ID] = s.say("web.lanes_in_bed", words.Args{"name": capital(b.Held[i].Name), "bed": b.Name})
		}
	}
	t, err := s.triedPanel(s.g, s.at.bare(), s.at.tried, names)
	if err != nil {
		return nil, err
	}
	share := func(x float64) string { return s.say("web.lanes_percent", words.Args{"n": 100 * x}) }
	t.row(s.say("web.table_share_all", nil), before.Figures.Share, after.Figures.Share, share)
	t.row(s.say("web.lanes_weeks_short", nil), weeksShort(&before.Figures), weeksShort(&after.Figures), s.whole)
	t.row(s.say("web.lanes_held_twice", nil), wrongCount(before), wrongCount(after), s.whole)
	t.Sum = strings.Join(append([]string{s.sums(&before.Figures, &after.Figures)}, s.newWrongs()...), " ")
	return t, nil
}

// mostWrongs is how many things that no longer fit are told one by one.
const mostWrongs = 2

// newWrongs tell what does not fit with the change and did without.
func (s *groundShown) newWrongs() []string {
	was := map[string]bool{}
	for _, b := range s.view.Before.Beds {
		for _, w := range s.wrongWords(b) {
			was[w] = true
		}
	}
	var out []string
	for _, b := range s.view.Beds {
		for _, w := range s.wrongWords(b) {
			if !was[w] {
				out = append(out, w)
			}
		}
	}
	if more := len(out) - mostWrongs; more > 0 {
		out = append(out[:mostWrongs], s.say("web.lanes_wrongs_more", words.Args{"n": more}))
	}
	return out
}

// sums say which vegetables' short weeks are mended or made.
func (s *groundShown) sums(before, after *desk.GroundFigures) string {
	was := map[string][]desk.GapView{}
	for _, v := range before.Vegetables {
		was[v.Name] = v.Gaps
	}
	var out []string
	more := 0
	for _, v := range after.Vegetables {
		said := s.mendsWords(was[v.Name], v.Gaps)
		if said == s.say("web.try_no_week", nil) {
			continue
		}
		if len(out) == mostSums {
			more++
			continue
		}
		out = append(out, s.say("web.lanes_sum", words.Args{"name": capital(v.Plural), "what": lowered(said)}))
	}
	if more > 0 {
		out = append(out, s.say("web.lanes_sum_more", words.Args{"n": more}))
	}
	if len(out) == 0 {
		return s.say("web.try_no_week", nil)
	}
	return strings.Join(out, " ")
}

// lowered is a sentence as it goes on behind a colon.
func lowered(text string) string {
	mark := len(text) - len(strings.TrimLeft(text, "*"))
	r, size := utf8.DecodeRuneInString(text[mark:])
	return text[:mark] + string(unicode.ToLower(r)) + text[mark+size:]
}

func weeksShort(f *desk.GroundFigures) float64 {
	n := 0
	for _, v := range f.Vegetables {
		for _, g := range v.Gaps {
			n += g.Weeks
		}
	}
	return float64(n)
}

func wrongCount(v *desk.GroundYearView) float64 {
	n := 0
	for _, b := range v.Beds {
		n += len(b.Wrong)
	}
	return float64(n)
}
