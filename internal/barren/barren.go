package barren

import (
	"garner/internal/crop"
	"garner/internal/outlook"
	"garner/internal/plan"
)

// Why is the reason for which a vegetable cannot be grown. The list is closed.
type Why string

// The reasons.
const (
	NotInBook Why = "book"  // no crop of the book gives it
	NoBed     Why = "bed"   // there is no bed
	Dark      Why = "dark"  // in full light it could be grown
	Cold      Why = "cold"  // it never is warm enough to begin, or the frost takes it young
	Short     Why = "short" // it begins, but is not done in time
	Hot       Why = "hot"   // in cooler weather it could be grown
	Never     Why = "never" // no reason was found
)

// Vegetable is one that cannot be grown.
type Vegetable struct {
	Name string
	Why  Why
}

// futures is how many futures of the table are looked at, as in a draft.
const futures = 4

// The weeks that are looked at: a year of sowings, after the time it takes to raise the
// plants for the first, and the time for the last of them to come ready. judgement:
// nothing that is over within a season takes longer than fourteen months.
const (
	yearWeeks = 52
	growWeeks = 62
	mostRaise = 26
	weeks     = yearWeeks + growWeeks + mostRaise
	coarse    = 4 // every fourth week is tried first

	coverWeeks = 78 // sowings for covers: all of a cold season, as far as a draft looks
)

// Find tells which of some vegetables no bed can grow, in their order. The setting's
// futures and weeks are not heeded; its plan is, for perennials that stand in it.
func Find(s outlook.Setting, vegetables []string) ([]Vegetable, error) {
	all, faults := plan.Resolve(s.Holding.Plans, s.Holding.Plantings, s.Holding.Changes, s.Holding.Plan)
	if len(faults) > 0 {
		return nil, faults
	}
	f := &finder{setting: s, uses: usesOf(s.Book), stands: map[useKey]bool{}, grounds: map[variant]*ground{}}
	for i := range all {
		f.stands[useKey{all[i].Crop, all[i].Use}] = true
	}
	var out []Vegetable
	for _, name := range vegetables {
		why, err := f.why(name)
		if err != nil {
			return nil, err
		}
		if why != "" {
			out = append(out, Vegetable{name, why})
		}
	}
	return out, nil
}

type useKey struct{ crop, use string }

// finder looks for what cannot be grown.
type finder struct {
	setting outlook.Setting
	uses    map[string][]*crop.Use // by vegetable
	stands  map[useKey]bool        // in the plan
	grounds map[variant]*ground
}

func usesOf(book *crop.Book) map[string][]*crop.Use {
	out := map[string][]*crop.Use{}
	for _, c := range book.Crops() {
		for _, u := range c.Uses {
			if u.Feeds() {
				out[u.Vegetable] = append(out[u.Vegetable], u)
			}
		}
	}
	return out
}

// why is the reason for which a vegetable cannot be grown; empty: it can.
func (f *finder) why(name string) (Why, error) {
	uses := f.uses[name]
	switch {
	case len(uses) == 0:
		return NotInBook, nil
	case len(f.setting.Holding.Beds) == 0:
		return NoBed, nil
	}
	var t tally
	if ok, err := f.grows(variant{}, uses, &t); ok || err != nil {
		return "", err
	}
	if ok, err := f.growsCovered(uses); ok || err != nil {
		return "", err
	}
	for _, o := range otherwise {
		ok, err := f.grows(o.as, uses, nil)
		if err != nil {
			return "", err
		}
		if ok && o.why == Cold && t.lived {
			return Short, nil
		}
		if ok {
			return o.why, nil
		}
	}
	return Never, nil
}

// otherwise is what would have to be otherwise for a reason, in the order in which it
// is tried: full light before other weather, little before much. judgement: 3 C is
// the next climate, 9 C another zone.
var otherwise = []struct {
	as  variant
	why Why
}{
	{variant{bright: true}, Dark},
	{variant{bright: true, warmerC: 3}, Cold}, {variant{bright: true, warmerC: -3}, Hot},
	{variant{bright: true, warmerC: 6}, Cold}, {variant{bright: true, warmerC: -6}, Hot},
	{variant{bright: true, warmerC: 9}, Cold}, {variant{bright: true, warmerC: -9}, Hot},
}
