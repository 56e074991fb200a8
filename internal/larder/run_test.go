package larder

import (
	"math"
	"testing"

	"garner/internal/cal"
	"garner/internal/crop"
)

// A crop that stands still: a kg a day is eaten, the rest is over on its last day.
func TestStandingCrop(t *testing.T) {
	s := supply("a", 1)
	s.Standing = []float32{10, 10, 10, 10}
	c := run(t, simple(7, 1, plain), Future{Supplies: []*Supply{s}})
	same(t, "fresh", c.Courses[0].Fresh, 0, 1, 1, 1, 1, 0, 0)
	same(t, "short", c.Courses[0].Short, 1, 0, 0, 0, 0, 1, 1)
	same(t, "over", c.Courses[0].Over, 0, 0, 0, 0, 6, 0, 0)
	if p := c.Plantings[0]; p.From != monday+1 || p.To != monday+4 {
		t.Errorf("eaten from %v to %v", p.From, p.To)
	}
}

// A crop that grows: eating 1 of 10 kg takes a tenth of the planting, 1 of 18 kg
// an eighteenth of the rest. 0.9 x 17/18 x 30 = 25.5, less 1, is over.
func TestGrowingCrop(t *testing.T) {
	s := supply("a", 0)
	s.Standing = []float32{10, 20, 30}
	c := run(t, simple(4, 1, plain), Future{Supplies: []*Supply{s}})
	same(t, "fresh", c.Courses[0].Fresh, 1, 1, 1, 0)
	same(t, "over", c.Courses[0].Over, 0, 0, 24.5, 0)
}

// A small planting is eaten up and gives no more, though it would have grown.
func TestStandingCropEatenUp(t *testing.T) {
	s := supply("a", 0)
	s.Standing = []float32{1.5, 2, 2}
	c := run(t, simple(3, 1, plain), Future{Supplies: []*Supply{s}})
	same(t, "fresh", c.Courses[0].Fresh, 1, 2.0/3, 0)
	same(t, "short", c.Courses[0].Short, 0, 1.0/3, 1)
}

// Two kg ripen a day for two days and stay good two days more: a kg a day is
// eaten from the older, and what is then too old is over.
func TestFlowHangsItsDays(t *testing.T) {
	s := supply("a", 0)
	s.Flow, s.HoldDays = []float32{2, 2}, 2
	c := run(t, simple(5, 0.75, plain), Future{Supplies: []*Supply{s}})
	same(t, "fresh", c.Courses[0].Fresh, 0.75, 0.75, 0.75, 0.75, 0)
	same(t, "over", c.Courses[0].Over, 0, 0, 0, 1, 0)
	s.HoldDays = 0
	c = run(t, simple(5, 0.75, plain), Future{Supplies: []*Supply{s}})
	same(t, "over on the day", c.Courses[0].Over, 1.25, 1.25, 0, 0, 0)
}

// What hangs at the end of the planting keeps five days in the kitchen at most.
func TestGatheredAtTheEnd(t *testing.T) {
	s := supply("a", 0)
	s.Flow, s.HoldDays = []float32{10}, 60
	c := run(t, simple(8, 1, plain), Future{Supplies: []*Supply{s}})
	same(t, "fresh", c.Courses[0].Fresh, 1, 1, 1, 1, 1, 1, 0, 0)
	same(t, "over", c.Courses[0].Over, 0, 0, 0, 0, 0, 4, 0, 0)
}

// Lifted on its last day: a tenth is lost on preparing, the rest eaten from the
// next day, and after ten days in the store it is spoiled: lost, not over.
func TestLiftedToStore(t *testing.T) {
	s := supply("a", 0)
	s.Standing, s.Lift, s.Store = []float32{20}, true, "sand"
	row := plain
	row.LossShare = 0.1
	c := run(t, simple(13, 1, row, sand(50)), Future{Supplies: []*Supply{s}})
	same(t, "fresh", c.Courses[0].Fresh, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0)
	same(t, "stored", c.Courses[0].Stored, 0, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 0, 0)
	same(t, "short", c.Courses[0].Short, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 1)
	same(t, "over", c.Courses[0].Over, make([]float64, 13)...)
	same(t, "level", c.Stores[0].LevelKg, 17.1, 16.1, 15.1, 14.1, 13.1, 12.1, 11.1, 10.1, 9.1, 8.1, 0, 0, 0)
	p := c.Plantings[0]
	near(t, "put", p.PutKg, 19)
	near(t, "eaten from store", p.EatenKg, 10)
	near(t, "lost", p.LostKg, 1.9+7.1)
	near(t, "spoiled", c.Stores[0].SpoiledKg, 7.1)
}

// A store ten degrees too warm at a Q10 of 2.5 gives four days for ten; a lot
// that keeps half as well as the book says gives two.
func TestWarmStoreShortensLife(t *testing.T) {
	warm := sand(50)
	warm.WinterC, warm.SummerC = 12, 12
	s := supply("a", 0)
	s.Standing, s.Lift, s.Store = []float32{20}, true, "sand"
	c := run(t, simple(7, 1, plain, warm), Future{Supplies: []*Supply{s}})
	same(t, "stored", c.Courses[0].Stored, 0, 1, 1, 1, 1, 0, 0)
	c = run(t, simple(7, 1, plain, warm), Future{Supplies: []*Supply{s}, SupplyLife: []float64{0.5}})
	same(t, "stored", c.Courses[0].Stored, 0, 1, 1, 0, 0, 0, 0)
}

// A full store takes what it has room for after preparing: 5/0.9 of 10 kg. The
// rest is over, and known as for want of room.
func TestFullStore(t *testing.T) {
	s := supply("a", 0)
	s.Standing, s.Lift, s.Store = []float32{10}, true, "sand"
	row := plain
	row.LossShare = 0.1
	c := run(t, simple(3, 0, row, sand(5)), Future{Supplies: []*Supply{s}})
	near(t, "put", c.Plantings[0].PutKg, 5/0.9)
	near(t, "for want of room", c.Plantings[0].FullKg, 10-5/0.9)
	same(t, "over", c.Courses[0].Over, 10-5/0.9, 0, 0)
	same(t, "level", c.Stores[0].LevelKg, 5, 5, 5)
}

// What the store does not suit, and what has no store, is over.
func TestOverWithoutAStore(t *testing.T) {
	for _, store := range []string{"", "freezer"} {
		s := supply("a", 0)
		s.Standing, s.Lift, s.Store = []float32{10}, true, store
		freezer := Store{ID: "freezer", Name: "Freezer", Method: Frozen, CapacityKg: 50}
		c := run(t, simple(2, 0, plain, freezer), Future{Supplies: []*Supply{s}})
		same(t, "over", c.Courses[0].Over, 10, 0)
		near(t, "for want of room", c.Plantings[0].FullKg, 0)
	}
}

// What goes over first is eaten first: batch, then the flow, then the bed.
func TestSoonestOverIsEatenFirst(t *testing.T) {
	bed := supply("bed", 0)
	bed.Standing = []float32{9, 9, 9, 9, 9, 9, 9, 9, 9, 9}
	row := supply("row", 0)
	row.Flow, row.HoldDays = []float32{2, 0, 0, 0, 0, 0}, 6
	in := simple(6, 1, plain, sand(50))
	in.Batches = []Opening{carrots("old", 2, monday-5)}
	c := run(t, in, Future{Supplies: []*Supply{bed, row}})
	same(t, "stored", c.Courses[0].Stored, 1, 1, 0, 0, 0, 0)
	near(t, "row", c.Plantings[1].FreshKg, 2)
	near(t, "bed", c.Plantings[0].FreshKg, 2)
	if got := c.Batches[0].Out; got != monday+1 {
		t.Errorf("batch out on %v", got)
	}
}

// Two that go over on the same day: the fresh one is eaten first.
func TestFreshBeforeStored(t *testing.T) {
	s := supply("bed", 0)
	s.Standing = []float32{1, 1, 1, 1, 1, 1}
	in := simple(7, 1, plain, sand(50))
	in.Batches = []Opening{carrots("old", 2, monday-5)}
	c := run(t, in, Future{Supplies: []*Supply{s}})
	same(t, "fresh", c.Courses[0].Fresh, 1, 0, 0, 0, 0, 0, 0)
	same(t, "stored", c.Courses[0].Stored, 0, 1, 1, 0, 0, 0, 0)
}

// A batch loses its share a month: 10 kg at 5 % a month weigh 9.5 after 30.4375
// days.
func TestMonthlyLoss(t *testing.T) {
	row := crop.Storage{Method: "damp sand", BestC: 2, LifeDays: 1000, Q10: 1, LossMonth: 0.05}
	in := simple(62, 0, row, sand(50))
	in.Batches = []Opening{carrots("b", 10, monday-40)}
	c := run(t, in, Future{})
	if got := c.Stores[0].LevelKg[61]; math.Abs(float64(got)-10*math.Pow(0.95, 61/30.4375)) > 1e-5 {
		t.Errorf("%g kg after two months", got)
	}
	if c.Batches[0].Out != cal.None {
		t.Errorf("out on %v", c.Batches[0].Out)
	}
}

// A batch past its life when the table begins is lost at once; one stored later
// arrives on its day.
func TestBatchesOldAndNew(t *testing.T) {
	in := simple(4, 1, plain, sand(50))
	in.Batches = []Opening{carrots("old", 3, monday-30), carrots("new", 1.5, monday+2)}
	c := run(t, in, Future{})
	same(t, "stored", c.Courses[0].Stored, 0, 0, 1, 0.5)
	near(t, "old lost", c.Batches[0].LostKg, 3)
	if c.Batches[0].Out != monday || c.Batches[1].Out != monday+3 {
		t.Errorf("out on %v and %v", c.Batches[0].Out, c.Batches[1].Out)
	}
}

// What was ready before the table begins is past; what ends after it is left.
func TestSuppliesAcrossTheTablesEnds(t *testing.T) {
	early := supply("early", -3)
	early.Flow, early.HoldDays = []float32{5, 5, 5, 1}, 9
	late := supply("late", 1)
	late.Standing = make([]float32, 30)
	for i := range late.Standing {
		late.Standing[i] = 8
	}
	gone := supply("gone", -9)
	gone.Standing, gone.Lift = []float32{4, 4}, true
	c := run(t, simple(3, 1, plain), Future{Supplies: []*Supply{early, late, gone}})
	same(t, "fresh", c.Courses[0].Fresh, 1, 1, 1)
	near(t, "early", c.Plantings[0].FreshKg, 1)
	near(t, "late left", c.Plantings[1].GroundKg, 6)
	if p := c.Plantings[2]; p.OverKg+p.GroundKg+p.PutKg != 0 {
		t.Errorf("a planting over before the table gave %+v", p)
	}
}

// The same cool shed wears roots faster in its summer: July in the north,
// January in the south.
func TestSouthernStoreCourse(t *testing.T) {
	shed := sand(50)
	shed.WinterC, shed.SummerC = 2, 18
	row := crop.Storage{Method: "damp sand", BestC: 2, LifeDays: 60, Q10: 2.5}
	out := func(northern bool) cal.Date {
		in := simple(200, 0, row, shed)
		in.Northern = northern
		in.Batches = []Opening{carrots("b", 5, monday)}
		return run(t, in, Future{}).Batches[0].Out
	}
	if north, south := out(true), out(false); south >= monday+25 || north <= monday+45 {
		t.Errorf("northern batch spoils on %v, southern on %v", north, south)
	}
}

// A batch that arrives within the table has its whole life from then on.
func TestNewBatchLivesItsLife(t *testing.T) {
	in := simple(16, 1, plain, sand(50))
	in.Batches = []Opening{carrots("new", 99, monday+2)}
	c := run(t, in, Future{})
	same(t, "stored", c.Courses[0].Stored, 0, 0, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 0, 0, 0)
}

// A standing crop that gives nothing on its first day is there on its next.
func TestStandingCropBeginsWithNothing(t *testing.T) {
	s := supply("a", 0)
	s.Standing = []float32{0, 5, 0, 5}
	c := run(t, simple(4, 1, plain), Future{Supplies: []*Supply{s}})
	same(t, "fresh", c.Courses[0].Fresh, 0, 1, 0, 1)
}

// A crop that is not lifted is over at its end, store or no store: a bolted
// lettuce keeps nowhere.
func TestNotLiftedIsOver(t *testing.T) {
	s := supply("a", 0)
	s.Standing, s.Store = []float32{10}, "sand"
	c := run(t, simple(2, 0, plain, sand(50)), Future{Supplies: []*Supply{s}})
	same(t, "over", c.Courses[0].Over, 10, 0)
}

// A supply that gives to the table's last day is cut off by the table: it is left
// in the ground, and does not come out as a glut on that day.
func TestSupplyCutOffByTheTable(t *testing.T) {
	bed, row := supply("bed", 0), supply("row", 0)
	bed.Standing, bed.Lift = []float32{4, 4, 4}, true
	row.Flow, row.HoldDays = []float32{1, 1, 1}, 1
	c := run(t, simple(3, 0, plain), Future{Supplies: []*Supply{bed, row}})
	same(t, "over", c.Courses[0].Over, 0, 1, 1)
	near(t, "bed left", c.Plantings[0].GroundKg, 4)
	near(t, "row left", c.Plantings[1].GroundKg, 1)
}
