package supply

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// A worked example of BS 8515:2009 as transcribed in public guides: 130 m2, 0.8, 0.9,
// 1,125 mm and a twentieth: 5,265 L.
func TestTheWorkedExample(t *testing.T) {
	share, err := Roof{AreaM2: 130, Covering: "tiles"}.SharePerMM()
	if err != nil {
		t.Fatal(err)
	}
	if got := Twentieth(share*1125, 1e9); math.Abs(got-5265) > 0.5 {
		t.Errorf("%.1f L", got)
	}
	if got := Twentieth(1e9, 2000); got != 100 {
		t.Errorf("asked for 2,000 L: %v", got)
	}
}

// By hand, yield after spillage: 100 L with 40 in it. Day 1: 30 asked and taken of 40,
// 90 come, 10 + 90 are there, 30 of them beyond 100 - 30. Day 2: 80 asked of 70: 70, 5
// come. Day 3: 20 asked of 5.
func TestThreeDaysByHand(t *testing.T) {
	c := Run(100, 40, []float64{90, 5, 0}, []float64{30, 80, 20})
	want := Course{AskedL: 130, TakenL: 105, ShedL: 95, OverflowL: 30, StartL: 40, EndL: 0, EmptyDays: 2, AskedDays: 3, LongestEmptyRun: 2}
	if c != want {
		t.Errorf("%+v, want %+v", c, want)
	}
}

func anyDays(t *rapid.T, name string, n int) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = max(0, rapid.Float64Range(-100, 200).Draw(t, name))
	}
	return out
}

// No litre is lost or made; what is taken never passes what was asked or what there is; a
// larger butt never gives less and never runs over more.
func TestLitresAreKept(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 60).Draw(t, "days")
		shed, asked := anyDays(t, "shed", n), anyDays(t, "asked", n)
		size := rapid.Float64Range(1, 1000).Draw(t, "size")
		c := Run(size, rapid.Float64Range(0, 1500).Draw(t, "start"), shed, asked)
		if off := c.StartL + c.ShedL - c.TakenL - c.OverflowL - c.EndL; math.Abs(off) > 1e-6 {
			t.Fatalf("off by %v: %+v", off, c)
		}
		if c.TakenL > c.AskedL+1e-9 || c.EndL < -1e-9 || c.EndL > size+1e-9 || c.StartL > size || c.EmptyDays > c.AskedDays || c.LongestEmptyRun > c.EmptyDays {
			t.Fatalf("%+v", c)
		}
		larger := Run(size+rapid.Float64Range(0, 1000).Draw(t, "more"), c.StartL, shed, asked)
		if larger.TakenL < c.TakenL-1e-6 || larger.OverflowL > c.OverflowL+1e-6 {
			t.Fatalf("larger %+v, smaller %+v", larger, c)
		}
	})
}

// Without a roof nothing comes; every covering sheds less than falls.
func TestRoofs(t *testing.T) {
	for _, name := range Coverings() {
		share, err := Roof{AreaM2: 10, Covering: name}.SharePerMM()
		if err != nil || share <= 0 || share >= 10 {
			t.Errorf("%s: %v, %v", name, share, err)
		}
	}
	if _, err := (Roof{AreaM2: 10, Covering: "thatch"}).SharePerMM(); err == nil {
		t.Error("thatch is known")
	}
	if share, err := (Roof{}).SharePerMM(); share != 0 || err != nil {
		t.Errorf("no roof: %v, %v", share, err)
	}
}
