package web

import (
	"math"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/words"
)

// besideWords says what a pair comes to: what it is worth, what the lower crop
// gets, and what each lacks.
func (v *visit) besideWords(p *desk.PairPart, today cal.Date) []string {
	args := words.Args{"upper": p.Upper.Crop, "lower": p.Lower.Crop, "beds": p.Ratio, "from": words.Sharp(p.From, today), "until": words.Sharp(p.Until, today)}
	var out []string
	say := func(key string) { out = append(out, v.sentence(words.P("web.beside_say_"+key, args))) }
	switch {
	case p.Lower.AloneKg <= 0 && p.Upper.AloneKg <= 0:
	case p.Upper.Feeds && p.Lower.Feeds:
		say("beds")
	}
	if share, on, ok := darkest(p); ok {
		args["light"], args["on"] = share, words.Sharp(on, today)
		if share > mostlyLit {
			say("lit")
		} else {
			say("light")
		}
	}
	out = append(out, v.besideFare(&p.Lower, today)...)
	return append(out, v.besideFare(&p.Upper, today)...)
}

// mostlyLit is the share of the light above which a crop hardly knows that
// another stands over it.
const mostlyLit = 0.95

// darkest is the least light that the lower crop gets while it has leaf, and when.
func darkest(p *desk.PairPart) (share float64, on cal.Date, ok bool) {
	share = 2
	for i := range p.Weeks {
		if w := &p.Weeks[i]; w.Lit && w.Light < share {
			share, on, ok = w.Light, w.Monday, true
		}
	}
	return share, on, ok
}

// besideFare says how one of the two fares against alone.
func (v *visit) besideFare(s *desk.PairSide, today cal.Date) []string {
	args := words.Args{"name": s.Crop, "kg": s.Kg, "alone": s.AloneKg, "share": s.Share}
	var out []string
	say := func(key string) { out = append(out, v.sentence(words.P("web.beside_say_"+key, args))) }
	switch {
	case !s.Feeds:
	case s.AloneKg <= 0:
		say("nothing_alone")
	case s.Share < 0.02:
		say("nothing")
	case s.Share > 0.98:
		say("keeps")
	default:
		say("gives")
	}
	late, known := lateDays(s)
	args["days"] = late
	switch {
	case s.AloneReady.Middle.IsSet() && !s.Ready.Middle.IsSet():
		args["years"] = s.Ready.Odds
		say("stalls")
	case known && late >= fewDays:
		here, alone := words.Sharp(s.Ready.Middle, today), words.Sharp(s.AloneReady.Middle, today)
		args["ready"], args["ready_alone"] = here, alone
		if v.words.Text(here) == v.words.Text(alone) {
			say("late") // the days are told no sharper than this
		} else {
			say("later")
		}
	}
	return out
}

// fewDays are too few to speak of [d].
const fewDays = 3

func lateDays(s *desk.PairSide) (int, bool) {
	if !s.Ready.Middle.IsSet() || !s.AloneReady.Middle.IsSet() {
		return 0, false
	}
	return int(s.Ready.Middle - s.AloneReady.Middle), true
}

// whenReady tells the middle day and how often it comes to it.
func (v *visit) whenReady(w desk.PairWhen, today cal.Date) words.Phrase {
	switch {
	case w.Middle.IsSet() && w.Odds > 0.95:
		return words.Sharp(w.Middle, today)
	case w.Middle.IsSet():
		return words.P("web.beside_ready_odds", words.Args{"day": words.Sharp(w.Middle, today), "chance": w.Odds})
	}
	return words.P("web.beside_ready_seldom", words.Args{"chance": w.Odds})
}

// offerWords says what doing something to the upper crop gives the lower and
// costs the upper.
func (v *visit) offerWords(key string, p *desk.PairPart, o *desk.PairOffer, share float64) string {
	args := words.Args{"upper": p.Upper.Crop, "lower": p.Lower.Crop, "on": o.On, "share": share,
		"more": math.Abs(o.LowerKg), "less": math.Abs(o.UpperKg), "beds": o.Ratio}
	text := v.sentence(words.P("web.beside_"+key, args)) + " " + v.sentence(words.P("web.beside_lower_"+gain(o.LowerKg), args))
	if o.Sooner >= fewDays {
		args["days"] = o.Sooner
		text += " " + v.sentence(words.P("web.beside_earlier", args))
	}
	return text + " " + v.sentence(words.P("web.beside_upper_"+gain(o.UpperKg), args)) + " " + v.sentence(words.P("web.beside_then", args))
}

// trifleKg is a weight too small to speak of [kg].
const trifleKg = 0.05

func gain(kg float64) string {
	switch {
	case kg >= trifleKg:
		return "more"
	case kg <= -trifleKg:
		return "less"
	}
	return "same"
}
