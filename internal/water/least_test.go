package water

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// The least water keeps the crop from want that day, is never more than fills the
// ground, and a millimetre less does not do.
func TestTheLeastIsEnoughAndNoMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anySoil(t)
		on := Stand{Basal: rapid.Float64Range(0.2, 1.2).Draw(t, "basal"), Cover: rapid.Float64Range(0.1, 1).Draw(t, "cover"), HeightM: 0.5,
			RootM: rapid.Float64Range(0.15, 1).Draw(t, "root"), Easy: rapid.Float64Range(0.2, 0.6).Draw(t, "easy")}
		g := Given{ReferenceMM: rapid.Float64Range(0.5, 5).Draw(t, "asked"), RainMM: max(0, rapid.Float64Range(-5, 5).Draw(t, "rain")), WindMS: 2, LeastPct: 50}
		b := Balance{MissingMM: rapid.Float64Range(0, 1).Draw(t, "missing") * s.HeldMM(on.RootM)}
		due, least := b.DueMM(s, &on, &g), b.LeastMM(s, &on, &g)
		if least < 0 || least > due+1e-9 || (due > 0) != (least > 0) {
			t.Fatalf("least %v of %v due", least, due)
		}
		if due == 0 || s.HeldMM(on.RootM) < 20 { // less is gone in the day itself
			return
		}
		full, some := b, b
		g.IrrigationMM = due
		enough := full.Day(s, &on, &g)
		g.IrrigationMM = least
		if f := some.Day(s, &on, &g); enough.Stress >= 1 && f.Stress < 1 {
			t.Fatalf("in want with %v mm: %+v", least, f)
		}
		if least < 1.5 || enough.Stress < 1 {
			return
		}
		short := b
		g.IrrigationMM = least - 1
		f := short.Day(s, &on, &g)
		if f.Stress >= 1 && Stress(s.HeldMM(on.RootM), short.MissingMM, on.easy(f.LostMM())) >= 1 {
			t.Fatalf("%v mm were enough of %v", g.IrrigationMM, least)
		}
	})
}

// FAO-56 eq. 90 and 103 are each other's inverse; example 44: 0.66 of the water of dry
// beans leaves 1,100 of 1,800 kg/ha.
func TestYieldLost(t *testing.T) {
	bean, err := ResponseOf("dry-bean")
	if err != nil || bean != 1.15 {
		t.Fatalf("%v, %v", bean, err)
	}
	if kept := 1 - YieldLost(0.66, bean); math.Abs(kept-1100.0/1800) > 0.005 {
		t.Errorf("%v is left", kept)
	}
	if got := StressOfYield(1-YieldLost(0.8, bean), bean); math.Abs(got-0.8) > 1e-12 {
		t.Errorf("back comes %v", got)
	}
	for crop, want := range map[string]float64{"tomato": 1.05, "cabbage": 0.95, "potato": 1.1, "lettuce": 1, "sweetcorn": 1.25} {
		if got, _ := ResponseOf(crop); got != want {
			t.Errorf("%s: %v, want %v", crop, got, want)
		}
	}
	if YieldLost(0, 1.15) != 1 || YieldLost(1, 1.15) != 0 {
		t.Error("no water leaves something, or all of it nothing")
	}
}
