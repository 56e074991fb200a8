package web

import (
	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/words"
)

// mendsWords says how many weeks a change mends, and how many it makes short.
func (v *visit) mendsWords(before, after []desk.GapView) string {
	was, is := mondays(before), mondays(after)
	mended, made := 0, 0
	for day := range was {
		if !is[day] {
			mended++
		}
	}
	for day := range is {
		if !was[day] {
			made++
		}
	}
	args := words.Args{"mended": mended, "made": made}
	switch {
	case mended > 0 && made > 0:
		return capital(v.say("web.try_mends_and_makes", args))
	case mended > 0:
		return capital(v.say("web.try_mends", args))
	case made > 0:
		return capital(v.say("web.try_makes", args))
	}
	return v.say("web.try_no_week", nil)
}

// mondays are the weeks that lie in gaps.
func mondays(gaps []desk.GapView) map[cal.Date]bool {
	out := map[cal.Date]bool{}
	for _, g := range gaps {
		for monday := g.First.Monday(); monday <= g.Last; monday += 7 {
			out[monday] = true
		}
	}
	return out
}

// shortWeeks counts the weeks that are short more often than not, by year.
func shortWeeks(view *desk.VegetableView) map[int]int {
	out := map[int]int{}
	for _, g := range view.Gaps {
		for monday := g.First; monday <= g.Last; monday += 7 {
			out[(monday+3).Year()]++
		}
	}
	return out
}

// yearsOf are the years that a table's weeks lie in.
func yearsOf(from cal.Date, weeks int) []int {
	var out []int
	for k := range weeks {
		if year := (from + cal.Date(7*k+3)).Year(); len(out) == 0 || out[len(out)-1] != year {
			out = append(out, year)
		}
	}
	return out
}

// eatenKg is what comes to the table over all its weeks, mean [kg].
func eatenKg(view *desk.VegetableView) float64 {
	sum := 0.0
	for _, s := range view.Sources {
		for k := range s.FreshKg {
			sum += s.FreshKg[k] + s.StoredKg[k]
		}
	}
	return sum
}

// spareKg is what is to spare over all weeks in the middle year [kg]. The ribbon
// tells it as a share of the mean want of the weeks that have one.
func spareKg(r *desk.RibbonView) float64 {
	want, weeks, share := 0.0, 0, 0.0
	for k, kg := range r.WantKg {
		if kg > 0 {
			want, weeks = want+kg, weeks+1
		}
		if at := k * stepsAWeek; at < len(r.Over[1]) {
			share += float64(r.Over[1][at])
		}
	}
	if weeks == 0 {
		return 0
	}
	return share * want / float64(weeks)
}

// wholeShare is the share of the whole want that is home-grown.
func wholeShare(view *desk.TableView) float64 {
	got, want := 0.0, 0.0
	for i := range view.Vegetables {
		r := &view.Vegetables[i]
		for k, kg := range r.WantKg {
			got, want = got+r.FreshKg[k]+r.StoredKg[k], want+kg
		}
	}
	if want <= 0 {
		return 0
	}
	return got / want
}
