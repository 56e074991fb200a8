package larder

import (
	"math"
	"math/rand/v2"
	"testing"

	"garner/internal/cal"
	"garner/internal/crop"
)

// kept loses a tenth of what there is in a month and keeps for long.
var kept = crop.Storage{Method: "damp sand", BestC: 2, LifeDays: 300, Q10: 2.5, FloorC: 0, LossMonth: 0.1}

// A count of a batch says what was eaten: what is missing beyond the losses.
// By hand: 10 kg lose 1 kg in a month of 30.4375 days (here 30 days, 0.9866 kg),
// and 6 are there, so that 3.0134 were eaten.
func TestACountOfABatch(t *testing.T) {
	in := simple(14, 1, kept, sand(50))
	in.Batches = []Opening{carrots("a", 10, monday-40), carrots("b", 4, monday-40)}
	made, told := Recount(in, []Count{{On: monday - 10, Batch: "a", Kg: 6}})
	remains := math.Pow(0.9, 30/daysInMonth)
	near(t, "lost", told[0].LostKg, 10*(1-remains))
	near(t, "eaten", told[0].EatenKg, 10*remains-6)
	near(t, "there", told[0].Kg, 6)
	if told[0].On != monday-10 || told[1].On.IsSet() || told[1].Kg != 4 || made[1].Kg != 4 || made[1].Seen {
		t.Errorf("told %+v", told)
	}
	near(t, "there when the table begins", made[0].Kg, 6*math.Pow(0.9, 10/daysInMonth))
}

// A count of the store leaves each vegetable the same share, and of one
// vegetable what goes over first was eaten first.
func TestACountOfAStore(t *testing.T) {
	row := kept
	row.LossMonth = 0
	in := simple(14, 1, row, sand(50))
	beet := carrots("c", 4, monday-50)
	beet.Vegetable = "beetroot"
	in.Vegetables = append(in.Vegetables, "beetroot")
	in.Batches = []Opening{carrots("young", 6, monday-20), carrots("old", 6, monday-90), beet, carrots("late", 5, monday-2)}
	_, told := Recount(in, []Count{{On: monday - 5, Store: "sand", Kg: 8}})
	for i, want := range []float64{6, 0, 2, 5} {
		near(t, in.Batches[i].ID, told[i].Kg, want)
	}
	near(t, "eaten of the old", told[1].EatenKg, 6)
	if told[3].On.IsSet() {
		t.Error("what came later was counted")
	}
	_, more := Recount(in, []Count{{On: monday - 5, Store: "sand", Kg: 20}})
	near(t, "more than was put in", more[0].Kg, 6*20.0/16)
}

// What is found where a count had found nothing lies there in the shares in which it
// was put in: a count is never lost.
func TestFoundAfterNothing(t *testing.T) {
	in := simple(14, 1, kept, sand(50))
	in.Batches = []Opening{carrots("a", 8, monday-40), carrots("b", 4, monday-40)}
	made, told := Recount(in, []Count{{On: monday - 20, Store: "sand", Kg: 0}, {On: monday - 5, Store: "sand", Kg: 3}})
	for i, want := range []float64{2, 1} {
		near(t, in.Batches[i].ID, told[i].Kg, want)
		if told[i].On != monday-5 || made[i].Kg <= 0 {
			t.Errorf("%+v, %+v", told[i], made[i])
		}
		near(t, "all accounted for", told[i].Kg+told[i].EatenKg+told[i].LostKg, in.Batches[i].Kg)
	}
}

// Later counts go from earlier ones, in whatever order they are given.
func TestCountsInOrderOfTime(t *testing.T) {
	in := simple(14, 1, kept, sand(50))
	in.Batches = []Opening{carrots("a", 10, monday-60)}
	first, then := Count{On: monday - 30, Batch: "a", Kg: 7}, Count{On: monday - 3, Store: "sand", Kg: 5}
	_, one := Recount(in, []Count{first, then})
	_, other := Recount(in, []Count{then, first})
	if one[0] != other[0] {
		t.Errorf("%+v and %+v", one[0], other[0])
	}
	near(t, "all accounted for", one[0].Kg+one[0].EatenKg+one[0].LostKg, 10)
}

// The count of an evening is what the next morning begins with: the table is
// that of a batch which was there then.
func TestACountOnTheEveOfTheTable(t *testing.T) {
	in := simple(20, 0.5, kept, sand(50))
	in.Batches = []Opening{carrots("a", 10, monday-60)}
	in.Batches[0].Counted = monday
	made, _ := Recount(in, []Count{{On: monday - 1, Store: "sand", Kg: 7}})
	if made[0].Counted != monday || made[0].Kg != 7*math.Pow(0.9, 1/daysInMonth) {
		t.Errorf("%+v", made[0])
	}
	counted := in
	counted.Batches = made
	plainly := in
	plainly.Batches = []Opening{carrots("a", made[0].Kg, monday-60)}
	a, b := run(t, counted, Future{}), run(t, plainly, Future{})
	for d := range a.Courses[0].Stored {
		if a.Courses[0].Stored[d] != b.Courses[0].Stored[d] {
			t.Fatalf("day %d differs", d)
		}
	}
}

// What was counted is good, though the book would have it spoiled.
func TestWhatWasSeenIsGood(t *testing.T) {
	in := simple(10, 1, plain, sand(50)) // ten days
	in.Batches = []Opening{carrots("a", 10, monday-60)}
	if y := run(t, in, Future{}); y.Batches[0].EatenKg != 0 {
		t.Error("what is spoiled was eaten")
	}
	in.Batches, _ = Recount(in, []Count{{On: monday - 1, Batch: "a", Kg: 10}})
	y := run(t, in, Future{})
	near(t, "eaten on the one day that is left of ten", y.Batches[0].EatenKg, 1)
	near(t, "the rest spoils", y.Stores[0].SpoiledKg, 9)
}

// A batch is there from the morning after its count, or from the day from which it was
// there anyway when that is earlier.
func TestABatchIsThereAfterItsCount(t *testing.T) {
	in := simple(20, 0.5, kept, sand(50))
	for _, c := range []struct{ on, want cal.Date }{{monday - 8, monday - 7}, {monday - 1, monday}, {monday + 2, monday}} {
		in.Batches = []Opening{carrots("a", 10, monday-60)}
		in.Batches[0].Counted = monday
		if made, _ := Recount(in, []Count{{On: c.on, Batch: "a", Kg: 7}}); made[0].Counted != c.want || !made[0].Seen {
			t.Errorf("counted on %s it is there from %s, want %s", c.on, made[0].Counted, c.want)
		}
	}
}

// What would have gone into a store before a day lies there as a batch, or never did:
// it is left, and neither stored nor over.
func TestWhatIsStoredFromADayOn(t *testing.T) {
	in := simple(9, 0, plain, sand(50))
	s := supply("p", 0)
	s.Flow, s.Store, s.StoreFrom = []float32{1, 1, 1, 1, 1}, "sand", monday+2
	p := run(t, in, Future{Supplies: []*Supply{s}}).Plantings[0]
	near(t, "left", p.GroundKg, 2)
	near(t, "stored", p.PutKg, 3)
	near(t, "over", p.OverKg, 0)
}

// What lies in a store as a batch is not laid into it again when the planting
// ends, and is not over either.
func TestWhatIsBookedIsNotStoredTwice(t *testing.T) {
	in := simple(4, 1, plain, sand(50))
	s := supply("p", 0)
	s.Standing, s.Store, s.Lift, s.Booked = []float32{10, 10}, "sand", true, true
	y := run(t, in, Future{Supplies: []*Supply{s}})
	p := &y.Plantings[0]
	if p.PutKg != 0 || p.OverKg != 0 || math.Abs(p.FreshKg-2) > 1e-6 || math.Abs(p.GroundKg-8) > 1e-5 {
		t.Errorf("%+v", p)
	}
}

// Whatever is counted, no weight is negative, counts of a store add up to what
// was counted, and what is there, eaten and lost is what was put in, unless more
// was found than that.
func TestCountsAddUp(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 400 {
		in := simple(14, 1, kept, sand(50))
		put := 0.0
		for i := range 1 + r.IntN(5) {
			b := carrots(string(rune('a'+i)), 1+9*r.Float64(), monday-cal.Date(30+r.IntN(100)))
			put += b.Kg
			in.Batches = append(in.Batches, b)
		}
		counts := []Count{{On: monday - 20, Batch: "a", Kg: in.Batches[0].Kg * r.Float64() / 2}}
		counts = append(counts, Count{On: monday - 8, Store: "sand", Kg: put * r.Float64() / 2})
		made, told := Recount(in, counts)
		sum := 0.0
		for i := range told {
			sum += told[i].Kg
			if told[i].Kg < 0 || told[i].EatenKg < 0 || told[i].LostKg < 0 || made[i].Kg > told[i].Kg {
				t.Fatalf("%+v of %+v", told[i], in.Batches[i])
			}
			all := told[i].Kg + told[i].EatenKg + told[i].LostKg
			if math.Abs(all-math.Max(in.Batches[i].Kg, told[i].Kg)) > 1e-9 {
				t.Fatalf("%+v of %+v", told[i], in.Batches[i])
			}
		}
		near(t, "the store", sum, counts[1].Kg)
	}
}
