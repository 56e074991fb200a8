package cli

import (
	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/holding"
	"garner/internal/words"
)

// keepCommand sets leaving a standing planting against clearing it.
type keepCommand struct {
	Planting string `arg:"" placeholder:"PLANTING"`
	Years    string `placeholder:"N"`
	Seed     string `placeholder:"S"`
	holdingFlags
	JSON bool `name:"json"`
}

// Run asks the desk and shows the weeks.
func (c *keepCommand) Run(a *App) error {
	var f flags
	options := desk.AdviseOptions{Planting: c.Planting, Years: f.whole("--years", c.Years, 1, maxYears, 0), Seed: f.seed(c.Seed)}
	v, err := ask(a, c.holdingFlags, &f, func(h *holding.Holding, progress reporter) (*desk.KeepOrClearView, error) {
		options.Progress = progress
		return desk.KeepOrClear(h, options)
	})
	if err != nil {
		return err
	}
	if c.JSON {
		return a.json(a.keepAnswer(v))
	}
	a.showKeep(v)
	return nil
}

// keepAnswer is the JSON of leaving or clearing.
type keepAnswer struct {
	Planting string        `json:"planting"`
	Bed      string        `json:"bed"`
	AreaM2   float64       `json:"area_m2"`
	Weeks    []clearRow    `json:"weeks"`
	Best     cal.Date      `json:"best_clear"`
	Next     *candidateRow `json:"next"`
	Reason   string        `json:"reason"`
}

// clearRow is clearing in one week.
type clearRow struct {
	Clear   cal.Date  `json:"clear"`
	KeepKg  float64   `json:"keep_kg"`
	NextKg  float64   `json:"next_kg"`
	TotalKg float64   `json:"total_kg"`
	Next    string    `json:"next"`
	Sow     *cal.Date `json:"sow"`
}

func (a *App) keepAnswer(v *desk.KeepOrClearView) keepAnswer {
	r := keepAnswer{Planting: v.Planting, Bed: v.Bed, AreaM2: v.AreaM2, Weeks: []clearRow{}, Best: v.Weeks[v.Best].Clear, Reason: a.Words.Text(v.Says)}
	for _, w := range v.Weeks {
		r.Weeks = append(r.Weeks, clearRow{w.Clear, w.KeepKg, w.NextKg, w.TotalKg, w.Next, dated(w.NextDate)})
	}
	if v.Next != nil {
		next := a.candidateRow(v.Next)
		r.Next = &next
	}
	return r
}

// showKeep writes the sentence and the weeks.
func (a *App) showKeep(v *desk.KeepOrClearView) {
	format := a.Words.Format()
	a.say(words.P("cli.keep_title", words.Args{"name": asSentence(v.Name), "area": v.AreaM2}))
	a.say(v.Says)
	a.gap()
	rows := grid{right: []bool{false, true, true, true, false}}
	rows.add(a.head("cli.column_clear"), a.head("cli.column_keep"), a.head("cli.column_next"), a.head("cli.column_both"), a.head("cli.column_follow"))
	for k, w := range v.Weeks {
		follow := ""
		if w.Next != "" {
			follow = a.Words.Text(words.P("cli.keep_follow", words.Args{"name": w.Next, "date": w.NextDate}))
		}
		if k == v.Best {
			follow = a.Words.Text(words.P("cli.keep_best", words.Args{"follow": follow}))
		}
		rows.add(format.Date(w.Clear), format.About(w.KeepKg), format.About(w.NextKg), format.About(w.TotalKg), follow)
	}
	rows.write(a)
}
