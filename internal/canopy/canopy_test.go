package canopy

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func stands(t *rapid.T) []Leaves {
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Leaves {
		top := rapid.Float64Range(0, 3).Draw(t, "top")
		return Leaves{
			Area:       rapid.Float64Range(0, 8).Draw(t, "area"),
			Extinction: rapid.Float64Range(0.2, 1.2).Draw(t, "extinction"),
			TopM:       top,
			FootM:      top * rapid.Float64Range(0, 0.9).Draw(t, "foot"),
		}
	}), 1, 6).Draw(t, "stand")
}

func share(stand []Leaves) []Light {
	out := make([]Light, len(stand))
	Share(stand, out)
	return out
}

// The light taken by all canopies never exceeds the light received.
func TestNoMoreIsCaughtThanArrives(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		stand := stands(t)
		sum, through := 0.0, 0.0
		for i, l := range share(stand) {
			if l.Caught < 0 || l.Top < 0 || l.Top > 1 || l.Caught > l.Top+1e-12 {
				t.Fatalf("canopy %d gets %+v", i, l)
			}
			sum += l.Caught
			through += stand[i].Extinction * stand[i].Area
		}
		// All leaves together let through what one canopy of them would.
		if want := -math.Expm1(-through); math.Abs(sum-want) > 1e-9 {
			t.Fatalf("caught %g together, want %g", sum, want)
		}
	})
}

// Taking the others away never lowers the light of a canopy.
func TestRemovingACanopyNeverDims(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		stand := stands(t)
		full := share(stand)
		gone := rapid.IntRange(0, len(stand)-1).Draw(t, "gone")
		left := append(append([]Leaves{}, stand[:gone]...), stand[gone+1:]...)
		for i, l := range share(left) {
			was := full[i]
			if i >= gone {
				was = full[i+1]
			}
			if l.Top < was.Top-1e-9 || l.Caught < was.Caught-1e-9 {
				t.Fatalf("canopy %d: %+v with all, %+v with one less", i, was, l)
			}
		}
	})
}

// Alone it is Beer and Lambert's law, whatever its height.
func TestAloneIsBeerLambert(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := stands(t)[0]
		got := share([]Leaves{l})[0]
		if want := 1 - math.Exp(-l.Extinction*l.Area); math.Abs(got.Caught-want) > 1e-12 || got.Top != 1 {
			t.Fatalf("%+v gets %+v, want %g", l, got, want)
		}
	})
}

// Two canopies of one height and one habit share by leaf area; one wholly above
// another takes first (worked by hand from Spitters & Aerts 1983).
func TestWorkedShares(t *testing.T) {
	close := func(what string, got, want float64) {
		t.Helper()
		if math.Abs(got-want) > 1e-12 {
			t.Errorf("%s: %g, want %g", what, got, want)
		}
	}
	level := share([]Leaves{{2, 0.5, 1, 0}, {1, 0.5, 1, 0}})
	all := 1 - math.Exp(-1.5)
	close("two parts of three", level[0].Caught, all*2/3)
	close("one part of three", level[1].Caught, all/3)
	// 1 m over 0.25 m: the upper's top three quarters hold three quarters of its
	// leaves; the rest mixes with the lower's.
	over := share([]Leaves{{2, 0.6, 1, 0}, {3, 0.7, 0.25, 0}})
	first := 1 - math.Exp(-0.9)
	mixed := (1 - first) * (1 - math.Exp(-0.3-2.1))
	close("light at the lower's top", over[1].Top, 1-first)
	close("lower", over[1].Caught, mixed*2.1/2.4)
	close("upper", over[0].Caught, first+mixed*0.3/2.4)
	// With its lower leaves off the upper stands clear of the lower.
	clear := share([]Leaves{{1.5, 0.6, 1, 0.25}, {3, 0.7, 0.25, 0}})
	close("clear above", clear[0].Caught, first)
	close("all that is left", clear[1].Caught, (1-first)*(1-math.Exp(-2.1)))
}

func everyone(int) bool { return true }

// Every planting keeps the ground it was given, and no ground is counted twice.
func TestGroundIsKept(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 6).Draw(t, "n")
		ties := make([]Tie, n)
		for i := range ties {
			ties[i] = Tie{To: rapid.IntRange(-1, n-1).Draw(t, "to"), Meet: rapid.Float64Range(0, 1).Draw(t, "meet"),
				AreaM2: rapid.Float64Range(0.1, 20).Draw(t, "area")}
		}
		there := rapid.SliceOfN(rapid.Bool(), n, n).Draw(t, "there")
		got := make([]float64, n)
		for _, p := range Ground(ties, func(i int) bool { return there[i] }) {
			for _, i := range p.On {
				got[i] += p.AreaM2
			}
		}
		for i := range ties {
			want := ties[i].AreaM2
			if !there[i] {
				want = 0
			}
			if math.Abs(got[i]-want) > 1e-9 {
				t.Fatalf("planting %d stands on %g m2, want %g (%+v, %v)", i, got[i], want, ties, there)
			}
		}
	})
}

// Two under-crops of 4 m2 stand beside each other under one of 10 m2; half of a
// crop between rows meets it.
func TestGroundByHand(t *testing.T) {
	got := Ground([]Tie{{To: -1, AreaM2: 10}, {To: 0, Meet: 1, AreaM2: 4}, {To: 0, Meet: 0.5, AreaM2: 4}}, everyone)
	want := map[string]float64{"0,1": 4, "0,2": 2, "2": 2, "0": 4}
	for _, p := range got {
		name := ""
		for k, i := range p.On {
			if k > 0 {
				name += ","
			}
			name += string(rune('0' + i))
		}
		if math.Abs(want[name]-p.AreaM2) > 1e-12 {
			t.Errorf("%s on %g m2, want %g", name, p.AreaM2, want[name])
		}
		delete(want, name)
	}
	if len(want) > 0 {
		t.Errorf("no ground for %v", want)
	}
}

// However little of those on the ground of another is said to lie among its
// leaves, together they find no more open ground there than its gaps.
func TestGapsAreGivenOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		host := rapid.Float64Range(1, 20).Draw(t, "host")
		sparse := rapid.Float64Range(0, 1)
		ties := []Tie{{To: -1, AreaM2: host, Sparse: sparse.Draw(t, "host sparse")}}
		left := host
		for left > 0.2 && len(ties) < 5 {
			area := rapid.Float64Range(0.1, left).Draw(t, "area")
			left -= area
			ties = append(ties, Tie{To: 0, Meet: rapid.Float64Range(0.01, 1).Draw(t, "meet"), AreaM2: area, Sparse: sparse.Draw(t, "sparse")})
		}
		open := 0.0
		for _, p := range Ground(ties, everyone) {
			if p.On[0] != 0 {
				open += p.AreaM2
			}
		}
		if open > Gaps*host+1e-9 {
			t.Fatalf("%g m2 in the gaps of %g m2 (%+v)", open, host, ties)
		}
		if len(ties) == 2 && ties[0].Sparse+ties[1].Sparse >= 1 && open > 1e-9 {
			t.Fatalf("%g m2 open though the two make no full stand (%+v)", open, ties)
		}
	})
	// Rows between rows on all of the ground meet all but the gaps; on a fifth of
	// it half of them stand in gaps.
	for area, want := range map[float64]float64{10: 2, 2: 1} {
		for _, p := range Ground([]Tie{{To: -1, AreaM2: 10}, {To: 0, Meet: 0.5, AreaM2: area}}, everyone) {
			if p.On[0] == 1 && math.Abs(p.AreaM2-want) > 1e-9 {
				t.Errorf("%g m2 between on 10 m2: %g m2 in the gaps, want %g", area, p.AreaM2, want)
			}
		}
	}
}

// Ties that go round stand alone rather than never end.
func TestRingStandsAlone(t *testing.T) {
	if got := Ground([]Tie{{To: 1, Meet: 1, AreaM2: 3}, {To: 0, Meet: 1, AreaM2: 2}, {To: 1, Meet: 1, AreaM2: 1}}, everyone); len(got) == 0 {
		t.Error("a ring has no ground")
	}
}

func BenchmarkShareOfTwo(b *testing.B) {
	stand := []Leaves{{3, 0.6, 0.75, 0}, {2, 0.7, 0.1, 0}}
	out := make([]Light, 2)
	b.ReportAllocs()
	for n := 0; n < b.N; n++ {
		Share(stand, out)
	}
}
