package water

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"garner/internal/fault"
)

// Source: van Genuchten 1980, eq. 3, with the loam of Carsel and Parrish 1988, by hand.
func TestRetentionOfLoam(t *testing.T) {
	data, err := moistures()
	if err != nil {
		t.Fatal(err)
	}
	loam := data.retention["loam"]
	for _, c := range []struct{ kPa, want float64 }{{0, 0.43}, {33, 0.1644}, {1500, 0.0883}} {
		if got := loam.at(c.kPa); math.Abs(got-c.want) > 0.0005 {
			t.Errorf("%v kPa: %.4f, want %.3f", c.kPa, got, c.want)
		}
	}
}

// Handbooks of irrigation water loams at 40 to 60 centibars and sands at 20 to 30
// (common practice, no source): some water is left there, and more below them.
func TestTensionsAtWhichIsWatered(t *testing.T) {
	for _, c := range []struct {
		texture    string
		kPa        float64
		from, upTo float64
	}{{"loam", 50, 0.6, 0.95}, {"sandy loam", 30, 0.25, 0.75}, {"loam", 10, 1, 1}, {"", 50, 0.6, 0.95}} {
		left, err := LeftOfTension(c.texture, c.kPa)
		if err != nil || left.Share < c.from || left.Share > c.upTo {
			t.Errorf("%s at %v kPa: %v left, %v", c.texture, c.kPa, left, err)
		}
	}
}

func TestReadingsThatCannotBe(t *testing.T) {
	key := func(_ Left, err error) string {
		var e *fault.Error
		if !errors.As(err, &e) {
			return ""
		}
		return e.Phrase.Key
	}
	for name, c := range map[string][2]string{
		"over saturation":    {key(LeftOfVolume("loam", 60)), "water.over_saturation"},
		"dust":               {key(LeftOfVolume("clay", 4)), "water.under_wilting"},
		"a wet mix may be":   {key(LeftOfVolume(PottingMix, 60)), ""},
		"a mix has no curve": {key(LeftOfTension(PottingMix, 20)), "water.no_curve"},
		"a broken column":    {key(LeftOfTension("loam", 900)), "water.tension_range"},
		"no such feeling":    {key(LeftOfFeel("soggy")), "water.felt_unknown"},
	} {
		if c[0] != c[1] {
			t.Errorf("%s: %q, want %q", name, c[0], c[1])
		}
	}
}

// A reading that tells what the balance tells changes nothing, whatever the soil, the
// crop and how sure it is; any other moves the balance toward it, and never past it; the
// surer the further.
func TestAReadingCorrects(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, on := anySoil(t), anyStand(t)
		within := s.HeldMM(on.reachM())
		b := Balance{MissingMM: rapid.Float64Range(0, 1).Draw(t, "missing") * within}
		err := rapid.Float64Range(0.01, 0.6).Draw(t, "error")
		same := b
		if moved := same.Correct(s, &on, Left{1 - b.MissingMM/within, err}); math.Abs(moved) > 1e-9 || math.Abs(same.MissingMM-b.MissingMM) > 1e-9 {
			t.Fatalf("moved by %v mm of %v", moved, b.MissingMM)
		}
		left := rapid.Float64Range(0, 1).Draw(t, "left")
		told := (1 - left) * within
		sure, unsure := b, b
		sure.Correct(s, &on, Left{left, err})
		unsure.Correct(s, &on, Left{left, 2 * err})
		if math.Abs(sure.MissingMM-told) > math.Abs(unsure.MissingMM-told)+1e-9 || math.Abs(unsure.MissingMM-told) > math.Abs(b.MissingMM-told)+1e-9 {
			t.Fatalf("from %v toward %v: %v sure, %v unsure", b.MissingMM, told, sure.MissingMM, unsure.MissingMM)
		}
		if (sure.MissingMM-told)*(b.MissingMM-told) < -1e-9 {
			t.Fatalf("from %v past %v to %v", b.MissingMM, told, sure.MissingMM)
		}
	})
}

// The same through a probe's own figure: per cent that the balance stands for.
func TestTheBalancesOwnPerCentChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		texture := rapid.SampledFrom([]string{"sand", "sandy loam", "loam", "clay", PottingMix, ""}).Draw(t, "texture")
		s, err := SoilOf(texture)
		if err != nil {
			t.Fatal(err)
		}
		on := Stand{RootM: rapid.Float64Range(0.1, 1.2).Draw(t, "root")}
		b := Balance{MissingMM: rapid.Float64Range(0, 1).Draw(t, "missing") * s.HeldMM(on.RootM)}
		pct := 100 * (s.Capacity - b.MissingMM/1000/on.RootM)
		left, err := LeftOfVolume(texture, pct)
		if err != nil {
			t.Fatal(err)
		}
		was := b.MissingMM
		if b.Correct(s, &on, left); math.Abs(b.MissingMM-was) > 1e-9 {
			t.Fatalf("%v %%: from %v to %v mm", pct, was, b.MissingMM)
		}
	})
}
