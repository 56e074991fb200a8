package larder

import (
	"math"
	"math/rand/v2"
	"testing"

	"garner/internal/crop"
)

// freezer keeps carrots frozen and loses nothing.
var (
	freezer = Store{ID: "sand", Name: "Freezer", Method: Frozen, WinterC: -18, SummerC: -18, CapacityKg: 100}
	icy     = crop.Storage{Method: Frozen, BestC: -18, LifeDays: 300, Q10: 2, FloorC: -30}
)

// An hour and a half freezes 6 kg at a quarter of an hour a kilogram; the rest of
// a glut is over for want of time. The week after there is time again.
func TestKitchenHoursLimitAGlut(t *testing.T) {
	in := simple(14, 0, icy, freezer)
	in.KitchenHours = 1.5
	one, two := supply("p", 0), supply("q", 7)
	one.Standing, one.Store, one.Lift = []float32{10, 10}, "sand", true
	two.Standing, two.Store, two.Lift = []float32{4, 4}, "sand", true
	y := run(t, in, Future{Supplies: []*Supply{one, two}})
	near(t, "frozen of the first", y.Plantings[0].PutKg, 6)
	near(t, "no time for", y.Plantings[0].NoTimeKg, 4)
	near(t, "over", y.Plantings[0].OverKg, 4)
	near(t, "no room for", y.Plantings[0].FullKg, 0)
	near(t, "frozen of the second", y.Plantings[1].PutKg, 4)
	near(t, "hours", y.Stores[0].KitchenHours, 2.5)
	in.KitchenHours = 0
	if y := run(t, in, Future{Supplies: []*Supply{one, two}}); y.Plantings[0].PutKg != 10 || y.Plantings[0].NoTimeKg != 0 {
		t.Errorf("not limited: %+v", y.Plantings[0])
	}
}

// Each seven days from the first have the hours anew, whatever day of them a glut falls
// on: of 9 kg a day an hour and a half freezes 6 on the first day of each.
func TestTheWeeksHoursBeginEachSeventhDay(t *testing.T) {
	in := simple(30, 0, icy, freezer)
	in.KitchenHours = 1.5
	s := supply("p", 0)
	s.Store = "sand"
	for range 28 {
		s.Flow = append(s.Flow, 9)
	}
	level := run(t, in, Future{Supplies: []*Supply{s}}).Stores[0].LevelKg
	for day := range 28 {
		if want := float64(6 * (day/7 + 1)); math.Abs(float64(level[day])-want) > 1e-4 {
			t.Fatalf("%g kg are frozen by day %d, want %g", level[day], day, want)
		}
	}
}

// What is laid in as it is takes no time.
func TestLayingInTakesNoTime(t *testing.T) {
	in := simple(14, 0, plain, sand(50))
	in.KitchenHours = 0.01
	s := supply("p", 0)
	s.Standing, s.Store, s.Lift = []float32{10, 10}, "sand", true
	if y := run(t, in, Future{Supplies: []*Supply{s}}); y.Plantings[0].PutKg != 10 {
		t.Errorf("%+v", y.Plantings[0])
	}
}

// Whatever the hours and the room: no week takes more than its hours, the balance
// holds, and more hours never put less by.
func TestHoursAreNeverExceeded(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for range 300 {
		store := freezer
		store.CapacityKg = 2 + 20*r.Float64()
		in := simple(7, r.Float64(), icy, store)
		var f Future
		for i := range 1 + r.IntN(3) {
			s := supply(string(rune('a'+i)), r.IntN(5))
			s.Standing, s.Store, s.Lift = []float32{float32(9 * r.Float64()), float32(9 * r.Float64())}, "sand", true
			f.Supplies = append(f.Supplies, s)
		}
		put := 0.0
		for _, hours := range []float64{0.1, 0.5, 1, 4} {
			in.KitchenHours = hours
			y := run(t, in, f)
			if y.Stores[0].KitchenHours > hours+1e-9 || y.Stores[0].PutKg < put-1e-9 {
				t.Fatalf("%g hours: %+v, before %g", hours, y.Stores[0], put)
			}
			put = y.Stores[0].PutKg
			for _, p := range y.Plantings {
				if math.Abs(p.OverKg-p.NoTimeKg-p.FullKg) > 1e-9 {
					t.Fatalf("%+v", p)
				}
			}
		}
	}
}
