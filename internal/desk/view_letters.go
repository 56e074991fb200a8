package desk

import "sort"

// letter gives sources and plantings the same letters, in order of time.
func letter(v *VegetableView) { letterAfter(v, nil) }

// letterAfter gives what stood before its letter of then, so that a change that
// is tried moves no letter; what is new has the next free ones.
func letterAfter(v, before *VegetableView) {
	sort.SliceStable(v.Sources, func(i, k int) bool { return firstWeek(&v.Sources[i]) < firstWeek(&v.Sources[k]) })
	l := lettering{given: map[string]string{}}
	if before != nil {
		l.remember(before)
	}
	for i := range v.Sources {
		v.Sources[i].Letter = l.of(v.Sources[i].origin())
	}
	for i := range v.Plantings {
		v.Plantings[i].Letter = l.of(v.Plantings[i].ID)
	}
}

// lettering is the letters given so far, by what bears them.
type lettering struct {
	given map[string]string
	next  int
}

func (l *lettering) remember(v *VegetableView) {
	keep := func(of, letter string) {
		if _, twice := l.given[of]; !twice {
			l.given[of] = letter
			l.next++
		}
	}
	for i := range v.Sources {
		keep(v.Sources[i].origin(), v.Sources[i].Letter)
	}
	for i := range v.Plantings {
		keep(v.Plantings[i].ID, v.Plantings[i].Letter)
	}
}

// of returns the letter of what is named, a new one the first time.
func (l *lettering) of(name string) string {
	if l.given[name] == "" {
		l.given[name] = string(rune('A' + l.next%26))
		l.next++
	}
	return l.given[name]
}

// origin names what a source comes from: a planting, or what lay in store.
func (s *SourceView) origin() string {
	if s.Planting != "" {
		return s.Planting
	}
	return "\x00" + s.Batch + "\x00" + s.Store
}

func firstWeek(s *SourceView) int {
	for k := range s.FreshKg {
		if s.FreshKg[k]+s.StoredKg[k] > 0 {
			return k
		}
	}
	return len(s.FreshKg)
}
