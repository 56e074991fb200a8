package larder

import (
	"math"
	"math/rand/v2"
	"testing"

	"garner/internal/cal"
)

// A claim is held back before anything is eaten, with what will be lost until
// then: of 10 kg that lose a tenth a month, 3 kg wanted after ten days need
// 3 / 0.9^(10/30.4375) kg now.
func TestAClaimIsHeldBackBeforeFood(t *testing.T) {
	in := simple(40, 2, kept, sand(50))
	in.Batches = []Opening{carrots("a", 10, monday-30)}
	in.Claims = []Claim{{Planting: "next", Crop: "carrot", Use: "table", Day: monday + 10, Kg: 3}}
	y := run(t, in, Future{})
	near(t, "planted", y.Claims[0].SownKg, 3)
	near(t, "short", y.Claims[0].ShortKg, 0)
	near(t, "planted of the batch", y.Batches[0].SownKg, 3)
	held := 3 / math.Pow(0.9, 10/daysInMonth)
	if eaten := y.Batches[0].EatenKg; eaten > 10-held || eaten < 9.7-held {
		t.Errorf("%g kg are eaten of 10, %g held back", eaten, held)
	}
	near(t, "all accounted for", y.Batches[0].EatenKg+y.Batches[0].LostKg+y.Batches[0].SownKg+y.Batches[0].LeftKg, 10)
}

// What is not there is told as short, and stock outlasts its life as food.
func TestAClaimThatCannotBeMet(t *testing.T) {
	in := simple(40, 1, plain, sand(50)) // keeps ten days, loses nothing
	in.Batches = []Opening{carrots("a", 2, monday-1)}
	in.Claims = []Claim{
		{Planting: "p", Crop: "carrot", Use: "table", Day: monday + 30, Kg: 5},
		{Planting: "q", Crop: "carrot", Use: "storage", Day: monday + 3, Kg: 1}, // of another use
		{Planting: "r", Crop: "carrot", Use: "table", Day: monday + 400, Kg: 9}, // beyond the table
	}
	y := run(t, in, Future{})
	near(t, "planted", y.Claims[0].SownKg, 2)
	near(t, "short", y.Claims[0].ShortKg, 3)
	near(t, "eaten", y.Batches[0].EatenKg, 0)
	near(t, "short of the other use", y.Claims[1].ShortKg, 1)
	if y.Claims[2] != (ClaimYear{}) {
		t.Errorf("beyond the table: %+v", y.Claims[2])
	}
}

// What is planted on the day the batch is first looked at comes out of it, and a
// batch that is all planting stock is out when the last of it is planted.
func TestStockIsPlantedOnTheDayItsBatchIsThere(t *testing.T) {
	in := simple(40, 1, plain, sand(50))
	in.Batches = []Opening{carrots("a", 3, monday-30), carrots("b", 9, monday-1)}
	in.Claims = []Claim{
		{Planting: "today", Crop: "carrot", Use: "table", Day: monday, Kg: 1},
		{Planting: "next", Crop: "carrot", Use: "table", Day: monday + 20, Kg: 2},
	}
	y := run(t, in, Future{})
	near(t, "planted today", y.Claims[0].SownKg, 1)
	near(t, "planted later", y.Claims[1].SownKg, 2)
	if out := y.Batches[0].Out; out != monday+20 {
		t.Errorf("the batch of planting stock is out on %s, planted on %s", out, monday+20)
	}
	if y.Batches[1].SownKg != 0 || y.Batches[1].EatenKg == 0 {
		t.Errorf("the batch of food: %+v", y.Batches[1])
	}
}

// Stock may come from what the table's own plantings bring into store.
func TestAClaimOnTheComingHarvest(t *testing.T) {
	in := simple(60, 0.1, kept, sand(50))
	in.Claims = []Claim{{Planting: "next", Crop: "carrot", Use: "table", Day: monday + 50, Kg: 4}}
	s := supply("p", 0)
	s.Standing, s.Store, s.Lift = []float32{10, 10}, "sand", true
	y := run(t, in, Future{Supplies: []*Supply{s}})
	near(t, "planted", y.Claims[0].SownKg, 4)
	near(t, "of the planting", y.Plantings[0].SownKg, 4)
}

// Whatever is claimed: nothing is made or mislaid (the run checks it), no claim
// is met more than in full, and without claims the year is the same bit for bit.
func TestClaimsKeepTheBalance(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 300 {
		in := simple(80, r.Float64(), kept, sand(5+30*r.Float64()))
		for i := range r.IntN(4) {
			in.Batches = append(in.Batches, carrots(string(rune('a'+i)), 8*r.Float64(), monday-cal.Date(r.IntN(200))))
		}
		s := supply("p", r.IntN(30))
		s.Standing, s.Store, s.Lift = []float32{5, 9, 9, 8}, "sand", true
		f := Future{Supplies: []*Supply{s}}
		plainly := run(t, in, f)
		for range 1 + r.IntN(3) {
			in.Claims = append(in.Claims, Claim{Planting: "n", Crop: "carrot", Use: "table", Day: monday + cal.Date(r.IntN(90)), Kg: 4 * r.Float64()})
		}
		y := run(t, in, f)
		for i, c := range y.Claims {
			want := in.Claims[i].Kg
			if int(in.Claims[i].Day-monday) >= in.Days {
				want = 0
			}
			if c.SownKg < 0 || c.ShortKg < 0 || math.Abs(c.SownKg+c.ShortKg-want) > 1e-9 {
				t.Fatalf("%+v of %+v", c, in.Claims[i])
			}
		}
		if y.Balance.StoredKg+y.Balance.FreshKg > plainly.Balance.StoredKg+plainly.Balance.FreshKg+1e-5 {
			t.Fatalf("more is eaten with claims: %+v, %+v", y.Balance, plainly.Balance)
		}
	}
}
