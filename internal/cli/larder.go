package cli

import (
	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/holding"
	"garner/internal/words"
)

// larderCommand shows what lies in store, how long it lasts and what goes over.
type larderCommand struct {
	Years string `placeholder:"N"`
	Seed  string `placeholder:"S"`
	holdingFlags
	JSON bool `name:"json"`
}

// Run asks the desk for the larder and shows it.
func (c *larderCommand) Run(a *App) error {
	var f flags
	options := desk.OutlookOptions{Years: f.whole("--years", c.Years, 1, maxYears, 0), Seed: f.seed(c.Seed)}
	v, err := ask(a, c.holdingFlags, &f, func(h *holding.Holding, progress reporter) (*desk.LarderView, error) {
		options.Progress = progress
		return desk.Larder(h, options)
	})
	if err != nil {
		return err
	}
	if c.JSON {
		return a.json(a.larderAnswer(v))
	}
	a.showLarder(v)
	return nil
}

// larderAnswer is the JSON of the larder. Dates are null where a thing does not
// happen within the table.
type larderAnswer struct {
	Holding  string       `json:"holding"`
	Today    cal.Date     `json:"today"`
	From     cal.Date     `json:"from"`
	Years    int          `json:"years"`
	Stock    []stockRow   `json:"stock"`
	Stores   []storeRow   `json:"stores"`
	Surplus  []surplusRow `json:"surplus"`
	Give     []giveRow    `json:"give"`
	Cautions []cautionRow `json:"cautions"`
}

type stockRow struct {
	Vegetable string     `json:"vegetable"`
	Kg        float64    `json:"kg"`
	OutP10    *cal.Date  `json:"out_p10"`
	OutP50    *cal.Date  `json:"out_p50"`
	OutP90    *cal.Date  `json:"out_p90"`
	Outlasts  float64    `json:"outlasts"`
	Judged    float64    `json:"judged"`
	Meets     float64    `json:"meets"`
	WaitDays  int        `json:"wait_days"`
	Next      string     `json:"next_planting"`
	Batches   []batchRow `json:"batches"`
}

type batchRow struct {
	ID       string    `json:"id"`
	Store    string    `json:"store"`
	Crop     string    `json:"crop"`
	Use      string    `json:"use"`
	Kg       float64   `json:"kg"`
	Stored   cal.Date  `json:"stored"`
	Planting string    `json:"planting"`
	Good     *cal.Date `json:"good_until"`
	OutP50   *cal.Date `json:"out_p50"`
	Spoils   float64   `json:"spoils"`
	EatenKg  float64   `json:"eaten_kg"`
	LostKg   float64   `json:"lost_kg"`
	SownKg   float64   `json:"sown_kg"`
	LeftKg   float64   `json:"left_kg"`
}

type storeRow struct {
	ID         string    `json:"id"`
	Name       string    `json:"name"`
	Method     string    `json:"method"`
	CapacityKg float64   `json:"capacity_kg"`
	NowKg      float64   `json:"now_kg"`
	MostKg     float64   `json:"most_kg"`
	EmptyP50   *cal.Date `json:"empty_p50"`
	Empty      float64   `json:"empty_chance"`
}

type surplusRow struct {
	Vegetable string       `json:"vegetable"`
	OverKg    []float64    `json:"over_kg"` // mean by week of the table
	Weeks     []surplusDay `json:"weeks"`
	FullKg    float64      `json:"full_kg"`    // over all the weeks, for want of room
	NoTimeKg  float64      `json:"no_time_kg"` // over all the weeks, for want of time in the kitchen
	Ways      []wayRow     `json:"ways"`
}

type surplusDay struct {
	Week   cal.Date `json:"week"`
	KgP10  float64  `json:"kg_p10"`
	KgP50  float64  `json:"kg_p50"`
	KgP90  float64  `json:"kg_p90"`
	Chance float64  `json:"chance"`
}

type wayRow struct {
	Kind    string   `json:"kind"`
	Store   string   `json:"store"`
	Method  string   `json:"method"`
	RoomKg  float64  `json:"room_kg"`
	Text    string   `json:"text"`
	Prepare []string `json:"prepare"` // how it is made ready for the store
}

type giveRow struct {
	Week      cal.Date `json:"week"`
	Vegetable string   `json:"vegetable"`
	Kg        float64  `json:"kg"`
}

type cautionRow struct {
	Text   string `json:"text"`
	Source string `json:"source"`
}

func (a *App) larderAnswer(v *desk.LarderView) larderAnswer {
	r := larderAnswer{Holding: v.Household, Today: v.Today, From: v.From, Years: v.Years, Stock: []stockRow{}, Stores: []storeRow{},
		Surplus: []surplusRow{}, Give: []giveRow{}, Cautions: []cautionRow{}}
	for i := range v.Stocks {
		r.Stock = append(r.Stock, stockRowOf(&v.Stocks[i]))
	}
	for i := range v.Stores {
		s := &v.Stores[i]
		r.Stores = append(r.Stores, storeRow{s.ID, s.Name, s.Method, s.CapacityKg, s.NowKg, s.MostKg, dated(s.Empty.P50), s.EmptyShare})
	}
	for i := range v.Surplus {
		r.Surplus = append(r.Surplus, a.surplusRow(&v.Surplus[i]))
	}
	for _, g := range v.Give {
		for _, line := range g.Lines {
			r.Give = append(r.Give, giveRow{g.Week, line.Vegetable, line.Kg})
		}
	}
	for _, c := range v.Cautions {
		r.Cautions = append(r.Cautions, cautionRow{a.Words.Text(c.Text), c.Source})
	}
	return r
}

func stockRowOf(s *desk.StockView) stockRow {
	row := stockRow{Vegetable: s.Vegetable, Kg: s.Kg, OutP10: dated(s.Out.P10), OutP50: dated(s.Out.P50), OutP90: dated(s.Out.P90),
		Outlasts: s.Outlasts, Judged: s.Judged, Meets: s.Meets, WaitDays: s.WaitD, Next: s.Next, Batches: []batchRow{}}
	for i := range s.Batches {
		b := &s.Batches[i]
		row.Batches = append(row.Batches, batchRow{b.ID, b.Store, b.Crop, b.Use, b.Kg, b.Stored, b.Planting, dated(b.Good), dated(b.Out.P50),
			b.Spoils, b.EatenKg, b.LostKg, b.SownKg, b.LeftKg})
	}
	return row
}

func (a *App) surplusRow(s *desk.SurplusView) surplusRow {
	row := surplusRow{Vegetable: s.Vegetable, OverKg: s.Course, FullKg: s.FullKg, NoTimeKg: s.NoTimeKg, Weeks: []surplusDay{}, Ways: []wayRow{}}
	for _, w := range s.Weeks {
		row.Weeks = append(row.Weeks, surplusDay{w.Week, w.Poor, w.Mid, w.Good, w.Chance})
	}
	for _, w := range s.Ways {
		row.Ways = append(row.Ways, wayRow{w.Kind, w.Store, w.Method, w.RoomKg, a.Words.Text(w.Says), a.texts(w.Prepare)})
	}
	return row
}

// texts are phrases as written; empty, never null, where there are none.
func (a *App) texts(phrases []words.Phrase) []string {
	out := []string{}
	for _, p := range phrases {
		out = append(out, a.Words.Text(p))
	}
	return out
}
