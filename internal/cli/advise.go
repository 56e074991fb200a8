package cli

import (
	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/words"
)

// adviseCommand ranks what to put where ground comes free.
type adviseCommand struct {
	Bed    string `placeholder:"BED"`
	From   string `placeholder:"DATE"`
	Until  string `placeholder:"DATE"`
	Area   string `placeholder:"AREA"`
	Refill bool
	Years  string `placeholder:"N"`
	Seed   string `placeholder:"S"`
	holdingFlags
	JSON bool `name:"json"`
}

// Run asks the desk for the candidates and shows them.
func (c *adviseCommand) Run(a *App) error {
	var f flags
	bed := f.need("--bed", c.Bed)
	from, until := f.span(c.From, c.Until)
	options := desk.AdviseOptions{
		AdviseQuery: desk.AdviseQuery{Bed: bed, From: from, Until: until, AreaM2: f.area("--area", c.Area)},
		Refill:      c.Refill, Years: f.whole("--years", c.Years, 1, maxYears, 0), Seed: f.seed(c.Seed),
	}
	v, err := ask(a, c.holdingFlags, &f, func(h *holding.Holding, progress reporter) (*desk.AdviseView, error) {
		options.Progress = progress
		return desk.Advise(h, options)
	})
	if err != nil {
		return err
	}
	if c.JSON {
		return a.json(a.adviceAnswer(v))
	}
	a.showAdvice(v)
	return nil
}

// area reads an area of ground; nothing gives 0.
func (f *flags) area(flag, given string) float64 {
	if given == "" {
		return 0
	}
	m2, ok := decimal(given)
	if !ok || m2 <= 0 || m2 > maxAreaM2 {
		f.refuse(fault.OutOfRange, words.P("cli.flag_area", words.Args{"flag": flag, "given": given, "high": maxAreaM2}))
	}
	return m2
}

// maxAreaM2 is more than any bed has [m2].
const maxAreaM2 = 100_000

// candidateRow is a candidate as the JSON shows it.
type candidateRow struct {
	Crop        string            `json:"crop"`
	Use         string            `json:"use"`
	Method      string            `json:"method"`
	Sow         cal.Date          `json:"sow"`      // or plant
	SowLast     cal.Date          `json:"sow_last"` // last sensible day
	RaiseFrom   *cal.Date         `json:"raise_from"`
	Odds        float64           `json:"odds"`
	ShortDropKg float64           `json:"short_drop_kg"`
	SeedG       float64           `json:"seed_g"`
	Plants      float64           `json:"plants"`
	OnHand      string            `json:"on_hand"`
	TooSoon     string            `json:"too_soon"`
	Reason      string            `json:"reason"`
	Planting    map[string]string `json:"planting"` // its row of plantings.csv
}

// offerRow is a way to cover the ground as the JSON shows it.
type offerRow struct {
	Kind string   `json:"kind"`
	Crop string   `json:"crop"`
	Last cal.Date `json:"last"`
	Text string   `json:"text"`
}

// adviceAnswer is the JSON of a ranking.
type adviceAnswer struct {
	Bed        string         `json:"bed"`
	From       cal.Date       `json:"from"`
	Until      *cal.Date      `json:"until"`
	AreaM2     float64        `json:"area_m2"`
	Years      int            `json:"years"`
	Candidates []candidateRow `json:"candidates"`
	Offers     []offerRow     `json:"offers"`
}

func (a *App) adviceAnswer(v *desk.AdviseView) adviceAnswer {
	r := adviceAnswer{Bed: v.Bed, From: v.From, Until: dated(v.Until), AreaM2: v.AreaM2, Years: v.Years, Candidates: []candidateRow{}, Offers: []offerRow{}}
	for i := range v.Candidates {
		r.Candidates = append(r.Candidates, a.candidateRow(&v.Candidates[i]))
	}
	for i := range v.Offers {
		o := &v.Offers[i]
		r.Offers = append(r.Offers, offerRow{o.Kind, o.Crop, o.Last, a.Words.Text(o.Says)})
	}
	return r
}

func (a *App) candidateRow(c *desk.CandidateView) candidateRow {
	row := candidateRow{Crop: c.Crop, Use: c.Use, Method: c.Method, Sow: c.Date, SowLast: c.Last, RaiseFrom: dated(c.RaiseFrom), Odds: c.Odds,
		ShortDropKg: c.DropKg, SeedG: c.SeedG, Plants: c.Plants, Reason: a.Words.Text(c.Reason), Planting: c.Cells}
	if c.Lot != nil {
		row.OnHand = c.Lot.ID
	}
	if c.Clash != nil {
		row.TooSoon = a.Words.Text(*c.Clash)
	}
	return row
}

// dated is a date for the JSON, nil when there is none.
func dated(d cal.Date) *cal.Date {
	if !d.IsSet() {
		return nil
	}
	return &d
}
