package cover

import (
	"cmp"
	"slices"

	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/words"
)

// covers tells whether the cover lies over the bed on a date: from the day it
// goes on to the day before it comes off.
func (s Spell) covers(d cal.Date) bool {
	return s.On <= d && (d < s.Off || !s.Off.IsSet())
}

// At returns the cover that lies over a bed on a date: Open when none does. Of
// two that overlap the one that went on later counts, of two that went on
// together the later in the list.
func At(spells []Spell, d cal.Date) Kind {
	kind, on := Open, cal.None
	for _, s := range spells {
		if s.On >= on && s.covers(d) {
			kind, on = s.Kind, s.On
		}
	}
	return kind
}

// Check returns the first fault of one bed's spells: an unknown kind, a cover
// that comes off before it goes on, or two that overlap; nil when there is none.
func Check(spells []Spell) *fault.Error {
	for _, s := range spells {
		if !slices.Contains(kinds, s.Kind) {
			return unknown(s.Kind)
		}
		if s.Off.IsSet() && s.Off <= s.On {
			return fault.New(fault.Invalid, "cover.off_before_on",
				words.Args{"kind": string(s.Kind), "on": s.On, "off": s.Off})
		}
	}
	return overlap(spells)
}

// overlap finds two spells over a bed at once, in order of the day they go on.
func overlap(spells []Spell) *fault.Error {
	ordered := slices.Clone(spells)
	slices.SortStableFunc(ordered, func(a, b Spell) int { return cmp.Compare(a.On, b.On) })
	for i := 1; i < len(ordered); i++ {
		before, after := ordered[i-1], ordered[i]
		if before.covers(after.On) {
			return fault.New(fault.Conflict, "cover.overlap", words.Args{
				"first": string(before.Kind), "first_on": before.On,
				"second": string(after.Kind), "second_on": after.On})
		}
	}
	return nil
}
