package climate

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"garner/internal/cal"
)

func benchGenerator(t testing.TB) *Generator {
	return must(t, func() (*Generator, error) { return NewGenerator(deBiltNormals(), benchPlace) })
}

// A day is a function of seed, future, site and date: other spans give the same
// days.
func TestSpansAgree(t *testing.T) {
	g := benchGenerator(t)
	first := cal.Of(2024, 1, 1)
	whole := g.Days(5, 3, 9, first, 1500)
	rapid.Check(t, func(t *rapid.T) {
		from := rapid.IntRange(0, 1400).Draw(t, "from")
		n := rapid.IntRange(0, 100).Draw(t, "days")
		part := g.Days(5, 3, 9, first+cal.Date(from), n)
		for i, d := range part {
			if d != whole[from+i] {
				t.Fatalf("day %v differs: %v, %v", first+cal.Date(from+i), d, whole[from+i])
			}
		}
	})
}

func TestOtherKeysGiveOtherDays(t *testing.T) {
	g := benchGenerator(t)
	day := func(seed, future, site uint64) Day { return g.Days(seed, future, site, cal.Of(2027, 5, 1), 1)[0] }
	seen := map[Day]bool{day(1, 0, 0): true}
	for _, d := range []Day{day(2, 0, 0), day(1, 1, 0), day(1, 0, 1)} {
		if seen[d] {
			t.Errorf("%v again", d)
		}
		seen[d] = true
	}
	if day(1, 0, 0) != day(1, 0, 0) {
		t.Error("the same key gave other weather")
	}
}

// Where one quarter gives way to the next the memory is brought up afresh; the
// step must not show.
func TestQuartersJoin(t *testing.T) {
	g := benchGenerator(t)
	var across, within product
	for future := range uint64(3000) {
		d := g.Days(1, future, 0, cal.Of(2027, 3, 29), 6) // 29 March to 3 April
		across.add(d[2].MeanC(), d[3].MeanC())
		within.add(d[0].MeanC(), d[1].MeanC())
	}
	a, _ := across.correlation()
	w, _ := within.correlation()
	if math.Abs(a-w) > 0.04 {
		t.Errorf("lag-1 correlation %.3f over the quarter's end, %.3f before it", a, w)
	}
}

// Nothing is clipped, so bounds must hold by construction.
func TestDaysKeepWithinBounds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var n Normals
		for i := range n {
			low := rapid.Float64Range(-35, 27).Draw(t, "tmin")
			n[i] = MonthNormal{TMinC: low, TMaxC: low + rapid.Float64Range(0, 22).Draw(t, "range"),
				RainMM: rapid.Float64Range(0, 900).Draw(t, "rain")}
		}
		loc := benchPlace
		loc.LatitudeDeg = rapid.Float64Range(-66, 66).Draw(t, "latitude")
		loc.LongitudeDeg = rapid.Float64Range(-180, 180).Draw(t, "longitude")
		g, err := NewGenerator(n, loc)
		if err != nil {
			t.Fatal(err)
		}
		first := cal.Of(2023, 1, 1)
		for i, d := range g.Days(1, 2, 3, first, 800) {
			_, month, day := (first + cal.Date(i)).YMD()
			low, high := skyBounds(loc, dayIndex(month, day)+1)
			const slack = 1e-9
			if !(d.TMinC <= d.TMaxC) || !(d.RainMM >= 0 && d.RainMM < 2000) || !(d.HumidityPct >= 0 && d.HumidityPct <= 100) ||
				!(d.WindMS >= 0 && d.WindMS < 60) || !(d.RadiationMJ >= low-slack && d.RadiationMJ <= high+slack) {
				t.Fatalf("day %d: %+v, sky %v to %v", i, d, low, high)
			}
		}
	})
}

func TestNormalDraws(t *testing.T) {
	k := key{1, 2, 3}
	var m moments
	beyond := 0.0
	s := k.stream(2000, 1, forDays)
	const n = 400_000
	for range n {
		x := normal(&s)
		m.add(x)
		if math.Abs(x) > 3 {
			beyond++
		}
	}
	// Share beyond three spreads: 0.0027 (tables of the normal distribution).
	if math.Abs(m.mean()) > 0.006 || math.Abs(m.sd()-1) > 0.005 || math.Abs(beyond/n-0.0027) > 0.0003 {
		t.Errorf("mean %.4f, sd %.4f, beyond three %.5f", m.mean(), m.sd(), beyond/n)
	}
}
