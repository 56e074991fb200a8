package web

import (
	"math"
	"slices"
	"strings"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/words"
)

func plantingUnknown(id string) error {
	return fault.New(fault.NotFound, "desk.planting_unknown", words.Args{"planting": id})
}

// nearBearing is how far the top of a plan may lie off an eighth of the compass and
// still be told by its name [degrees].
const nearBearing = 5

// sizeWords tell how large the site is and how its plan lies.
func (s *groundShown) sizeWords() string {
	site := s.view.Site
	if !s.view.Drawn && len(s.view.Beds) == 0 {
		return ""
	}
	if !s.view.Drawn {
		return s.say("web.lanes_undrawn", nil)
	}
	size := s.say("web.lanes_size", words.Args{"width": site.PlanWidthM, "depth": site.PlanDepthM})
	eighth := int(math.Round(math.Mod(site.UpDeg+720, 360)/45)) % 8
	if off := math.Abs(math.Remainder(site.UpDeg, 45)); off > nearBearing {
		return size + " " + s.say("web.lanes_up_between", words.Args{"up": s.bearing(site.UpDeg)})
	}
	return size + " " +
		s.say([]string{"web.lanes_up_n", "web.lanes_up_ne", "web.lanes_up_e", "web.lanes_up_se", "web.lanes_up_s", "web.lanes_up_sw", "web.lanes_up_w", "web.lanes_up_nw"}[eighth], nil)
}

// lead says how much ground is free on the day, and what is held twice.
func (s *groundShown) lead() string {
	area, places := 0.0, 0
	for _, b := range s.view.Beds {
		share, n := b.FreeOn(s.day)
		area, places = area+share*b.AreaM2(), places+n
	}
	args := words.Args{"day": planned(s.day, s.view.Today), "area": area, "places": places}
	switch {
	case len(s.view.Beds) == 0:
		return s.say("web.lanes_no_beds", nil)
	case places == 0 && s.day == s.view.Today:
		return s.say("web.lanes_free_none_today", nil)
	case places == 0:
		return s.say("web.lanes_free_none", args)
	case s.day == s.view.Today:
		return s.say("web.lanes_free_today", args)
	}
	return s.say("web.lanes_free_on", args)
}

// dayWords tell a day as it stands at the pen's line.
func (s *groundShown) dayWords(day cal.Date) string {
	if day == s.view.Today {
		return s.say("web.axis_today_date", words.Args{"date": planned(day, s.view.Today)})
	}
	return s.words.Text(planned(day, s.view.Today))
}

// longestName is how long a use's own name may be to stand on a drawing [letters].
const longestName = 26

// heldNames are a planting's names for a drawing, the longest first.
func heldNames(h *desk.HeldGround) []string {
	if h.Short == "" || h.Short == h.Name {
		return []string{capital(h.Name)}
	}
	if len(h.Name) > longestName {
		return []string{capital(h.Short)}
	}
	return []string{capital(h.Name), capital(h.Short)}
}

// untilWords say until when a planting stands, the longest first.
func (s *groundShown) untilWords(b *desk.BedYear, h *desk.HeldGround) []string {
	var out []string
	if h.Stays {
		out = []string{s.say("web.lanes_stays", nil)}
	} else {
		out = []string{s.say("web.lanes_to_about", words.Args{"day": planned(h.Clear.P50, s.view.Today)}),
			s.say("web.lanes_to", words.Args{"day": s.words.Format().Day(h.Clear.P50)})}
	}
	for _, u := range b.Guests(h, s.day) {
		return append([]string{out[0] + s.say("web.lanes_with_under", words.Args{"name": u.Short})}, out...)
	}
	return out
}

// freeWords tell for how long ground is free, the longest first.
func (s *groundShown) freeWords(f desk.FreeStretch) []string {
	out := []string{s.say("web.lanes_free", nil)}
	if f.Until.IsSet() {
		weeks := int(f.Until-f.From+3) / 7
		if weeks < leastFreeWeeks {
			return nil
		}
		out = slices.Insert(out, 0, s.say("web.lanes_free_weeks", words.Args{"n": weeks}))
	}
	if len(f.Lost) > 0 {
		out = slices.Insert(out, 0, s.say("web.lanes_free_lost", words.Args{"lost": s.listed(f.Lost), "free": out[0]}))
	}
	return out
}

// leastFreeWeeks is for how long ground is free to be named on a lane.
const leastFreeWeeks = 2

// bedYearWords tell a bed's year in words.
func (s *groundShown) bedYearWords(b *desk.BedYear) string {
	var out []string
	for i := range b.Held {
		out = append(out, s.heldWords(&b.Held[i]))
	}
	for _, f := range b.Free {
		if f.Share < leastFreeTold {
			continue
		}
		args := words.Args{"from": planned(f.From, s.view.Today), "until": planned(f.Until, s.view.Today), "area": f.Share * b.AreaM2()}
		key := "web.lanes_twin_free_on"
		if f.Until.IsSet() {
			key = "web.lanes_twin_free"
		}
		free := s.say(key, args)
		if len(f.Lost) > 0 {
			free = s.say("web.lanes_free_lost", words.Args{"lost": s.listed(f.Lost), "free": free})
		}
		out = append(out, free)
	}
	if len(out) == 0 {
		return s.say("web.lanes_twin_nothing", nil)
	}
	return capital(strings.Join(out, "; ")) + "."
}

// leastFreeTold is the part of a bed from which free ground is told in words, 0-1.
const leastFreeTold = 0.2

// heldWords tell what a planting holds and until when.
func (s *groundShown) heldWords(h *desk.HeldGround) string {
	args := words.Args{"name": h.Name, "from": planned(h.Date, s.view.Today), "until": planned(h.Clear.P50, s.view.Today), "area": h.HoldsM2}
	key := "web.lanes_twin_"
	if h.Date > s.view.Today {
		key += "from_"
	}
	if h.Stays {
		return s.say(key+"stays", args)
	}
	return s.say(key+"until", args)
}

// wrongWords tell what does not fit in a bed.
func (s *groundShown) wrongWords(b *desk.BedYear) []string {
	var out []string
	for i := range b.Wrong {
		out = append(out, s.sentence(s.wrong(b, &b.Wrong[i])))
	}
	return out
}

func (s *groundShown) wrong(b *desk.BedYear, w *desk.WrongGround) words.Phrase {
	var with []string
	for _, id := range w.With {
		with = append(with, nameIn(b, id))
	}
	args := words.Args{"bed": b.Name, "planting": nameIn(b, w.Planting), "with": s.listed(with), "from": planned(w.From, s.view.Today),
		"until": planned(w.Until, s.view.Today), "area": w.OverM2, "odds": w.Odds, "mend": planned(w.Mend, s.view.Today)}
	mends := w.Mend.IsSet() && w.Mend > w.From
	switch {
	case w.Wrong == "too large":
		return words.P("web.lanes_wrong_large", args)
	case w.Wrong == "no partner":
		return words.P("web.lanes_wrong_partner", args)
	case w.Wrong == "too early" && mends:
		return words.P("web.lanes_wrong_early_mend", args)
	case w.Wrong == "too early":
		return words.P("web.lanes_wrong_early", args)
	case mends:
		return words.P("web.lanes_wrong_full_mend", args)
	}
	return words.P("web.lanes_wrong_full", args)
}

// listed names several things one after the other.
func (s *groundShown) listed(names []string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	return s.say("web.lanes_and", words.Args{"some": strings.Join(names[:len(names)-1], ", "), "last": names[len(names)-1]})
}

func nameIn(b *desk.BedYear, id string) string {
	for i := range b.Held {
		if b.Held[i].ID == id {
			return b.Held[i].Name
		}
	}
	return id
}
