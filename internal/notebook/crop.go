package notebook

import (
	"slices"
	"strings"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/fault"
	"garner/internal/plan"
	"garner/internal/words"
)

// longestCrop is the longest name of a crop that is looked for [words].
const longestCrop = 5

// readCrop finds the longest run of free words that the book knows.
func (r *reading) readCrop() {
	i, n := r.findCrop()
	if n == 0 {
		r.unknownCrop()
		return
	}
	c, u, err := r.find(r.run(i, n))
	if err != nil {
		r.unknownCrop()
		return
	}
	r.crop, r.cropAt = c, i
	if own, err := c.Use(""); err == nil && own != u {
		r.use = u
	}
	for k := i; k < i+n; k++ { // "onion sets" tells how they start too
		r.methodOf(k)
	}
	r.take(i, n)
	if k, m := r.findCrop(); m > 0 {
		if other, _, err := r.find(r.run(k, m)); err == nil && other != c && !r.only(k, m) {
			r.take(k, m)
			r.missing("notebook.two_crops", words.Args{"first": c.Plural, "second": other.Plural})
		}
	}
}

// singular writes plurals whose letters change as the book has them.
var singular = strings.NewReplacer("ries ", "ry ", "lies ", "ly ", "toes ", "to ", "aves ", "af ")

// find asks the book for a crop, by a plural too.
func (r *reading) find(name string) (*crop.Crop, *crop.Use, error) {
	if one := oneOf(name); !r.Book.Knows(name) && r.Book.Knows(one) {
		return r.Book.Find(one)
	}
	return r.Book.Find(name)
}

func (r *reading) knows(name string) bool { return r.Book.Knows(name) || r.Book.Knows(oneOf(name)) }

func oneOf(name string) string { return strings.TrimSpace(singular.Replace(name + " ")) }

// only tells whether words that are the name of a crop have a plain meaning in
// a line, too.
func (r *reading) only(i, n int) bool {
	return n == 1 && (r.has(i, "count") || r.has(i, "method") || r.has(i, "filler") || r.has(i, "bedkind"))
}

// findCrop returns the place and length of the longest name of a crop.
func (r *reading) findCrop() (at, n int) {
	for n = longestCrop; n >= 1; n-- {
		for i := 0; i+n <= len(r.tokens); i++ {
			name := r.run(i, n)
			if name == "" || n == 1 && len([]rune(name)) < 3 {
				continue
			}
			if r.knows(name) {
				return i, n
			}
		}
	}
	return 0, 0
}

// run joins free words; nothing when one of them is taken or is no word.
func (r *reading) run(i, n int) string {
	var b strings.Builder
	for k := i; k < i+n; k++ {
		if r.tokens[k].used || r.tokens[k].kind != word {
			return ""
		}
		if k > i {
			b.WriteByte(' ')
		}
		b.WriteString(r.tokens[k].text)
	}
	return b.String()
}

// unknownCrop asks which crop was meant, with the nearest names.
func (r *reading) unknownCrop() {
	r.lacking = true
	var given []string
	for i := range r.tokens {
		t := &r.tokens[i]
		if !t.used && t.kind == word && !r.plainWord(i) {
			given = append(given, t.raw)
			t.used = true
		}
	}
	if len(given) == 0 {
		r.ask("notebook.which_crop", nil)
		return
	}
	if several := r.cropsCalled(given); len(several) > 1 {
		r.ask("notebook.crop_several", words.Args{"given": given[0], "crops": several})
		return
	}
	_, _, err := r.Book.Find(strings.Join(given, " "))
	if f, ok := err.(*fault.Error); ok {
		r.line.Questions = append(r.line.Questions, f.Phrase)
	}
}

// cropsCalled lists the crops that share a word of their name, such as beans.
func (r *reading) cropsCalled(given []string) (out []string) {
	if len(given) != 1 {
		return nil
	}
	kind := strings.TrimSuffix(strings.ToLower(given[0]), "s")
	for _, c := range r.Book.Crops() {
		if len(c.Uses) > 0 && slices.Contains(strings.Fields(strings.ToLower(c.Name)), kind) {
			out = append(out, c.Plural)
		}
	}
	return out
}

// plainWord tells whether a word has a meaning of its own in a line.
func (r *reading) plainWord(i int) bool {
	for group, all := range known() {
		if _, ok := all[r.tokens[i].text]; ok && group != "bedkind" {
			return true
		}
	}
	return r.has(i, "bedkind")
}

const (
	// coverDays is what a use for another cover counts for in days, and
	// commonDays what the common use is ahead by. // judgement
	coverDays  = 90
	goneDays   = 200 // of a use that would be over by now, for what stands
	commonDays = 21
)

// chooseUse takes the use that was named, else the one whose usual day and cover
// are nearest to what was told.
func (r *reading) chooseUse() *crop.Use {
	if r.use != nil {
		return r.use
	}
	common, err := r.crop.Use("")
	if err != nil {
		return r.crop.Uses[0]
	}
	best, least := common, 1e9
	for _, u := range r.crop.Uses {
		cost := r.daysFrom(u)
		if u == common {
			cost -= commonDays
		}
		if r.method != "" && !u.Allows(string(r.method)) {
			cost += 400
		}
		if (u.ReferenceCover == "tunnel") != (r.bed.Kind == "tunnel") && coverMatters(r.crop) {
			cost += coverDays
		}
		if r.standing && !r.when.told {
			cost += r.standingCost(u)
		}
		if cost < least {
			best, least = u, cost
		}
	}
	return best
}

// standingCost is how unlikely it is that what stands today is of a use [d]: the
// longer ago its usual day, and all the more when it would be over.
func (r *reading) standingCost(u *crop.Use) float64 {
	last := r.latest(r.usualDay(u), 0)
	cost := float64(r.Today-last) / 2
	if !r.inGround(u, last) {
		cost += goneDays
	}
	return cost
}

// coverMatters tells whether a crop has uses for the open and uses for under
// cover.
func coverMatters(c *crop.Crop) bool {
	open, under := false, false
	for _, u := range c.Uses {
		open = open || u.ReferenceCover != "tunnel"
		under = under || u.ReferenceCover == "tunnel"
	}
	return open && under
}

// daysFrom is how far the usual day of a use is from the one told [d]; 0 when
// none was told.
func (r *reading) daysFrom(u *crop.Use) float64 {
	told := r.when.day
	if r.when.exact.IsSet() {
		told = cal.MonthDayOf(r.when.exact.DayOfYear())
	}
	if !r.when.told || told.Month == 0 {
		return 0
	}
	gap := told.DayOfYear() - r.usualDay(u).DayOfYear()
	if gap < 0 {
		gap = -gap
	}
	return float64(min(gap, 365-gap))
}

// methodFor returns how a planting starts: as told where the use can, else left
// to the use.
func (r *reading) methodFor(u *crop.Use) plan.Method {
	if r.method != "" && u.Allows(string(r.method)) {
		return r.method
	}
	return plan.Method(u.Methods[0])
}
