package outlook_test

import (
	"math"
	"testing"

	"garner/internal/cal"
	"garner/internal/growth"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/plan"
	"garner/internal/record"
)

// liftedOn is when the beetroot of the small holding is lifted.
var liftedOn = cal.Of(2027, 6, 10)

// movedBeetroot is the beetroot of the small holding, set in its other bed.
func movedBeetroot() plan.Planting {
	p := plan.New("p9", "p")
	p.Bed, p.Crop, p.Date, p.AreaM2, p.Relation, p.To = "b1", "beetroot", liftedOn, 2, plan.Moved, "p3"
	return p
}

func fateIn(t *testing.T, table *outlook.Table, id string) *outlook.Fate {
	t.Helper()
	for i := range table.Plantings {
		if table.Plantings[i].Planting == id {
			return &table.Plantings[i]
		}
	}
	t.Fatalf("no planting %s", id)
	return nil
}

func kgOf(f *outlook.Fate) (sum float64) {
	for _, y := range f.Years {
		most := 0.0
		for _, v := range y.Standing {
			most = max(most, float64(v))
		}
		for _, v := range y.Flow {
			sum += float64(v)
		}
		sum += most
	}
	return sum / float64(len(f.Years))
}

func readyOf(f *outlook.Fate) (sum float64) {
	n := 0
	for _, y := range f.Years {
		if y.Ready >= 0 {
			sum += float64(y.Ready)
			n++
		}
	}
	return sum / float64(n)
}

// A planting lifted and set elsewhere goes on there with a check: its old ground
// is free, nothing is eaten twice, and it is ready later than if it had stayed.
func TestMovedGoesOnWithACheck(t *testing.T) {
	stayed := compute(t, setting(t, small(), 2), outlook.NewMemory())
	h := small()
	h.Plantings = append(h.Plantings, movedBeetroot())
	moved := compute(t, setting(t, h, 2), outlook.NewMemory())
	old, set := fateIn(t, moved, "p3"), fateIn(t, moved, "p9")
	for f, y := range old.Years {
		if y.End != growth.Lifted {
			t.Fatalf("future %d: the old planting ended %s", f, y.End)
		}
		if last := y.First + len(y.Standing); len(y.Standing) > 0 && old.First+cal.Date(last) > liftedOn {
			t.Fatalf("future %d: the old planting stands until %s", f, old.First+cal.Date(last))
		}
	}
	for f, y := range set.Years {
		if y.First >= 0 && set.First+cal.Date(y.First) < liftedOn {
			t.Fatalf("future %d: food from %s, before it was set", f, set.First+cal.Date(y.First))
		}
	}
	home := fateIn(t, stayed, "p3")
	// The new bed has more light and better soil, so weight is compared by the
	// date it is ready on only.
	if got, want := readyOf(set), readyOf(home); got <= want || got > want+40 {
		t.Errorf("ready on day %.0f moved, %.0f where it was", got, want)
	}
	if kgOf(set) <= 0.5*kgOf(home) {
		t.Errorf("%.2f kg moved, %.2f where it was", kgOf(set), kgOf(home))
	}
}

// Until it is lifted a moved planting has its old bed's air, so it does not
// matter what lies over the new one before.
func TestMovedHasTheAirOfItsOldBed(t *testing.T) {
	given := func(change func(*holding.Holding)) float64 {
		h := small()
		h.Plantings = append(h.Plantings, movedBeetroot())
		change(h)
		return readyOf(fateIn(t, compute(t, setting(t, h, 2), outlook.NewMemory()), "p9"))
	}
	base := given(func(*holding.Holding) {})
	if got := given(func(h *holding.Holding) { h.Covers[0].Bed, h.Covers[0].Off = "b1", liftedOn }); got <= base {
		t.Errorf("ready on day %.1f without the old bed's fleece, %.1f with it", got, base)
	}
	if got := given(func(h *holding.Holding) { h.Beds[1].Light = 0.4 }); got <= base {
		t.Errorf("ready on day %.1f from a darker bed, %.1f before", got, base)
	}
}

// What was recorded as lifted is lifted, not harvested, also where it was set days
// later; and it goes on there.
func TestLiftedOnADayAndSetOnAnother(t *testing.T) {
	h := small()
	h.Plantings = append(h.Plantings, movedBeetroot())
	h.Plantings[len(h.Plantings)-1].Date += 3
	lost(h, record.Moved, liftedOn, 0, "")
	moved := compute(t, setting(t, h, 2), outlook.NewMemory())
	for f, y := range fateIn(t, moved, "p3").Years {
		if y.End != growth.Lifted {
			t.Fatalf("future %d: the old planting ended %s", f, y.End)
		}
	}
	if kgOf(fateIn(t, moved, "p9")) <= 0 {
		t.Error("it gives nothing where it was set")
	}
}

// Where a record says that only a share was moved, the rest stays and gives its
// share.
func TestMovedShareLeavesTheRest(t *testing.T) {
	h := small()
	whole := kgOf(fateIn(t, compute(t, setting(t, h, 2), outlook.NewMemory()), "p3"))
	h.Plantings = append(h.Plantings, movedBeetroot())
	lost(h, record.Moved, liftedOn, 0.25, record.ShareUnit)
	rest := kgOf(fateIn(t, compute(t, setting(t, h, 2), outlook.NewMemory()), "p3"))
	if math.Abs(rest-0.75*whole) > 1e-6*whole {
		t.Errorf("%.4f kg of three quarters, %.4f of all", rest, whole)
	}
	later := movedBeetroot()
	later.ID, later.Date = "p10", later.Date+20
	h.Plantings = append(h.Plantings, later)
	if end := fateIn(t, compute(t, setting(t, h, 2), outlook.NewMemory()), "p3").Years[0].End; end != growth.Lifted {
		t.Errorf("the rest was moved too, and ended %s", end)
	}
}

// A course tells the light and air of the bed in which the planting stood.
func TestCourseTellsTheAirOfTheOldBed(t *testing.T) {
	h := small()
	h.Plantings = append(h.Plantings, movedBeetroot())
	table := compute(t, setting(t, h, 2), outlook.NewMemory())
	day := func(bed, planting string, on cal.Date) outlook.CourseDay {
		for _, c := range table.Courses(bed, 0) {
			if c.Planting == planting {
				return c.Days[on-c.First]
			}
		}
		t.Fatalf("no course of %s", planting)
		return outlook.CourseDay{}
	}
	old, set := day("b2", "p3", liftedOn-5), day("b1", "p9", liftedOn-5)
	if old.PARMJ != set.PARMJ || old.MeanC != set.MeanC {
		t.Errorf("before it was lifted %g MJ and %g C, in its old bed %g and %g", set.PARMJ, set.MeanC, old.PARMJ, old.MeanC)
	}
	if here, there := day("b1", "p9", liftedOn).PARMJ, day("b1", "p1", liftedOn).PARMJ; here != there {
		t.Errorf("once it is set %g MJ, of the bed %g", here, there)
	}
}

// Taking leaves off a crop that stands alone costs it, but not all; of an upper
// crop it gives the lower one light.
func TestStrippingLeaves(t *testing.T) {
	run := func(strip float64) (*outlook.Fate, *outlook.Fate) {
		h := small()
		kale, salad := &h.Plantings[2], &h.Plantings[3]
		kale.Crop, kale.Use, kale.Method, kale.Date = "kale", "plant", plan.Plant, cal.Of(2027, 6, 20)
		kale.StripOn, kale.StripShare = cal.Of(2027, 9, 10), strip
		salad.Crop, salad.Use, salad.Method, salad.Date = "lambs-lettuce", "", plan.Seed, cal.Of(2027, 8, 20)
		salad.AreaM2, salad.Relation, salad.To = 0.8, plan.Between, "p3"
		table := compute(t, setting(t, h, 2), outlook.NewMemory())
		return fateIn(t, table, "p3"), fateIn(t, table, "p4")
	}
	upper, lower := run(0)
	stripped, lit := run(0.5)
	if a, b := kgOf(stripped), kgOf(upper); a >= b || a < 0.5*b {
		t.Errorf("stripped %.3f kg, not stripped %.3f", a, b)
	}
	if a, b := kgOf(lit), kgOf(lower); a <= b {
		t.Errorf("under stripped leaves %.3f kg, under all of them %.3f", a, b)
	}
}

// A relation to a planting that is not there changes nothing, to the last bit.
func TestNeighbourGoneIsAlone(t *testing.T) {
	alone := compute(t, setting(t, small(), 2), outlook.NewMemory())
	h := small()
	h.Plantings[0].Relation, h.Plantings[0].To = plan.Between, "p77"
	tied := compute(t, setting(t, h, 2), outlook.NewMemory())
	if a, b := kgOf(fateIn(t, alone, "p1")), kgOf(fateIn(t, tied, "p1")); math.Float64bits(a) != math.Float64bits(b) {
		t.Errorf("%g kg alone, %g beside nobody", a, b)
	}
}
