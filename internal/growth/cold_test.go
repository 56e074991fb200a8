package growth

import (
	"testing"

	"garner/internal/climate"
	"garner/internal/crop"
)

// nightAfter returns the share of a stand alive after some weeks of a mean
// temperature and then one night.
func nightAfter(u *crop.Use, weeks int, meanC, night float64) float64 {
	p := Prepare(u, FromPlant, true)
	s := Begin(p, Fair(u))
	day := func(tMin, mean float64) {
		a := NewAir(climate.Day{TMinC: tMin, TMaxC: 2*mean - tMin, RadiationMJ: 4}, mean, 1, mean, 10)
		s.Rates(p, &a, a.PARMJ, 1)
		s.Integrate(p)
	}
	for range 7 * weeks {
		day(meanC-2, meanC)
	}
	day(night, max(night, meanC-4))
	return s.Alive
}

func TestHardeningSavesPlants(t *testing.T) {
	u := bookUse(t, "kale", "plant")
	night := (u.KillC + u.KillHardenedC) / 2
	if soft := nightAfter(u, 5, 15, night); soft > 0.5 {
		t.Errorf("%g of a soft stand lives through %g C", soft, night)
	}
	if hard := nightAfter(u, 5, 5, night); hard < 0.9 {
		t.Errorf("only %g of a hardened stand lives through %g C", hard, night)
	}
}

// Hardening follows the nights, not the means: under a tunnel days are warm and
// nights cold (Tamura 2002: tolerance follows the mean minimum between 2 and 8 C).
func TestHardeningFollowsTheNights(t *testing.T) {
	if hardenRate(2) != hardenPerDay || hardenRate(-10) != hardenPerDay || hardenRate(6) != 0 || hardenRate(9) != softenPerDay {
		t.Error("hardening is not full at 2 C, none between 5 and 8 C, undone above")
	}
	before := hardenRate(-5)
	for c := -5.0; c < 15; c += 0.1 {
		if r := hardenRate(c); r > before {
			t.Fatalf("a night at %g C hardens more than a colder one", c)
		} else {
			before = r
		}
	}
}

func TestColderNightsKillMore(t *testing.T) {
	for _, name := range []string{"tomato", "lettuce", "cabbage", "leek", "potato"} {
		u := bookUse(t, name, "")
		before := 2.0
		for night := 2.0; night > -20; night -= 0.5 {
			alive := nightAfter(u, 5, 10, night)
			if alive > before+1e-12 {
				t.Errorf("%s: more live at %g C than on a warmer night", name, night)
			}
			before = alive
		}
		if before > 0.01 {
			t.Errorf("%s: %g live at -20 C", name, before)
		}
	}
}

// Half the stand dies at the lethal temperature itself.
func TestLethalTemperatureIsTheMedian(t *testing.T) {
	if got := LostToCold(-6, -6); got != 0.5 {
		t.Errorf("%g lost at the lethal temperature, want a half", got)
	}
	if LostToCold(-6, -4.9) != 0 || LostToCold(-6, -7.1) != 1 {
		t.Error("the range of damage is not a degree either way")
	}
}

// Tender crops are killed by light frost and hardy ones are not: the frost
// classes of the book against the guide printed by the National Garden Bureau
// (light frost 28-32 F, -2.2 to 0 C: damages tender crops, not hardy ones).
func TestLightFrostByClass(t *testing.T) {
	book, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range book.Crops() {
		for _, u := range c.Uses {
			switch u.Class {
			case "very tender", "tender":
				if u.KillC < -3.3 {
					t.Errorf("%s %s is %s and lives through %g C", u.Crop, u.Name, u.Class, u.KillC)
				}
			case "hardy":
				if u.KillC > -2.2 {
					t.Errorf("%s %s is hardy and dies in a light frost (%g C)", u.Crop, u.Name, u.KillC)
				}
			}
		}
	}
}
