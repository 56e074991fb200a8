package cli

import (
	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/holding"
	"garner/internal/words"
)

// mendCommand tells what would mend a gap at the table, or which sowings could be
// smaller.
type mendCommand struct {
	Crop  string `placeholder:"CROP"`
	On    string `placeholder:"DATE"`
	Trim  bool
	Years string `placeholder:"N"`
	Seed  string `placeholder:"S"`
	holdingFlags
	JSON bool `name:"json"`
}

// Run asks the desk for the proposals and shows them.
func (c *mendCommand) Run(a *App) error {
	var f flags
	options := desk.MendOptions{Crop: f.need("--crop", c.Crop), On: f.date("--on", c.On),
		Years: f.whole("--years", c.Years, 1, maxYears, 0), Seed: f.seed(c.Seed)}
	if c.Trim {
		return c.trim(a, &f, options)
	}
	v, err := ask(a, c.holdingFlags, &f, func(h *holding.Holding, progress reporter) (*desk.MendView, error) {
		options.Progress = progress
		return desk.Mend(h, options)
	})
	if err != nil {
		return err
	}
	if c.JSON {
		return a.json(a.mendAnswer(v))
	}
	a.showMend(v)
	return nil
}

// mendAnswer is the JSON of what would mend a gap.
type mendAnswer struct {
	Vegetable string    `json:"vegetable"`
	Years     int       `json:"years"`
	Gaps      []gapRow  `json:"gaps"`
	Gap       *gapRow   `json:"gap"` // the one that is answered
	Proposals []mendRow `json:"proposals"`
}

// gapRow is a run of weeks that are short more often than not.
type gapRow struct {
	First   cal.Date `json:"first"`
	Last    cal.Date `json:"last"`
	Weeks   int      `json:"weeks"`
	ShortKg float64  `json:"short_kg"`
	Chance  float64  `json:"chance"`
}

// mendRow is one proposal as the JSON shows it.
type mendRow struct {
	Kind         string        `json:"kind"`
	Title        string        `json:"title"`
	Planting     string        `json:"planting"`
	Bed          string        `json:"bed"`
	Crop         string        `json:"crop"`
	Use          string        `json:"use"`
	Date         *cal.Date     `json:"date"`
	AreaM2       float64       `json:"area_m2"`
	GapDropKg    float64       `json:"gap_drop_kg"`
	ShortDropKg  float64       `json:"short_drop_kg"`
	WeeksMended  int           `json:"weeks_mended"`
	ChanceBefore float64       `json:"chance_before"`
	ChanceAfter  float64       `json:"chance_after"`
	Odds         *float64      `json:"odds"`
	GroundM2W    float64       `json:"ground_m2_weeks"`
	SeedG        float64       `json:"seed_g"`
	Plants       float64       `json:"plants"`
	WorkH        float64       `json:"work_h"`
	CoverM2      float64       `json:"cover_m2"`
	BuyKg        float64       `json:"buy_kg"`
	Elsewhere    []shortageRow `json:"elsewhere"`
	Warning      string        `json:"warning"`
}

// shortageRow is what more lacks of a vegetable.
type shortageRow struct {
	Vegetable string  `json:"vegetable"`
	ShortKg   float64 `json:"short_kg"`
}

func (a *App) mendAnswer(v *desk.MendView) mendAnswer {
	r := mendAnswer{Vegetable: v.Vegetable, Years: v.Years, Gaps: []gapRow{}, Proposals: []mendRow{}}
	for _, g := range v.Gaps {
		r.Gaps = append(r.Gaps, gapRow(g))
	}
	if v.At >= 0 {
		r.Gap = &r.Gaps[v.At]
	}
	for i := range v.Lines {
		r.Proposals = append(r.Proposals, a.mendRow(&v.Lines[i]))
	}
	return r
}

func (a *App) mendRow(l *desk.MendLine) mendRow {
	t := &l.Takes
	row := mendRow{Kind: l.Kind, Title: a.Words.Text(l.Title), Planting: l.Planting, Bed: l.Bed, Crop: l.Crop, Use: l.Use, Date: dated(l.Date),
		AreaM2: l.AreaM2, GapDropKg: l.GapKg, ShortDropKg: l.DropKg, WeeksMended: l.Weeks, ChanceBefore: l.Short, ChanceAfter: l.Left,
		GroundM2W: t.M2Weeks, SeedG: t.SeedG, Plants: t.Plants, WorkH: t.WorkH, CoverM2: t.CoverM2, BuyKg: t.BoughtKg, Elsewhere: []shortageRow{}}
	if l.Odds > 0 {
		row.Odds = &l.Odds
	}
	for _, e := range l.Elsewhere {
		row.Elsewhere = append(row.Elsewhere, shortageRow{e.Vegetable, e.Kg})
	}
	if l.Warning != nil {
		row.Warning = a.Words.Text(*l.Warning)
	}
	return row
}

// showMend writes the gap and what would mend it.
func (a *App) showMend(v *desk.MendView) {
	if v.At < 0 {
		a.sentence(v.None())
		a.showOtherGaps(v)
		return
	}
	g := &v.Gaps[v.At]
	a.say(words.P("cli.mend_title", words.Args{"vegetable": asSentence(v.Plural), "first": g.First, "last": g.Last, "kg": g.ShortKg, "chance": g.Chance}))
	for i := range v.Lines {
		a.gap()
		a.showProposal(i+1, &v.Lines[i])
	}
	a.showOtherGaps(v)
}

// showOtherGaps lists the gaps beside the one that is answered.
func (a *App) showOtherGaps(v *desk.MendView) {
	if len(v.Gaps) == 0 || len(v.Gaps) == 1 && v.At >= 0 {
		return
	}
	a.gap()
	a.say(words.P("cli.mend_others", nil))
	for i := range v.Gaps {
		if o := &v.Gaps[i]; i != v.At {
			a.say(words.P("cli.mend_other", words.Args{"first": o.First, "last": o.Last, "kg": o.ShortKg}))
		}
	}
}

func (a *App) showProposal(n int, l *desk.MendLine) {
	a.say(words.P("cli.mend_line", words.Args{"n": n, "title": l.Title}))
	for _, does := range l.Does {
		a.say(words.P("cli.mend_says", words.Args{"text": does}))
	}
	if l.Reason != nil {
		a.say(words.P("cli.mend_says", words.Args{"text": *l.Reason}))
	}
	if len(l.Costs) > 0 {
		a.say(words.P("cli.mend_takes", words.Args{"costs": l.Costs}))
	}
	if l.Warning != nil {
		a.say(words.P("cli.mend_says", words.Args{"text": *l.Warning}))
	}
}
