package cli

import (
	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/holding"
	"garner/internal/words"
)

// compareCommand sets two plans side by side.
type compareCommand struct {
	A string `arg:"" name:"a" placeholder:"PLAN"`
	B string `arg:"" name:"b" placeholder:"PLAN"`
	tableFlags
	holdingFlags
	JSON bool `name:"json"`
}

// Run asks the desk for both plans and shows what differs.
func (c *compareCommand) Run(a *App) error {
	var f flags
	options := desk.ComparePlans{A: c.A, B: c.B, OutlookOptions: c.options(&f)}
	v, err := ask(a, c.holdingFlags, &f, func(h *holding.Holding, progress reporter) (*desk.CompareView, error) {
		options.Progress = progress
		return desk.Compare(h, options)
	})
	if err != nil {
		return err
	}
	if c.JSON {
		return a.json(a.comparison(v))
	}
	a.showComparison(v)
	return nil
}

// showComparison writes what differs in words, then the figures of both plans.
func (a *App) showComparison(v *desk.CompareView) {
	a.say(words.P("cli.compare_title", words.Args{"a": v.A.Name, "b": v.B.Name, "from": v.From, "weeks": v.Weeks}))
	for _, p := range v.Lead {
		a.say(p)
	}
	if len(v.Differs) > 0 {
		a.gap()
		for _, d := range v.Differs {
			a.say(words.P("cli.compare_line", words.Args{"says": d.Says}))
		}
	}
	a.gap()
	rows := grid{right: []bool{false, true, true, true}}
	rows.add("", v.A.ID, v.B.ID, a.Words.Text(words.P("cli.compare_differs", nil)))
	for _, r := range v.Figures() {
		rows.add(a.Words.Text(r.Name), a.Words.Text(r.A), a.Words.Text(r.B), a.Words.Text(r.Differs))
	}
	rows.write(a)
	a.gap()
	a.say(v.WaterNote())
	a.say(words.P("cli.outlook_basis", words.Args{"years": v.Years, "seed": seedText(v.Seed)}))
}

// comparison is the JSON of a comparison.
type comparison struct {
	Holding    string              `json:"holding"`
	From       cal.Date            `json:"from"`
	Weeks      []cal.Date          `json:"weeks"`
	Years      int                 `json:"years"`
	Seed       uint64              `json:"seed"`
	A          comparedPlan        `json:"a"`
	B          comparedPlan        `json:"b"`
	Difference comparedSum         `json:"difference"` // b less a
	Vegetables []comparedVegetable `json:"vegetables"`
	Says       []string            `json:"says"`
}

// comparedPlan is one plan, by week and in all.
type comparedPlan struct {
	ID       string      `json:"id"`
	Name     string      `json:"name"`
	WantKg   []float64   `json:"want_kg"`
	EatenKg  []float64   `json:"eaten_kg"`
	ShortKg  []float64   `json:"short_kg"`
	OverKg   []float64   `json:"over_kg"`
	Gaps     []int       `json:"gaps"`
	Gluts    []int       `json:"gluts"`
	GroundM2 []float64   `json:"ground_m2"`
	WaterL   []float64   `json:"water_l"` // null: the weather does not tell it
	GardenH  []float64   `json:"garden_h"`
	KitchenH []float64   `json:"kitchen_h"`
	Sum      comparedSum `json:"sum"`
}

// comparedSum is a plan over all weeks, or the difference of two.
type comparedSum struct {
	WantKg    float64 `json:"want_kg"`
	EatenKg   float64 `json:"eaten_kg"`
	ShortKg   float64 `json:"short_kg"`
	OverKg    float64 `json:"over_kg"`
	Share     float64 `json:"home_grown_share"`
	GapWeeks  int     `json:"gap_weeks"`
	GlutWeeks int     `json:"glut_weeks"`
	AreaWeeks float64 `json:"area_weeks_m2"`
	GardenH   float64 `json:"garden_h"`
	KitchenH  float64 `json:"kitchen_h"`
	WaterL    float64 `json:"water_l"`
	KgPerM2   float64 `json:"kg_per_m2"`
}

// comparedVegetable is one vegetable under both plans, by week.
type comparedVegetable struct {
	Name   string         `json:"name"`
	WantKg []float64      `json:"want_kg"`
	A      comparedCourse `json:"a"`
	B      comparedCourse `json:"b"`
}

// comparedCourse is one vegetable under one plan, by week.
type comparedCourse struct {
	EatenKg []float64 `json:"eaten_kg"`
	ShortKg []float64 `json:"short_kg"`
	OverKg  []float64 `json:"over_kg"`
}
