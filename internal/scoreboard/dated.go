package scoreboard

import (
	"math"
	"slices"

	"garner/internal/leftout"
	"garner/internal/printed"
	"garner/internal/words"
)

// What the trial model before this engine came to, each region left out of its
// fit in turn (own trial model of 500 lines, 2026).
const (
	trialMedianDays = 4
	trialSharePct   = 84
)

// What the windows of a region that was left out of the fit must come to.
const (
	wantMedianDays = 4
	wantSharePct   = 88
	wantRegionPct  = 65 // of each region with manyDates dates or more
	wantBiasDays   = 3  // of first and of last dates, either way
	manyDates      = 30
)

// windows holds the windows against printed planting dates, at the pace of
// garner window, each region with limits fitted to the others; beside them stand
// the windows as the book has them, fitted to the same dates, what the gardeners'
// rule makes of them, and what the trial model came to.
func (m *maker) windows() (s Section, err error) {
	dates, err := printed.Published()
	if err != nil {
		return s, err
	}
	blind, err := leftout.Blind(dates, m.book, printed.FullPace, m.workers)
	if err != nil {
		return s, err
	}
	fitted, err := printed.Windows(dates, m.book, printed.FullPace, m.workers)
	if err != nil {
		return s, err
	}
	all := printed.TalliesOf(blind)
	s.Goals = windowGoals(all)
	s.Lines = append(s.Lines, m.tallied(all, "scoreboard.windows_", "seen")...)
	s.Lines = append(s.Lines, m.tallied(printed.TalliesOf(fitted), "scoreboard.fitted_", "fitted")...)
	s.Lines = append(s.Lines, m.trialModel()...)
	s.Lines = append(s.Lines, m.tallied(printed.TalliesOf(printed.RuleRows(dates, m.book)), "scoreboard.rule_", "rule")...)
	for i := range blind {
		s.Lines = append(s.Lines, m.dateLine(&blind[i]))
	}
	return s, nil
}

func windowGoals(t printed.Tallies) []Goal {
	goal := func(key string, want, got float64, atMost bool, unit string) Goal {
		return Goal{What: words.P(key, nil), Want: want, Got: got, AtMost: atMost, Unit: unit}
	}
	poorest := 100.0
	for _, r := range t.Regions {
		if r.Dates >= manyDates {
			poorest = min(poorest, 100*r.Agree)
		}
	}
	out := []Goal{
		goal("scoreboard.goal_windows_median", wantMedianDays, float64(t.All.Median), true, "d"),
		goal("scoreboard.goal_windows_share", wantSharePct, 100*t.All.Agree, false, "%"),
		goal("scoreboard.goal_windows_region", wantRegionPct, poorest, false, "%"),
	}
	for _, e := range t.Ends {
		if e.Name != "inside" {
			out = append(out, goal("scoreboard.goal_windows_bias_"+e.Name, wantBiasDays, math.Abs(e.BiasDays), true, "d"))
		}
	}
	return out
}

// tallied are the sums of the dates as lines: the median distance and the mean
// signed one, and the share of the dates within three weeks. Sums of few dates
// are told apart.
func (m *maker) tallied(t printed.Tallies, key, mark string) (out []Line) {
	add := func(of words.Phrase, tally printed.Tally, share float64) {
		args := words.Args{"of": of, "n": tally.Dates}
		line := func(check string, published Span, computed float64, unit string) {
			l := Line{Check: words.P(key+check, args), Published: published, Computed: exactly(computed), Unit: unit,
				Sources: []string{m.work("printed-dates")}, Mark: mark}.judge()
			if tally.Dates < manyDates || !published.Known() {
				l.Verdict = Apart
			}
			out = append(out, l)
		}
		line("median", Span{0, printed.Within}, float64(tally.Median), "d")
		line("share", Span{share, 100}, 100*tally.Agree, "%")
		line("bias", unknown(), tally.BiasDays, "d")
	}
	add(words.P("scoreboard.dates_all", nil), t.All, wantSharePct)
	for _, e := range t.Ends {
		add(words.P("scoreboard.dates_"+e.Name, nil), e, wantRegionPct)
	}
	for _, r := range slices.Concat(t.Regions, t.Groups) {
		add(words.P("scoreboard.dates_of", words.Args{"name": r.Name}), r, wantRegionPct)
	}
	return out
}

// trialModel are the figures of the trial model, for comparison.
func (m *maker) trialModel() []Line {
	line := Line{Published: unknown(), Sources: []string{m.work("trial-model-2026")}, Mark: "trial", Verdict: Apart}
	median, share := line, line
	median.Check, median.Computed, median.Unit = words.P("scoreboard.trial_median", nil), exactly(trialMedianDays), "d"
	share.Check, share.Computed, share.Unit = words.P("scoreboard.trial_share", nil), exactly(trialSharePct), "%"
	return []Line{median, share}
}

// dateLine is one printed date: the stretch it leaves open, and the day of the
// nearest window where that is outside it.
func (m *maker) dateLine(r *printed.Row) Line {
	l := Line{Crop: r.Date.Crop, Check: words.P("scoreboard.date_"+r.End, words.Args{"region": r.Date.Region}), Unit: "date",
		Published: Span{float64(r.From), float64(r.To)}, Computed: unknown(), Slack: printed.Within, Sources: []string{r.Date.Source}, Mark: "seen", Verdict: Missed}
	if r.Answer {
		l.Difference = float64(r.Off)
		l.Computed = l.Published
		switch {
		case r.End == "inside":
			l.Computed = unknown()
		case r.Off < 0:
			l.Computed = exactly(float64(printed.OnCircle(r.From + r.Off)))
		case r.Off > 0:
			l.Computed = exactly(float64(printed.OnCircle(r.To + r.Off)))
		}
	} else {
		l.Difference = math.NaN()
	}
	switch {
	case !r.Counted:
		l.Verdict = Apart
	case r.Agrees():
		l.Verdict = Met
	}
	return l
}
