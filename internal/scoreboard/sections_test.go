package scoreboard

import (
	"math"
	"testing"

	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/printed"
)

func bookUse(t *testing.T, name, use string) *crop.Use {
	t.Helper()
	book, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	c, ok := book.Crop(name)
	if !ok {
		t.Fatalf("no crop %s", name)
	}
	u, err := c.Use(use)
	if err != nil {
		t.Fatal(err)
	}
	return u
}

// What is read off the engine are the numbers it was given: the landmarks of a
// response, the lethal nights, the range of chill, the gate of bulbing.
func TestWhatIsReadOffTheEngineIsWhatItWasGiven(t *testing.T) {
	base, best, ceiling := landmarks(growth.NewResponse(3, 20, 35))
	for i, pair := range [][2]float64{{base, 3}, {best, 20}, {ceiling, 35}} {
		if math.Abs(pair[0]-pair[1]) > 0.11 {
			t.Errorf("landmark %d: %g, want %g", i, pair[0], pair[1])
		}
	}
	kale := bookUse(t, "kale", "plant")
	if soft := lethalC(kale, softening); math.Abs(soft-kale.KillC) > 0.2 {
		t.Errorf("a soft stand dies at %g C, the book says %g", soft, kale.KillC)
	}
	if hard := lethalC(kale, hardening); math.Abs(hard-kale.KillHardenedC) > 0.2 {
		t.Errorf("a hardened stand dies at %g C, the book says %g", hard, kale.KillHardenedC)
	}
	carrot := bookUse(t, "carrot", "table")
	if r := chillRange(carrot, 0); math.Abs(r.Low-(carrot.ChillLowC-5)) > 0.3 || math.Abs(r.High-(carrot.ChillHighC+5)) > 0.3 {
		t.Errorf("chill counts in %v, the book has %g to %g", r, carrot.ChillLowC, carrot.ChillHighC)
	}
	onion := bookUse(t, "onion", "sets")
	if h := bulbsFrom(onion); math.Abs(h.Low-onion.GateLongH) > 0.25 {
		t.Errorf("bulbs from %g h, the gate is at %g", h.Low, onion.GateLongH)
	}
}

// Longer days never keep spinach from running to seed longer.
func TestLongerDaysNeverDelayRunningToSeed(t *testing.T) {
	spinach := bookUse(t, "spinach", "summer")
	before := math.Inf(1)
	for hours := 9.0; hours <= 18; hours += 0.5 {
		l := runsIn(Line{}, spinach, "days", hours)
		days := math.Inf(1)
		if l.Computed.Known() {
			days = l.Computed.Low
		}
		if days > before {
			t.Errorf("%g days at %g h, %g at half an hour less", days, hours, before)
		}
		before = days
	}
	if math.IsInf(before, 1) {
		t.Error("spinach never runs to seed in days of 18 h")
	}
}

func TestKendallCountsPairsOfDifferentRank(t *testing.T) {
	rows := []trialRow{{order: 1, kg: 5}, {order: 1, kg: 1}, {order: 2, kg: 3}, {order: 0, kg: 9}}
	if tau, pairs := kendall(rows[:3]); pairs != 2 || tau != 0 {
		t.Errorf("tau %g of %d pairs, want 0 of 2", tau, pairs)
	}
	days := []trialRow{{order: 1, by: "first cut", days: 20}, {order: 2, by: "first cut", days: neverDays}}
	if tau, pairs := kendall(days); pairs != 1 || tau != 1 {
		t.Errorf("tau %g of %d pairs, want 1 of 1", tau, pairs)
	}
	if _, pairs := kendall(rows[:2]); pairs != 0 {
		t.Errorf("%d pairs of one rank", pairs)
	}
}

// The shortest day of the year is under ten hours from 33 degrees on, and the
// span grows with latitude (University of Minnesota Extension 2024 lists it so).
func TestShortDaysGrowWithLatitude(t *testing.T) {
	if first, last := shorterThan(30, 10); first != 0 || last != 0 {
		t.Errorf("at 30 N days under ten hours from %d to %d", first, last)
	}
	before := 0
	for lat := 34.0; lat < 62; lat += 2 {
		first, last := shorterThan(lat, 10)
		if span := printed.OnCircle(last - first + 1); span <= before {
			t.Errorf("%g N: %d days, further south %d", lat, span, before)
		} else {
			before = span
		}
	}
}

// The rule answers the same dates as the windows do, so that the two can be
// compared.
func TestRuleAnswersTheSameDates(t *testing.T) {
	s := sectionOf(t, "windows")
	counts := map[string]any{}
	for _, l := range s.Lines {
		if of, ok := l.Check.Args["n"]; ok && counts[l.Check.Key] == nil {
			counts[l.Check.Key] = of
		}
	}
	if counts["scoreboard.rule_median"] != counts["scoreboard.windows_median"] {
		t.Errorf("counts of dates: %v", counts)
	}
}
