package notebook

import (
	"garner/internal/plan"
	"garner/internal/words"
)

// readTense finds out whether the planting stands already or is still to come.
func (r *reading) readTense() {
	for i := range r.tokens {
		switch {
		case r.has(i, "past"):
			r.past = true
		case r.has(i, "standing"):
			r.standing = true
			if r.tokens[i].text != "left" { // the number before it is read with it
				r.take(i, 1)
			}
		}
	}
	if r.standing {
		r.understand("notebook.standing", nil)
	}
}

// readMethod finds how it starts among the words that are left.
func (r *reading) readMethod() {
	for i := range r.tokens {
		if r.free(i) && r.methodOf(i) {
			r.take(i, 1)
		}
	}
	if r.crop == nil || r.method == "" {
		return
	}
	if !r.allowed() && !(r.sowing && r.allows("plant")) {
		r.ask("notebook.method", words.Args{"crop": r.crop.Plural, "method": string(r.method)})
	}
}

// methodOf takes the method that a word tells; the first one counts.
func (r *reading) methodOf(i int) bool {
	m, ok := known()["method"][r.tokens[i].text]
	if !ok {
		return false
	}
	if r.method == "" {
		r.method = plan.Method(m)
	}
	r.sowing = r.sowing || m == "seed"
	return true
}

// allowed tells whether any use of the crop can start as told.
func (r *reading) allowed() bool { return r.allows(string(r.method)) }

func (r *reading) allows(method string) bool {
	for _, u := range r.crop.Uses {
		if u.Allows(method) {
			return true
		}
	}
	return false
}

// mostYears is the greatest age of a perennial [years].
const mostYears = 100

// readYears reads "3 years old".
func (r *reading) readYears() {
	for i := range r.tokens {
		if r.tokens[i].text != "years" && r.tokens[i].text != "year" && r.tokens[i].text != "yrs" {
			continue
		}
		n, ok := r.number(i - 1)
		if !ok || n > mostYears {
			continue
		}
		r.years, r.standing = n, true
		r.take(i-1, 2)
		if r.free(i+1) && r.tokens[i+1].text == "old" {
			r.take(i+1, 1)
		}
		r.understand("notebook.years", words.Args{"n": n})
		return
	}
}

// tellRest names the words that no piece has taken.
func (r *reading) tellRest() {
	var rest []string
	for i := range r.tokens {
		t := &r.tokens[i]
		switch {
		case t.used:
		case t.kind == word && (is("filler", t.text) || is("standing", t.text) || is("bed", t.text)):
		case t.kind == word && is("unknown", t.text):
			r.understand("notebook.variety_unknown", nil)
		case r.varietyAt(i):
			r.understand("notebook.variety", words.Args{"variety": t.raw})
		default:
			rest = append(rest, t.raw)
		}
	}
	if len(rest) > 0 {
		r.ask("notebook.not_read", words.Args{"words": rest})
	}
}

// varietyAt tells whether a word is a name, with a capital letter inside the
// line: varieties are written so.
func (r *reading) varietyAt(i int) bool {
	t := &r.tokens[i]
	return i > 0 && t.kind == word && r.crop != nil && t.raw != t.text && !r.plainWord(i)
}
