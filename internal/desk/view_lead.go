package desk

import (
	"sort"

	"garner/internal/cal"
	"garner/internal/outlook"
	"garner/internal/words"
)

// thinPlate is the home-grown share under which a week's plate is thin.
const thinPlate = 0.6

// lead speaks of the plate: when it is thin, how thin, and what is on it then.
func lead(v *TableView, s *outlook.Summary) words.Phrase {
	from, weeks := longest(s.Share, func(share float64) bool { return share < thinPlate })
	if weeks == 0 {
		return words.P("desk.lead_full", words.Args{"share": v.ThinShare, "first": v.Thinnest})
	}
	mean := 0.0
	kg := map[string]float64{}
	for k := from; k < from+weeks; k++ {
		mean += s.Share[k] / float64(weeks)
		for i := range s.Vegetables {
			w := &s.Vegetables[i]
			kg[w.Name] += w.Fresh[k] + w.Stored[k]
		}
	}
	plural := map[string]string{}
	for i := range v.Vegetables {
		plural[v.Vegetables[i].Name] = v.Vegetables[i].Plural
	}
	return words.P("desk.lead_thin", words.Args{
		"first": v.From + cal.Date(7*from), "last": v.From + cal.Date(7*(from+weeks)) - 1,
		"plate": plateWords(mean), "food": heaviest(kg, plural, 3)})
}

// longest returns the longest run of weeks in the first year that fulfil a
// condition.
func longest(course []float64, is func(float64) bool) (from, weeks int) {
	run := 0
	for k := 0; k < min(60, len(course)); k++ {
		if !is(course[k]) {
			run = 0
			continue
		}
		if run++; run > weeks {
			from, weeks = k-run+1, run
		}
	}
	return from, weeks
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

func heaviest(kg map[string]float64, plural map[string]string, n int) []string {
	names := make([]string, 0, len(kg))
	for name := range kg {
		names = append(names, name)
	}
	sort.Slice(names, func(i, k int) bool {
		if kg[names[i]] != kg[names[k]] {
			return kg[names[i]] > kg[names[k]]
		}
		return names[i] < names[k]
	})
	names = names[:min(n, len(names))]
	for i := range names {
		names[i] = plural[names[i]]
	}
	return names
}
