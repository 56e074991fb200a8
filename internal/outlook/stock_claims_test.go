package outlook_test

import (
	"math"
	"reflect"
	"testing"

	"garner/internal/cal"
	"garner/internal/holding"
	"garner/internal/larder"
	"garner/internal/outlook"
	"garner/internal/plan"
)

// potatoes are a holding that plants some of its own store in April.
func potatoes(stock plan.Stock) *holding.Holding {
	h := small()
	h.Plantings = append(h.Plantings, plan.Planting{ID: "pot", Plan: "p", Bed: "b1", Crop: "potato", Use: "maincrop", Method: plan.Set,
		Date: cal.Of(2027, 4, 20), AreaM2: 2, ClearBy: cal.None, StripOn: cal.None, Stock: stock})
	h.Stores = append(h.Stores, larder.Store{ID: "sacks", Name: "Sacks", Method: "cool shed", WinterC: 4, SummerC: 14, CapacityKg: 60})
	h.Batches = append(h.Batches, larder.Batch{ID: "old", Store: "sacks", Crop: "potato", Use: "maincrop", Kg: 12, Stored: cal.Of(2026, 10, 1)})
	h.Wants = append(h.Wants, larder.Want{ID: "w9", Vegetable: "potato", KgPerWeek: 1.5})
	return h
}

// Planting stock is held back from food: what is eaten of the batch shrinks by it,
// and the weight of it is the book's.
func TestPlantingStockIsHeldBackFromFood(t *testing.T) {
	bought := compute(t, setting(t, potatoes(plan.BoughtStock), 2), outlook.NewMemory())
	own := compute(t, setting(t, potatoes(plan.OwnStock), 2), outlook.NewMemory())
	book := setting(t, potatoes(plan.OwnStock), 1).Book
	c, _ := book.Crop("potato")
	u, err := c.Use("maincrop")
	if err != nil {
		t.Fatal(err)
	}
	stock := u.StockKg("set", 2)
	if stock < 0.3 || stock > 0.8 {
		t.Fatalf("%g kg of seed potatoes for 2 m2; the common rule is 2 to 3 kg for 10", stock)
	}
	less := batchEaten(bought) - batchEaten(own)
	if less < stock*0.99 || less > stock*1.3 {
		t.Errorf("%g kg less are eaten, for %g kg of stock", less, stock)
	}
	for i := range bought.Vegetables {
		if v := &bought.Vegetables[i]; v.Name != "potato" && !reflect.DeepEqual(v.Years, own.Vegetables[i].Years) {
			t.Errorf("%s is another", v.Name)
		}
	}
}

func batchEaten(t *outlook.Table) float64 {
	sum := 0.0
	for _, s := range t.Sources("potato") {
		if s.Batch == "old" {
			for _, kg := range s.Stored {
				sum += kg
			}
		}
	}
	return sum
}

// Plants left for seed are not eaten: of half of the carrots' plants, half.
func TestPlantsLeftForSeedAreNotEaten(t *testing.T) {
	given := func(plants float64) float64 {
		h := small()
		h.Plantings[0].SeedPlants, h.Batches = plants, nil
		h.Wants[0].KgPerWeek = 50 // all of it is eaten
		table := compute(t, setting(t, h, 2), outlook.NewMemory())
		for _, s := range table.Sources("carrot") {
			if s.Planting == "p1" {
				sum := 0.0
				for _, kg := range s.Fresh {
					sum += kg
				}
				return sum
			}
		}
		return 0
	}
	book := setting(t, small(), 1).Book
	c, _ := book.Crop("carrot")
	u, err := c.Use("early")
	if err != nil {
		t.Fatal(err)
	}
	plants := 1.5 * u.PlantsPerM2()
	if all, half := given(0), given(plants/2); all < 1 || math.Abs(half/all-0.5) > 0.001 {
		t.Errorf("%g kg of all, %g of half", all, half)
	}
	if none := given(plants * 2); none != 0 {
		t.Errorf("%g kg of none", none)
	}
}

// An edit that claims planting stock weighs the difference of two full tables,
// also from a batch that leaves its use blank.
func TestClaimingStockWeighsTheDifferenceOfTwoTables(t *testing.T) {
	h := potatoes(plan.BoughtStock)
	own := h.Plantings[len(h.Plantings)-1]
	h.Batches[1].Use = ""
	c, _ := setting(t, h, 1).Book.Crop("potato")
	usual, err := c.Use("")
	if err != nil {
		t.Fatal(err)
	}
	own.Use = usual.Name
	h.Plantings[len(h.Plantings)-1] = own
	own.Stock, own.AreaM2 = plan.OwnStock, 5
	edit := outlook.Edit{Set: []plan.Planting{own}}
	scales, err := outlook.NewScales(setting(t, h, 2), outlook.NewMemory())
	if err != nil {
		t.Fatal(err)
	}
	weights, err := scales.Weigh([]outlook.Edit{edit})
	if err != nil {
		t.Fatal(err)
	}
	after := compute(t, setting(t, made(h, edit), 2), outlook.NewMemory())
	full := expectedShort(scales.Table) - expectedShort(after)
	if math.Abs(full-weights[0].DropKg) > 1e-5 {
		t.Errorf("the edit weighs %.6f kg, two tables differ by %.6f", weights[0].DropKg, full)
	}
	claim, claims := after.StockClaim("pot")
	if !claims || claim.Kg < 0.9 || claim.Short > 0 {
		t.Errorf("claimed: %+v", claim)
	}
	h.Batches[1].Kg = claim.Kg / 2
	if claim, _ = compute(t, setting(t, made(h, edit), 2), outlook.NewMemory()).StockClaim("pot"); claim.Odds < 0.999 || claim.Short < claim.Kg*0.4 {
		t.Errorf("of half as much: %+v", claim)
	}
}
