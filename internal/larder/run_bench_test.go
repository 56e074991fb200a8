package larder

import (
	"fmt"
	"math"
	"testing"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/num"
)

// household is an invented year and a half of 120 supplies for 25 vegetables with
// six stores: a quarter picked over and over, the rest standing, two thirds with
// a store.
func household() (Setting, Future) {
	in := Setting{First: monday, Days: 546, Northern: true, Keeping: func(_, _, method string) (crop.Storage, bool) {
		return crop.Storage{Method: method, BestC: 3, LifeDays: 140, Q10: 2.2, LossShare: 0.1, LossMonth: 0.02}, true
	}}
	for i, method := range []string{"damp sand", "cool shed", "hung", "clamp", "fridge", Frozen} {
		in.Stores = append(in.Stores, Store{ID: fmt.Sprint("s", i), Method: method, WinterC: 3, SummerC: 12, CapacityKg: 60})
	}
	for v := range 25 {
		name := fmt.Sprint("v", v)
		in.Vegetables = append(in.Vegetables, name)
		in.Wants = append(in.Wants, Want{ID: name, Vegetable: name, KgPerWeek: 0.5})
		if v%4 == 0 {
			in.Batches = append(in.Batches, Opening{Vegetable: name,
				Batch: Batch{ID: name, Store: fmt.Sprint("s", v%6), Crop: name, Kg: 8, Stored: monday - 60}})
		}
	}
	r, f := num.NewStream(1), Future{}
	for i := range 120 {
		s := &Supply{Planting: fmt.Sprint("p", i), Vegetable: fmt.Sprint("v", i%25), Crop: fmt.Sprint("v", i%25), Use: "table",
			First: monday + cal.Date(r.IntN(500)), HoldDays: 5, Lift: i%3 == 0}
		if i%3 != 1 {
			s.Store = fmt.Sprint("s", i%6)
		}
		days := 20 + r.IntN(70)
		for d := range days {
			size := float32(6 * (0.4 + math.Sin(math.Pi*float64(d+1)/float64(days+1))))
			if i%4 == 0 {
				s.Flow = append(s.Flow, size/float32(days)*2)
			} else {
				s.Standing = append(s.Standing, size)
			}
		}
		f.Supplies = append(f.Supplies, s)
		f.SupplyLife = append(f.SupplyLife, math.Exp(0.2*r.Normal()))
	}
	return in, f
}

func warm(tb testing.TB) (*Pantry, *Scratch, Future, *Year) {
	in, f := household()
	p, err := NewPantry(in)
	if err != nil {
		tb.Fatal(err)
	}
	s, out := p.NewScratch(), p.NewYear()
	if err := p.Run(s, f, out); err != nil {
		tb.Fatal(err)
	}
	return p, s, f, out
}

func TestRunAllocatesNothingOnceWarm(t *testing.T) {
	p, s, f, out := warm(t)
	if n := testing.AllocsPerRun(3, func() { _ = p.Run(s, f, out) }); n > 0 {
		t.Errorf("%g allocations a run", n)
	}
}

func BenchmarkRun(b *testing.B) {
	p, s, f, out := warm(b)
	b.ReportAllocs()
	b.ResetTimer()
	for range b.N {
		if err := p.Run(s, f, out); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/(25*546), "ns/vegetable-day")
}

func BenchmarkWarmUp(b *testing.B) {
	in, f := household()
	for range b.N {
		p, err := NewPantry(in)
		if err != nil {
			b.Fatal(err)
		}
		if err := p.Run(p.NewScratch(), f, p.NewYear()); err != nil {
			b.Fatal(err)
		}
	}
}
