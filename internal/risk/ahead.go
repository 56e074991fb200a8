package risk

import (
	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/cover"
	"garner/internal/sun"
)

// Ahead is the weather of the days to come at a site, under every future.
type Ahead struct {
	First   cal.Date
	AboveMJ []float64       // radiation above the air, by day [MJ/m2]
	Days    [][]climate.Day // by future, then by day
}

// Look draws so many days from a date on in so many futures of a site.
func Look(f *climate.Futures, loc sun.Location, seed, site uint64, first cal.Date, days, futures int) *Ahead {
	a := &Ahead{First: first}
	for d := range days {
		a.AboveMJ = append(a.AboveMJ, sun.ExtraterrestrialMJ(loc.LatitudeDeg, (first+cal.Date(d)).DayOfYear()))
	}
	for i := range futures {
		a.Days = append(a.Days, f.Days(seed, i, site, first, days, nil))
	}
	return a
}

// share is the share of the futures whose day, under the covers that lie over the
// bed then, is as asked for.
func (a *Ahead) share(spells []cover.Spell, day int, asked func(in *climate.Day) bool) (float64, error) {
	over, err := cover.Of(spellAt(spells, a.First+cal.Date(day)))
	if err != nil {
		return 0, err
	}
	n := 0
	for _, days := range a.Days {
		if in := over.Under(days[day], a.AboveMJ[day]); asked(&in) {
			n++
		}
	}
	return float64(n) / float64(max(1, len(a.Days))), nil
}

// spellAt is the spell over a bed on a date, the open where there is none.
func spellAt(spells []cover.Spell, d cal.Date) cover.Spell {
	kind := cover.At(spells, d)
	for _, s := range spells {
		if s.Kind == kind && d >= s.On && (s.Off == cal.None || d < s.Off) {
			return s
		}
	}
	return cover.Spell{Kind: kind}
}
