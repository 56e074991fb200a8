package water

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// anySoil draws a soil that can be.
func anySoil(t *rapid.T) *Soil {
	s := &Soil{Wilting: rapid.Float64Range(0.02, 0.3).Draw(t, "wilting"), ReadyMM: rapid.Float64Range(2, 12).Draw(t, "ready")}
	s.Capacity = s.Wilting + rapid.Float64Range(0.03, 0.3).Draw(t, "holds")
	s.SurfaceMM = s.ReadyMM + rapid.Float64Range(1, 20).Draw(t, "surface")
	return s
}

func anyStand(t *rapid.T) Stand {
	return Stand{Basal: rapid.Float64Range(0, 1.3).Draw(t, "basal"), Cover: rapid.Float64Range(0, 1).Draw(t, "cover"),
		HeightM: rapid.Float64Range(0, 3).Draw(t, "height"), RootM: rapid.Float64Range(0, 1.5).Draw(t, "root"),
		Easy: rapid.Float64Range(0.1, 0.8).Draw(t, "easy"), Mulch: rapid.Float64Range(0, 1).Draw(t, "mulch")}
}

func anyGiven(t *rapid.T) Given {
	return Given{ReferenceMM: rapid.Float64Range(0, 12).Draw(t, "asked"), RainMM: rapid.Float64Range(0, 60).Draw(t, "rain") * rapid.Float64Range(0, 1).Draw(t, "rains"),
		IrrigationMM: max(0, rapid.Float64Range(-40, 40).Draw(t, "irrigation")), Wetted: rapid.Float64Range(0, 1).Draw(t, "wetted"),
		WindMS: rapid.Float64Range(0, 12).Draw(t, "wind"), LeastPct: rapid.Float64Range(0, 100).Draw(t, "humidity")}
}

// Rain and irrigation are what is lost, drained and less missing, over any run of
// days, soils and crops; nothing goes beyond what the ground holds.
func TestWaterIsKept(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, b := anySoil(t), Balance{}
		came, went := 0.0, 0.0
		for range rapid.IntRange(1, 60).Draw(t, "days") {
			on, g := anyStand(t), anyGiven(t)
			f := b.Day(s, &on, &g)
			came += g.RainMM + g.IrrigationMM
			went += f.LostMM() + f.DrainedMM
			switch {
			case f.EvaporatedMM < 0 || f.TranspiredMM < 0 || f.DrainedMM < 0:
				t.Fatalf("less than nothing: %+v", f)
			case f.Stress < 0 || f.Stress > 1 || b.MissingMM < 0 || b.DeepMM < -1e-9 || b.DryMM < 0 || b.DryMM > s.SurfaceMM+1e-9:
				t.Fatalf("out of range: %+v %+v", f, b)
			case f.LostMM() > MostCoefficient(on.Basal, g.LeastPct, g.WindMS, on.HeightM)*g.ReferenceMM+1e-9:
				t.Fatalf("more than the air can take: %+v", f)
			}
		}
		if off := came - went - (0 - b.MissingMM - b.DeepMM); math.Abs(off) > 1e-6 {
			t.Fatalf("%v mm came, %v went, %v is missing: off by %v", came, went, b.MissingMM+b.DeepMM, off)
		}
	})
}

// More water never leaves the crop shorter, and a mulch never costs water.
func TestMoreWaterNeverHarms(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anySoil(t)
		start := Balance{MissingMM: rapid.Float64Range(0, 100).Draw(t, "missing"), DryMM: rapid.Float64Range(0, s.SurfaceMM).Draw(t, "dry")}
		on, g := anyStand(t), anyGiven(t)
		on.Mulch, on.Firm = 0, true
		g.Wetted = 1
		bare, wetter, mulched := start, start, start
		more, below := g, on
		more.RainMM += rapid.Float64Range(0, 30).Draw(t, "more")
		below.Mulch = 0.5
		f, w, m := bare.Day(s, &on, &g), wetter.Day(s, &on, &more), mulched.Day(s, &below, &g)
		if w.Stress < f.Stress-1e-12 || m.EvaporatedMM > f.EvaporatedMM+1e-9 {
			t.Fatalf("%+v, with more rain %+v, mulched %+v", f, w, m)
		}
	})
}

// What is due fills the ground: with it the crop does not want that day.
func TestWhatIsDueIsEnough(t *testing.T) {
	s, err := SoilOf("loam")
	if err != nil {
		t.Fatal(err)
	}
	on := Stand{Basal: 1.1, Cover: 0.9, HeightM: 1.5, RootM: 0.6, Easy: 0.4}
	g := Given{ReferenceMM: 4, WindMS: 2, LeastPct: 50}
	b, given := Balance{}, 0
	for range 60 {
		g.IrrigationMM = b.DueMM(s, &on, &g)
		if g.IrrigationMM > 0 {
			given++
		}
		if f := b.Day(s, &on, &g); f.Stress < 1 {
			t.Fatalf("in want: %+v", f)
		}
	}
	if given < 5 || given > 15 { // some 4.5 mm a day of the 30 mm that come easily
		t.Errorf("watered %d times in 60 days", given)
	}
}

// A wet crop without leaves is not watered.
func TestBareGroundIsNotDue(t *testing.T) {
	s, _ := SoilOf("")
	b := Balance{MissingMM: 60, DryMM: 19}
	if due := b.DueMM(s, &Stand{}, &Given{ReferenceMM: 5, WindMS: 2, LeastPct: 45}); due != 0 {
		t.Errorf("%v mm", due)
	}
}

// Tall plants reach their full coefficient with less ground covered; none passes it.
func TestDensity(t *testing.T) {
	for _, c := range []struct{ cover, height, want float64 }{{0, 1, 0}, {0.2, 0.1, 0.2315}, {0.2, 3, 0.4}, {0.5, 2, 0.7937}, {1, 0.3, 1}} {
		if got := Density(c.cover, c.height); math.Abs(got-c.want) > 1e-4 { // FAO-56 eq. 98 by hand
			t.Errorf("%v at %v m: %v, want %v", c.cover, c.height, got, c.want)
		}
	}
}

// A day is worked out in one pass, and nothing is put on the heap.
func TestABalanceNeedsNoMemory(t *testing.T) {
	s, _ := SoilOf("clay")
	on := Stand{Basal: 1, Cover: 0.8, HeightM: 1, RootM: 0.5, Easy: 0.4}
	g := Given{ReferenceMM: 4, RainMM: 1, WindMS: 2, LeastPct: 50}
	b := Balance{}
	if n := testing.AllocsPerRun(100, func() { g.IrrigationMM = b.DueMM(s, &on, &g); b.Day(s, &on, &g) }); n != 0 {
		t.Errorf("%v allocations", n)
	}
}

func BenchmarkBalanceDay(b *testing.B) {
	s, _ := SoilOf("loam")
	on, state := Stand{Basal: 1, Cover: 0.8, HeightM: 1, RootM: 0.5, Easy: 0.4}, Balance{}
	for i := range b.N {
		state.Day(s, &on, &Given{ReferenceMM: 4, RainMM: float64(i & 7), WindMS: 2, LeastPct: 50})
	}
}

// Salad after a deep-rooted crop that drank the ground dry lacks no more than its own
// shallow layer holds; what the old roots took below is filled before any water drains,
// and meets the roots of a crop that goes down again.
func TestRootsThatFollowRoots(t *testing.T) {
	s, err := SoilOf("loam")
	if err != nil {
		t.Fatal(err)
	}
	deep, salad, wet := Stand{Basal: 1.1, Cover: 0.9, HeightM: 1, RootM: 1, Easy: 0.4}, Stand{Basal: 0.2, Cover: 0.1, HeightM: 0.1, RootM: 0.2, Easy: 0.3}, Given{WindMS: 2, LeastPct: 50}
	b := Balance{}
	for range 30 {
		b.Day(s, &deep, &Given{ReferenceMM: 5, WindMS: 2, LeastPct: 50})
	}
	was := b.MissingMM
	if was < 80 {
		t.Fatalf("only %v mm are missing", was)
	}
	if due := b.DueMM(s, &salad, &Given{ReferenceMM: 3, WindMS: 2, LeastPct: 50}); due > s.HeldMM(0.2) || due <= 0 {
		t.Errorf("%v mm are due, the layer holds %v", due, s.HeldMM(0.2))
	}
	b.Day(s, &salad, &wet)
	if b.MissingMM > 0.2*was+1e-9 || math.Abs(b.MissingMM+b.DeepMM-was) > 1e-9 {
		t.Errorf("%v above and %v below of %v", b.MissingMM, b.DeepMM, was)
	}
	wet.RainMM = was - 10
	if f := b.Day(s, &salad, &wet); f.DrainedMM != 0 || math.Abs(b.DeepMM-10) > 1e-9 {
		t.Errorf("%v mm drain, %v are missing below", f.DrainedMM, b.DeepMM)
	}
	wet.RainMM = 0
	b.Day(s, &Stand{Basal: 1, Cover: 0.8, RootM: 0.6, Easy: 0.4}, &wet)
	if math.Abs(b.MissingMM-5) > 1e-9 { // half of the way down, half of the 10 mm
		t.Errorf("%v mm are missing half way down", b.MissingMM)
	}
}
