package scoreboard

import (
	"garner/internal/printed"
	"math"
	"slices"

	"garner/internal/words"
)

// What the trial model before this engine came to, each region left out of its
// fit in turn (own trial model of 500 lines, 2026): the mark to reach.
const (
	trialMedianDays = 4
	trialSharePct   = 84
)

// windows holds the windows against printed planting dates, at the pace of
// garner window, beside what the gardeners' rule makes of the same dates and
// what the trial model came to.
func (m *maker) windows() (s Section, err error) {
	dates, err := printed.Published()
	if err != nil {
		return s, err
	}
	rows, err := printed.Windows(dates, m.book, printed.FullPace, m.workers)
	if err != nil {
		return s, err
	}
	rule := printed.RuleRows(dates, m.book)
	all, ruled := printed.TalliesOf(rows), printed.TalliesOf(rule)
	s.Goals = []Goal{
		{What: words.P("scoreboard.goal_windows_median", nil), Want: trialMedianDays, Got: float64(all.All.Median), AtMost: true, Unit: "d"},
		{What: words.P("scoreboard.goal_windows_share", nil), Want: trialSharePct, Got: 100 * all.All.Agree, Unit: "%"},
	}
	s.Lines = append(s.Lines, m.tallied(all, "scoreboard.windows_", "seen")...)
	s.Lines = append(s.Lines, m.trialModel()...)
	s.Lines = append(s.Lines, m.tallied(ruled, "scoreboard.rule_", "rule")...)
	for i := range rows {
		s.Lines = append(s.Lines, m.dateLine(&rows[i]))
	}
	return s, nil
}

// tallied are the sums of the dates as lines: the median distance, which must lie
// within three weeks, and the share of the dates within.
func (m *maker) tallied(t printed.Tallies, key, mark string) (out []Line) {
	add := func(of words.Phrase, tally printed.Tally) {
		args := words.Args{"of": of, "n": tally.Dates}
		source := []string{m.work("printed-dates")}
		out = append(out,
			Line{Check: words.P(key+"median", args), Published: Span{0, printed.Within}, Computed: exactly(float64(tally.Median)), Unit: "d", Sources: source, Mark: mark}.judge(),
			Line{Check: words.P(key+"share", args), Published: unknown(), Computed: exactly(100 * tally.Agree), Unit: "%", Sources: source, Mark: mark, Verdict: Apart})
	}
	add(words.P("scoreboard.dates_all", nil), t.All)
	for _, e := range t.Ends {
		add(words.P("scoreboard.dates_"+e.Name, nil), e)
	}
	for _, r := range slices.Concat(t.Regions, t.Groups) {
		add(words.P("scoreboard.dates_of", words.Args{"name": r.Name}), r)
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
