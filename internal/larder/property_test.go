package larder

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"garner/internal/cal"
	"garner/internal/crop"
	"pgregory.net/rapid"
)

var someVegetables = []string{"carrot", "bean", "leek"}

// drawnRow is some way of keeping.
func drawnRow(t *rapid.T) crop.Storage {
	return crop.Storage{
		Method: "damp sand", BestC: 2, FloorC: rapid.Float64Range(-2, 2).Draw(t, "floor"),
		LifeDays: rapid.Float64Range(1, 200).Draw(t, "life"), Q10: rapid.Float64Range(1, 4).Draw(t, "q10"),
		LossShare: rapid.Float64Range(0, 0.5).Draw(t, "preparing"), LossMonth: rapid.Float64Range(0, 0.3).Draw(t, "a month"),
	}
}

// drawnSetting is a table of some weeks for up to three vegetables and two stores.
func drawnSetting(t *rapid.T, roomKg *rapid.Generator[float64]) Setting {
	in := Setting{First: monday, Days: rapid.IntRange(1, 90).Draw(t, "days"), Northern: rapid.Bool().Draw(t, "north"),
		Vegetables: someVegetables, Keeping: only(drawnRow(t))}
	for i := range 2 {
		in.Stores = append(in.Stores, Store{ID: fmt.Sprint("store", i), Method: "damp sand",
			WinterC: rapid.Float64Range(-5, 8).Draw(t, "winter"), SummerC: rapid.Float64Range(5, 25).Draw(t, "summer"),
			CapacityKg: roomKg.Draw(t, "room")})
	}
	for i := range rapid.IntRange(0, 4).Draw(t, "wants") {
		in.Wants = append(in.Wants, Want{ID: fmt.Sprint(i), Vegetable: rapid.SampledFrom(someVegetables).Draw(t, "vegetable"),
			KgPerWeek: rapid.Float64Range(0, 20).Draw(t, "kg"), From: cal.MonthDay{Month: rapid.IntRange(1, 12).Draw(t, "from"), Day: 10},
			To: cal.MonthDay{Month: rapid.IntRange(1, 12).Draw(t, "to"), Day: 9}})
	}
	for i := range rapid.IntRange(0, 3).Draw(t, "batches") {
		in.Batches = append(in.Batches, Opening{Vegetable: rapid.SampledFrom(someVegetables).Draw(t, "vegetable"),
			Batch: Batch{ID: fmt.Sprint(i), Store: "store0", Crop: "x", Kg: rapid.Float64Range(0, 30).Draw(t, "kg"),
				Stored: monday + cal.Date(rapid.IntRange(-100, 20).Draw(t, "stored"))}})
	}
	return in
}

func drawnSupply(t *rapid.T, id string) *Supply {
	s := &Supply{Planting: id, Vegetable: rapid.SampledFrom(someVegetables).Draw(t, "vegetable"), Crop: "x",
		First: monday + cal.Date(rapid.IntRange(-20, 90).Draw(t, "first")), HoldDays: rapid.IntRange(0, 12).Draw(t, "hold"),
		Lift: rapid.Bool().Draw(t, "lift"), Store: rapid.SampledFrom([]string{"", "store0", "store1"}).Draw(t, "store")}
	weights := rapid.SliceOfN(rapid.Float32Range(0, 15), 1, 40).Draw(t, "weights")
	if rapid.Bool().Draw(t, "stands") {
		s.Standing = weights
	} else {
		s.Flow = weights
	}
	return s
}

func drawnSupplies(t *rapid.T) []*Supply {
	var out []*Supply
	for i := range rapid.IntRange(0, 8).Draw(t, "supplies") {
		out = append(out, drawnSupply(t, fmt.Sprint("p", i)))
	}
	return out
}

func drawnRun(t *rapid.T, in Setting, f Future) *Year {
	p, err := NewPantry(in)
	if err != nil {
		t.Fatal(err)
	}
	out := p.NewYear()
	if err := p.Run(p.NewScratch(), f, out); err != nil {
		t.Fatal(err)
	}
	return out
}

var anyRoom = rapid.Float64Range(0.1, 60)

// Want is met or short to the gram, no weight is below zero, and the totals by
// planting agree with those by vegetable and by store. Run itself has proved
// that nothing was made or mislaid.
func TestEverythingIsAccountedFor(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		out := drawnRun(t, drawnSetting(t, anyRoom), Future{Supplies: drawnSupplies(t)})
		for _, c := range out.Courses {
			for d := range c.Want {
				if gap := float64(c.Want[d] - c.Fresh[d] - c.Stored[d] - c.Short[d]); math.Abs(gap) > 1e-5 {
					t.Fatalf("day %d: want less fresh, stored and short is %g", d, gap)
				}
				if min(c.Fresh[d], c.Stored[d], c.Short[d], c.Over[d]) < 0 {
					t.Fatalf("day %d: below zero", d)
				}
				if c.Want[d] == 0 && c.Fresh[d]+c.Stored[d] > 0 {
					t.Fatalf("day %d: eaten without want", d)
				}
			}
		}
		agree(t, out)
	})
}

func agree(t *rapid.T, out *Year) {
	var fresh, put, over, eaten, lost, left float64
	for _, p := range out.Plantings {
		fresh, put, over = fresh+p.FreshKg, put+p.PutKg, over+p.OverKg
		eaten, lost, left = eaten+p.EatenKg, lost+p.LostKg, left+p.StoreKg
		if gap := p.PutKg - p.EatenKg - p.LostKg - p.StoreKg; math.Abs(gap) > 1e-6*(1+p.PutKg) {
			t.Fatalf("%s: put in store less what came of it is %g", p.Planting, gap)
		}
		if p.FullKg > p.OverKg+1e-9 || min(p.FreshKg, p.PutKg, p.OverKg, p.FullKg, p.GroundKg, p.StoreKg) < 0 {
			t.Fatalf("%+v", p)
		}
	}
	for _, b := range out.Batches {
		eaten, lost, left = eaten+b.EatenKg, lost+b.LostKg, left+b.LeftKg
	}
	b := out.Balance
	for _, pair := range [][2]float64{{fresh, b.FreshKg}, {put, b.PutKg}, {over, b.OverKg}, {eaten, b.StoredKg},
		{lost, b.PreparedKg + b.DecayedKg + b.SpoiledKg}, {left, b.StoreKg}} {
		if math.Abs(pair[0]-pair[1]) > 1e-5*(1+pair[1]) {
			t.Fatalf("by planting %v, by balance %+v", pair, b)
		}
	}
}

// Where stores are roomy, another planting or a heavier one never leaves any day
// shorter. (A full store may: see TestABiggerStoreMayServeWorse.)
func TestMoreSupplyIsNeverShorter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawnSetting(t, rapid.Just(1e6))
		few := drawnSupplies(t)
		more := slices.Clone(few)
		if len(more) > 0 && rapid.Bool().Draw(t, "heavier") {
			more[0] = heavier(more[0], rapid.Float32Range(1, 3).Draw(t, "times"))
		} else {
			more = append(more, drawnSupply(t, "more"))
		}
		a, b := drawnRun(t, in, Future{Supplies: few}), drawnRun(t, in, Future{Supplies: more})
		for v := range a.Courses {
			for d, short := range b.Courses[v].Short {
				if short > a.Courses[v].Short[d]+1e-4 {
					t.Fatalf("%s on day %d: short %g with more, %g with less", someVegetables[v], d, short, a.Courses[v].Short[d])
				}
			}
		}
	})
}

func heavier(s *Supply, times float32) *Supply {
	h := *s
	h.Standing, h.Flow = slices.Clone(s.Standing), slices.Clone(s.Flow)
	for i := range h.Standing {
		h.Standing[i] *= times
	}
	for i := range h.Flow {
		h.Flow[i] *= times
	}
	return &h
}

// With one crop to lift, a bigger store never leaves any day shorter.
func TestMoreRoomIsNeverShorterForOneCrop(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawnSetting(t, anyRoom)
		in.Batches = nil
		s := drawnSupply(t, "p")
		s.Standing, s.Flow, s.Lift = append(s.Standing, s.Flow...), nil, true
		a := drawnRun(t, in, Future{Supplies: []*Supply{s}})
		in.Stores = slices.Clone(in.Stores)
		for i := range in.Stores {
			in.Stores[i].CapacityKg *= rapid.Float64Range(1, 4).Draw(t, "times")
		}
		b := drawnRun(t, in, Future{Supplies: []*Supply{s}})
		for v := range a.Courses {
			for d, short := range b.Courses[v].Short {
				if short > a.Courses[v].Short[d]+1e-4 {
					t.Fatalf("day %d: short %g with more room, %g with less", d, short, a.Courses[v].Short[d])
				}
			}
		}
	})
}

// No store holds more than it has room for, unless it began so.
func TestStoresDoNotOverflow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawnSetting(t, anyRoom)
		in.Batches = nil
		out := drawnRun(t, in, Future{Supplies: drawnSupplies(t)})
		for i, s := range out.Stores {
			if most := float64(slices.Max(s.LevelKg)); most > in.Stores[i].CapacityKg*(1+1e-6) {
				t.Fatalf("store %d holds %g kg of %g", i, most, in.Stores[i].CapacityKg)
			}
		}
	})
}

// The same future gives the same bits, in a used scratch as in a new one,
// whatever ran before in it.
func TestSameInputSameBits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, err := NewPantry(drawnSetting(t, anyRoom))
		if err != nil {
			t.Fatal(err)
		}
		f, other := Future{Supplies: drawnSupplies(t)}, Future{Supplies: drawnSupplies(t)}
		used, again, fresh := p.NewScratch(), p.NewYear(), p.NewYear()
		for _, step := range []struct {
			s *Scratch
			f Future
			y *Year
		}{{used, other, again}, {used, f, again}, {p.NewScratch(), f, fresh}} {
			if err := p.Run(step.s, step.f, step.y); err != nil {
				t.Fatal(err)
			}
		}
		if fmt.Sprintf("%v", *again) != fmt.Sprintf("%v", *fresh) {
			t.Fatalf("results differ:\n%v\n%v", *again, *fresh)
		}
	})
}
