package desk

import (
	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/larder"
	"garner/internal/outlook"
	"garner/internal/words"
)

// mostOnPlate is how many vegetables a sentence about the plate names.
const mostOnPlate = 3

// tellAgain is how long a second thin time is that is worth a sentence [weeks].
const tellAgain = 3

// lead speaks of what must never lack and is likely to, then of the plate: when
// it is thin, how full it is then, what is on it and what lacks.
func lead(b *crop.Book, t *outlook.Table, s *outlook.Summary) words.Phrase {
	said := plateLead(b, t.From, s)
	var names []string
	var first outlook.Gap
	for i := range s.Vegetables {
		w := &s.Vegetables[i]
		if w.Importance != larder.Floor {
			continue
		}
		if gaps := t.Gaps(w); len(gaps) > 0 {
			if len(names) == 0 || gaps[0].First < first.First {
				first = gaps[0]
			}
			names = append(names, w.Name)
		}
	}
	if len(names) == 0 {
		return said
	}
	return words.P("desk.lead_floor", words.Args{"vegetables": plurals(b, names), "n": len(names), "span": spanWords(t.From, first.First, first.Last), "lead": said})
}

// plateLead speaks of the whole plate.
func plateLead(b *crop.Book, from cal.Date, s *outlook.Summary) words.Phrase {
	thin := s.ThinTimes(from)
	if len(thin) == 0 {
		week, least := thinnest(s.Share)
		return words.P("desk.lead_full", words.Args{"share": least, "first": from + cal.Date(7*week)})
	}
	said := thinWords(b, from, &thin[0])
	if len(thin) == 1 || thin[1].Weeks < tellAgain {
		return said
	}
	again := &thin[1]
	return words.P("desk.lead_again", words.Args{"lead": said, "span": spanWords(from, again.First, again.Last), "plate": plateWords(again.Share)})
}

// thinWords tells one thin time, as a sentence begins.
func thinWords(b *crop.Book, from cal.Date, t *outlook.ThinTime) words.Phrase {
	span := spanWords(from, t.First, t.Last)
	if t.First <= from {
		span = words.P("desk.span_begins", words.Args{"last": t.Last})
	}
	args := words.Args{"span": span, "plate": plateWords(t.Share), "lacks": plurals(b, t.Lacks)}
	if len(t.On) == 0 {
		return words.P("desk.lead_bare", args)
	}
	args["food"] = plurals(b, t.On)
	return words.P("desk.lead_thin", args)
}

// spanWords tells from when until when; what begins with the table is there now.
func spanWords(from, first, last cal.Date) words.Phrase {
	if first <= from {
		return words.P("desk.span_now", words.Args{"last": last})
	}
	return words.P("desk.span", words.Args{"first": first, "last": last})
}

// plurals names the first vegetables of a list as they are spoken of.
func plurals(b *crop.Book, names []string) []string {
	var out []string
	for _, name := range names[:min(mostOnPlate, len(names))] {
		out = append(out, vegetablePlural(b, name))
	}
	return out
}

// thinnest is the week of the year ahead with the least share.
func thinnest(share []float64) (week int, least float64) {
	least = 2
	for k := 0; k < min(52, len(share)); k++ {
		if share[k] < least {
			week, least = k, share[k]
		}
	}
	return week, least
}

// plateWords says a share of the plate as a cook would.
func plateWords(share float64) words.Phrase {
	for _, c := range []struct {
		under float64
		key   string
	}{{0.18, "desk.plate_little"}, {0.29, "desk.plate_quarter"}, {0.41, "desk.plate_third"}, {0.58, "desk.plate_half"}, {0.7, "desk.plate_two_thirds"}} {
		if share < c.under {
			return words.P(c.key, nil)
		}
	}
	return words.P("desk.plate_most", nil)
}
