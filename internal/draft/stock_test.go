package draft_test

import (
	"math"
	"testing"

	"garner/internal/cal"
	"garner/internal/demotest"
	"garner/internal/draft"
	"garner/internal/holding"
	"garner/internal/larder"
	"garner/internal/outlook"
	"garner/internal/plan"
)

// garlicked is the small garden of a household that eats garlic and plants its own.
func garlicked(t *testing.T) (*holding.Holding, plan.Planting) {
	h := small(t)
	h.Wants = []larder.Want{{ID: "p", Vegetable: "garlic", KgPerWeek: 0.2}}
	p := plan.New("gar-27a", h.Plan)
	p.Bed, p.Crop, p.Method, p.Date, p.AreaM2, p.Stock = "a", "garlic", plan.Set, cal.Of(2027, 10, 18), 2, plan.OwnStock
	h.Plantings = []plan.Planting{p}
	return h, p
}

// perM2 is the planting stock of a square metre of garlic [kg], by the crop book.
func perM2(t *testing.T) float64 {
	c, _ := demotest.Book(t).Crop("garlic")
	u, err := c.Use("")
	if err != nil {
		t.Fatal(err)
	}
	return u.StockKg(string(plan.Set), 1)
}

// A pinned planting whose stock nothing kept gives asks for it: as much more is wanted
// in the week it goes in, of what the draft sows.
func TestPlantingStockIsWanted(t *testing.T) {
	h, p := garlicked(t)
	with := built(t, h, draft.Wish{Kind: draft.Pin, Planting: p.ID})
	h.Plantings[0].Stock = ""
	without := built(t, h, draft.Wish{Kind: draft.Pin, Planting: p.ID})
	week := int(p.Date-h.Today.Monday()) / 7
	for k := range with.Problem.Weeks {
		more, want := with.Problem.Demands[0].Levels[0].PerWeek[k]-without.Problem.Demands[0].Levels[0].PerWeek[k], 0.0
		if k == week {
			want = 2 * perM2(t)
		}
		if math.Abs(more-want) > 1e-3 {
			t.Errorf("week %d: %.4f kg more are wanted, %.4f kg are planted", k, more, want)
		}
	}
}

// Where the plan plants from its own store, so does the draft: each harvest gives what
// plants as much ground again before it is eaten, and the rows claim it in the table.
func TestOwnStockIsHeldBack(t *testing.T) {
	h, _ := garlicked(t)
	own := built(t, h)
	h.Plantings[0].Stock = ""
	bought := built(t, h)
	lots := func(d *draft.Draft) map[string]float64 {
		out := map[string]float64{}
		for j := range d.Problem.Sowings {
			if c := &d.Columns[j]; c.Method == plan.Set && c.Store == "" {
				for _, future := range d.Problem.Sowings[j].Lots {
					for _, l := range future {
						out[d.Problem.Sowings[j].ID] += l.Kg / draft.Futures
					}
				}
			}
		}
		return out
	}
	less, looked := lots(own), 0
	again := map[string]float64{}
	for j := range own.Columns {
		if own.Columns[j].OwnStock {
			again[own.Problem.Sowings[j].ID] = perM2(t) * own.Classes[own.Problem.Sowings[j].Ground].UnitM2
		}
	}
	for id, kg := range lots(bought) {
		if kept, known := less[id]; known {
			if again[id] > 0 {
				looked++
			}
			if math.Abs(kg-again[id]-kept) > 1e-3 {
				t.Errorf("%s gives %.4f kg of %.4f, %.4f kg of which are planted again", id, kept, kg, again[id])
			}
		}
	}
	rows, err := own.Lay(greedy(own.Problem, 20).Units)
	if err != nil || looked == 0 || len(rows) == 0 {
		t.Fatalf("%d sowings, %d rows, %v", looked, len(rows), err)
	}
	table, err := outlook.Compute(setting(t, own.With(rows)).Setting, outlook.NewMemory())
	if err != nil {
		t.Fatal(err)
	}
	claims := 0
	for i := range rows {
		if p := &rows[i].Planting; p.Method == plan.Set {
			if c, ok := table.StockClaim(p.ID); ok && math.Abs(c.Kg-perM2(t)*p.AreaM2) < 1e-9 {
				claims++
			}
		}
	}
	if claims == 0 {
		t.Error("no row claims planting stock in the table")
	}
}

// With few hours in the kitchen a draft freezes less, within them, and without a limit
// the kitchen is no resource.
func TestTheKitchensHoursAreAResource(t *testing.T) {
	h := small(t)
	h.Stores = []larder.Store{{ID: "freezer", Name: "freezer", Method: larder.Frozen, WinterC: larder.FreezerC, SummerC: larder.FreezerC, CapacityKg: 200}}
	h.Wants = []larder.Want{{ID: "p", Vegetable: "French bean", KgPerWeek: 1}}
	frozen := func(hours float64) float64 {
		h.KitchenH = hours
		d := built(t, h)
		row := -1
		for i := range d.Problem.Resources {
			if d.Problem.Resources[i].ID == "kitchen" {
				row = i
			}
		}
		if (row >= 0) != (hours > 0) {
			t.Fatalf("%g hours: resource %d", hours, row)
		}
		s := greedy(d.Problem, 60)
		for j := range d.Problem.Sowings {
			takes := false
			for _, u := range d.Problem.Sowings[j].Uses {
				takes = takes || u.Resource == row
			}
			if row >= 0 && takes != (d.Columns[j].Store == "freezer") && d.Problem.Sowings[j].Lots[0] != nil {
				t.Errorf("%s takes of the kitchen: %v", d.Problem.Sowings[j].ID, takes)
			}
		}
		rows, err := d.Lay(s.Units)
		if err != nil {
			t.Fatal(err)
		}
		h.KitchenH = 0 // what the plan would take if it could
		table, err := outlook.Compute(setting(t, d.With(rows)).Setting, outlook.NewMemory())
		if err != nil {
			t.Fatal(err)
		}
		most := 0.0
		weeks := make([]float64, d.Problem.Weeks)
		for _, levels := range table.Stores[0].LevelKg {
			for day := 1; day < 7*d.Problem.Weeks; day++ {
				weeks[day/7] += 0.25 * max(0, float64(levels[day]-levels[day-1])) / float64(len(table.Stores[0].LevelKg)) // data/labour.csv: 0.25 h/kg
			}
		}
		for week, kitchen := range weeks {
			most = max(most, kitchen)
			if row >= 0 && s.Used(row, week) > hours+1e-6 {
				t.Errorf("week %d takes %.2f of %.2f hours", week, s.Used(row, week), hours)
			}
		}
		return most
	}
	free, few := frozen(0), frozen(0.25)
	// judgement: the problem spreads what is frozen over fewer weeks than the table does,
	// or more; twice the limit is another plan.
	if free < 0.5 || few > 0.5 {
		t.Errorf("the busiest week takes %.2f hours without a limit, %.2f with a quarter", free, few)
	}
}
