package cli

import (
	"cmp"
	"slices"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/words"
)

// likelyGap is the chance of a week being short from which it is told in words:
// as often short as not.
const likelyGap = 0.5

// gapRun is a run of weeks in which a vegetable is likely to be short.
type gapRun struct {
	vegetable   string
	held        int      // how much is held to it, the most first
	first, last cal.Date // first and last day
	weeks       int
	shortKg     float64 // mean shortage a week [kg]
	wantKg      float64 // mean want a week [kg]
	chance      float64 // mean chance of a week being short
	now         bool    // it begins with the table
}

// nextGap finds the first likely gap of a vegetable.
func nextGap(v *desk.VegetableTable, weeks []cal.Date) (gapRun, bool) {
	run := gapRun{vegetable: v.Name, held: v.Importance.Rank()}
	n := 0
	for i, week := range weeks {
		if v.WantKg[i] <= 0 || v.GapChance[i] < likelyGap {
			if n > 0 {
				break
			}
			continue
		}
		if n == 0 {
			run.first, run.now = week, i == 0
		}
		n++
		run.last = week + 6
		run.shortKg += v.ShortKg[i]
		run.wantKg += v.WantKg[i]
		run.chance += v.GapChance[i]
	}
	if n == 0 {
		return gapRun{}, false
	}
	run.weeks = n
	run.shortKg /= float64(n)
	run.wantKg /= float64(n)
	run.chance /= float64(n)
	return run, true
}

// mostGaps is how many gaps are told in words; the table and the JSON have all.
const mostGaps = 12

// nextGaps finds the first likely gap of each vegetable: those that must never
// lack first, what would be nice to have last, and the heaviest first among them.
func nextGaps(r *desk.OutlookResult) []gapRun {
	var runs []gapRun
	for i := range r.Vegetables {
		if run, ok := nextGap(&r.Vegetables[i], r.Weeks); ok {
			runs = append(runs, run)
		}
	}
	slices.SortStableFunc(runs, func(a, b gapRun) int {
		return cmp.Or(cmp.Compare(a.held, b.held), cmp.Compare(float64(b.weeks)*b.shortKg, float64(a.weeks)*a.shortKg))
	})
	return runs
}

// showGaps tells the next gaps in words, each with its odds.
func (a *App) showGaps(r *desk.OutlookResult) {
	runs := nextGaps(r)
	if len(runs) == 0 {
		a.say(words.P("cli.gaps_none", nil))
		return
	}
	a.say(words.P("cli.gaps", nil))
	var gaps grid
	for _, run := range runs[:min(len(runs), mostGaps)] {
		gaps.add("  "+run.vegetable, a.gapText(run))
	}
	gaps.write(a)
	if more := len(runs) - mostGaps; more > 0 {
		a.say(words.P("cli.gaps_more", words.Args{"n": more}))
	}
}

func (a *App) gapText(run gapRun) string {
	key := "cli.gap_from"
	if run.now {
		key = "cli.gap_now"
	}
	return a.Words.Text(words.P(key, words.Args{
		"first": firstDay(run.first, run.last), "last": run.last,
		"short": run.shortKg / run.wantKg, "want": run.wantKg, "chance": run.chance,
	}))
}

// firstDay leaves out the year of a first day when the last one tells it.
func firstDay(first, last cal.Date) any {
	year, month, day := first.YMD()
	if year != last.Year() {
		return first
	}
	return cal.MonthDay{Month: month, Day: day}
}
