package outlook_test

import (
	"math"
	"testing"

	"garner/internal/cal"
	"garner/internal/holding"
	"garner/internal/larder"
	"garner/internal/outlook"
	"garner/internal/record"
)

// stocked is the small holding with batches of every fate: eaten in turn, never
// wanted so that it spoils, and more than can be eaten.
func stocked() *holding.Holding {
	h := small()
	h.Stores = append(h.Stores, larder.Store{ID: "box", Name: "Box", Method: "frozen", WinterC: -18, SummerC: -18, CapacityKg: 50})
	h.Batches = append(h.Batches,
		larder.Batch{ID: "a2", Store: "sand", Crop: "carrot", Use: "storage", Kg: 5, Stored: cal.Of(2026, 10, 1)},
		larder.Batch{ID: "on", Store: "shed", Crop: "onion", Use: "sets", Kg: 4, Stored: cal.Of(2026, 9, 1)},
		larder.Batch{ID: "be", Store: "sand", Crop: "beetroot", Use: "storage", Kg: 3, Stored: cal.Of(2026, 10, 20)},
		larder.Batch{ID: "pe", Store: "box", Crop: "pea", Use: "table", Kg: 2, Stored: cal.Of(2026, 7, 1)},
		larder.Batch{ID: "none", Store: "shed", Crop: "onion", Use: "sets", Kg: 0, Stored: cal.Of(2026, 9, 1)})
	return h
}

func stocksByName(table *outlook.Table) map[string]*outlook.Stock {
	out := map[string]*outlook.Stock{}
	stocks := table.Stocks()
	for i := range stocks {
		out[stocks[i].Vegetable] = &stocks[i]
	}
	return out
}

func TestWhatIsInStoreIsEatenLostOrLeft(t *testing.T) {
	table := compute(t, setting(t, stocked(), 2), outlook.NewMemory())
	found := 0
	for _, s := range table.Stocks() {
		sum := 0.0
		for _, b := range s.Batches {
			found++
			sum += b.ThereKg
			if got := b.EatenKg + b.LostKg + b.SownKg + b.LeftKg; math.Abs(got-b.ThereKg) > 1e-5 {
				t.Errorf("%s: %g kg eaten, lost or left of %g", b.ID, got, b.ThereKg)
			}
			if b.ThereKg != b.Kg {
				t.Errorf("%s: %g kg are there of %g, though it was not counted", b.ID, b.ThereKg, b.Kg)
			}
			for f, out := range b.Out {
				if out.IsSet() && out > b.Good {
					t.Errorf("%s runs out on %s in future %d, though good only until %s", b.ID, out, f, b.Good)
				}
				if last := s.Out[f]; last.IsSet() && (!out.IsSet() || out > last) {
					t.Errorf("%s outlasts the stock it is of in future %d", b.ID, f)
				}
			}
		}
		if sum != s.Kg {
			t.Errorf("%s: batches hold %g kg, the stock %g", s.Vegetable, sum, s.Kg)
		}
	}
	if found != 5 {
		t.Errorf("%d batches with food, want 5: the empty one is not told", found)
	}
}

// What was counted weeks before the table begins has been eaten from since: what is
// there then is what the store holds, and its account begins there.
func TestWhatIsThereOfABatchCountedLongAgo(t *testing.T) {
	h := small()
	h.Batches[0].Kg = 12
	h.Records = []record.Record{{ID: "r", Date: cal.Of(2026, 11, 22), What: record.Counted, Batch: "a1", Value: 9, Unit: "kg"}}
	table := compute(t, setting(t, h, 2), outlook.NewMemory())
	b := table.Stocks()[0].Batches[0]
	if b.Kg != 9 || b.ThereKg > 9-6*0.6 || b.ThereKg < 9-7*0.6 {
		t.Errorf("%g kg are there six weeks after %g were counted, of which 0.6 are eaten a week", b.ThereKg, b.Kg)
	}
	if got := b.EatenKg + b.LostKg + b.LeftKg; math.Abs(got-b.ThereKg) > 1e-5 {
		t.Errorf("%g kg eaten, lost or left of %g", got, b.ThereKg)
	}
	for _, s := range table.Stores {
		if s.Store == "sand" && math.Abs(float64(s.LevelKg[0][0])-b.ThereKg) > 0.1 {
			t.Errorf("the store holds %g kg at the close of the first day, the batch %g at its beginning", s.LevelKg[0][0], b.ThereKg)
		}
	}
}

// Peas are not wanted: the batch must spoil on the very day it is said to be good
// until.
func TestAnUnwantedBatchSpoilsOnItsLastDay(t *testing.T) {
	s := setting(t, stocked(), 2)
	table := compute(t, s, outlook.NewMemory())
	pea := stocksByName(table)["pea"]
	if pea == nil {
		t.Fatal("no peas in store")
	}
	good := pea.Batches[0].Good
	if good >= s.From+cal.Date(s.Days()) {
		t.Fatalf("the peas are good until %s, beyond the table", good)
	}
	for f, out := range pea.Out {
		if out != good {
			t.Errorf("future %d: out on %s, good until %s", f, out, good)
		}
		if pea.After[f].Judged {
			t.Error("what follows is judged though none is wanted")
		}
	}
}

// While a stock has not run out, its store is not empty; and a store to which only
// batches go is empty right after the last of them.
func TestRunningOutAgreesWithLevels(t *testing.T) {
	table := compute(t, setting(t, stocked(), 2), outlook.NewMemory())
	level := map[string][][]float32{}
	for _, s := range table.Stores {
		level[s.Store] = s.LevelKg
	}
	judged := 0
	for _, s := range table.Stocks() {
		for _, b := range s.Batches {
			for f, out := range b.Out {
				last := len(level[b.Store][f])
				if out.IsSet() {
					last = int(out - table.From)
				}
				for day := range last {
					if level[b.Store][f][day] <= 0 {
						t.Fatalf("%s is not out until %s, its store is empty on day %d in future %d", b.ID, out, day, f)
					}
				}
				judged++
			}
		}
	}
	if judged == 0 {
		t.Error("no batch was looked at")
	}
	h := stocked()
	h.Plantings = h.Plantings[:1] // nothing is put in store
	table = compute(t, setting(t, h, 2), outlook.NewMemory())
	carrot, beetroot := stocksByName(table)["carrot"], stocksByName(table)["beetroot"]
	for _, s := range table.Stores {
		if s.Store != "sand" {
			continue
		}
		for f := range s.LevelKg {
			if !carrot.Out[f].IsSet() || !beetroot.Out[f].IsSet() {
				t.Fatalf("future %d: it outlasts the table", f)
			}
			day := int(max(carrot.Out[f], beetroot.Out[f]) - table.From)
			if left := s.LevelKg[f][day]; left > 1e-5 {
				t.Errorf("future %d: %g kg in the sand box after the last has run out", f, left)
			}
		}
	}
}

// Food follows a stock or does not, as the table's own days say.
func TestWhatFollowsAStock(t *testing.T) {
	table := compute(t, setting(t, stocked(), 2), outlook.NewMemory())
	courses := map[string][]larder.Course{}
	for _, v := range table.Vegetables {
		courses[v.Name] = v.Years
	}
	met, unmet := 0, 0
	for _, s := range table.Stocks() {
		for f, a := range s.After {
			if !a.Judged {
				continue
			}
			c := courses[s.Vegetable][f]
			first := -1
			for day := int(s.Out[f]-table.From) + 1; day < len(c.Want); day++ {
				if c.Want[day] > 0 {
					first = day
					break
				}
			}
			if first < 0 {
				t.Fatalf("%s is judged in future %d though none is wanted after", s.Vegetable, f)
			}
			if a.Met {
				met++
				if a.Wait != 0 {
					t.Error("there is a wait for what is there")
				}
				// No more than a tenth of seven days' want may lack, so at most 0.7 of a day's.
				if lacks := c.Short[first] > c.Want[first]*.75; lacks {
					t.Errorf("%s, future %d: met, though %g of %g lack on the first day", s.Vegetable, f, c.Short[first], c.Want[first])
				}
				continue
			}
			unmet++
			if a.Wait != outlook.NoWait && a.Wait < 1 {
				t.Errorf("%s, future %d: waits %d days", s.Vegetable, f, a.Wait)
			}
			if a.Wait > 0 {
				day := int(s.Out[f]-table.From) + a.Wait
				if day >= len(c.Want) || c.Want[day] <= 0 {
					t.Errorf("%s, future %d: the wait ends on a day on which none is wanted", s.Vegetable, f)
				}
			}
		}
	}
	if met+unmet == 0 || unmet == 0 {
		t.Errorf("met %d times, unmet %d: the case shows nothing", met, unmet)
	}
}

// What is bought does not follow a stock: the same follows whether or not it may be.
func TestWhatIsBoughtFollowsNoStock(t *testing.T) {
	h := stocked()
	told := stocksByName(compute(t, setting(t, h, 2), outlook.NewMemory()))
	for i := range h.Wants {
		h.Wants[i].BuyKgPerWeek = 10
	}
	for name, s := range stocksByName(compute(t, setting(t, h, 2), outlook.NewMemory())) {
		for f, a := range s.After {
			if a != told[name].After[f] {
				t.Fatalf("%s, future %d: %+v where it may be bought, else %+v", name, f, a, told[name].After[f])
			}
		}
	}
}

func TestSurplusIsTheTablesOver(t *testing.T) {
	h := stocked()
	for i := range h.Plantings {
		h.Plantings[i].AreaM2 *= 2 // a glut
	}
	table := compute(t, setting(t, h, 2), outlook.NewMemory())
	over := map[string][]float64{}
	for i := range table.Vegetables {
		w := table.Weekly(i, false)
		over[w.Name] = w.Over
	}
	told := 0
	for _, s := range table.Surpluses() {
		for k := range s.Kg {
			mean := 0.0
			for f := range s.Years {
				mean += s.Years[f][k] / float64(len(s.Years))
			}
			if s.Kg[k] != over[s.Vegetable][k] || math.Abs(mean-s.Kg[k]) > 1e-9 {
				t.Errorf("%s, week %d: %g kg go over, the table has %g, the futures' mean is %g", s.Vegetable, k, s.Kg[k], over[s.Vegetable][k], mean)
			}
			if !(0 <= s.Chance[k] && s.Chance[k] <= 1 && s.Poor[k] <= s.Mid[k] && s.Mid[k] <= s.Good[k]) {
				t.Errorf("%s, week %d: chance %g, poor, middle and good year %g, %g, %g", s.Vegetable, k, s.Chance[k], s.Poor[k], s.Mid[k], s.Good[k])
			}
		}
		if len(s.From) == 0 {
			t.Errorf("%s goes over from no planting", s.Vegetable)
		}
		delete(over, s.Vegetable)
		told++
	}
	for name, weeks := range over {
		for _, kg := range weeks {
			if kg > 0 {
				t.Errorf("%s goes over and is not told", name)
			}
		}
	}
	if told == 0 {
		t.Error("nothing goes over: the case shows nothing")
	}
}

func TestLevelsLieBetweenNothingAndTheMost(t *testing.T) {
	table := compute(t, setting(t, stocked(), 2), outlook.NewMemory())
	for i, l := range table.Levels() {
		for day := range l.Kg[0] {
			for d := 1; d < len(l.Kg); d++ {
				if l.Kg[d][day] < l.Kg[d-1][day] || l.Kg[0][day] < 0 {
					t.Fatalf("%s, day %d: the deciles are out of order", l.Store, day)
				}
			}
		}
		for f, empty := range l.Empty {
			for day, kg := range table.Stores[i].LevelKg[f] {
				before := !empty.IsSet() || day < int(empty-table.From)
				if before && kg < 0.1 {
					t.Fatalf("%s, future %d: empty on day %d, before it is said to be", l.Store, f, day)
				}
			}
		}
	}
}
