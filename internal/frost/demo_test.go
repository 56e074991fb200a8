package frost

import (
	"slices"
	"sync"
	"testing"

	"pgregory.net/rapid"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/demotest"
	"garner/internal/growth"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/protect"
)

// seenOn is what stands in a demo garden on a day, as a test changes it.
func seenOn(t testing.TB, name string, day cal.Date, years int, change func(h *holding.Holding)) *Seen {
	t.Helper()
	h := demotest.Holding(t, name)
	h.Today = day
	if change != nil {
		change(h)
	}
	seen, err := See(demotest.Setting(t, h, years), outlook.NewMemory())
	if err != nil {
		t.Fatal(err)
	}
	return seen
}

func answered(t testing.TB, seen *Seen, q Question) *Answer {
	t.Helper()
	a, err := seen.Answer(q)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

var (
	mayOnce sync.Once
	maySeen *Seen
)

// inMay is the demo garden in the middle of May, when much that is tender stands.
func inMay(t testing.TB) *Seen {
	mayOnce.Do(func() { maySeen = seenOn(t, "", cal.Of(2027, 5, 14), 8, nil) })
	return maySeen
}

// A colder night is never safer, for what stands and for blossom, and never loses less.
func TestColderIsNeverSafer(t *testing.T) {
	seen := inMay(t)
	rapid.Check(t, func(r *rapid.T) {
		low := rapid.Float64Range(-12, 8).Draw(r, "minimum")
		lower := low - rapid.Float64Range(0, 6).Draw(r, "colder by")
		stages := map[string]string{"pear": rapid.SampledFrom([]string{"white", "full_bloom"}).Draw(r, "stage")}
		mild, cold := answered(t, seen, Question{Minimum: &low, Stages: stages}), answered(t, seen, Question{Minimum: &lower, Stages: stages})
		for i := range mild.Beds {
			m, c := &mild.Beds[i], &cold.Beds[i]
			if c.Nights[0].Odds < m.Nights[0].Odds || c.Nights[0].C[0] > m.Nights[0].C[0] {
				r.Fatalf("%s: %v at %g, %v at %g", m.Place.ID, m.Nights[0], low, c.Nights[0], lower)
			}
			for k := range m.Plants {
				if c.Plants[k].Odds[0] < m.Plants[k].Odds[0] || c.Plants[k].Lost[0] < m.Plants[k].Lost[0]-1e-12 {
					r.Fatalf("%s: %v at %g, %v at %g", m.Plants[k].Planting.ID, m.Plants[k].Odds, low, c.Plants[k].Odds, lower)
				}
			}
		}
		for i := range mild.Fruit {
			m, c := &mild.Fruit[i], &cold.Fruit[i]
			if len(m.Nights) > 0 && (c.Nights[0].Odds < m.Nights[0].Odds || c.Nights[0].Lost < m.Nights[0].Lost-1e-12) {
				r.Fatalf("%s: %+v at %g, %+v at %g", m.ID, m.Nights[0], low, c.Nights[0], lower)
			}
		}
	})
}

// A cover under which every future's night is warmer never leaves greater odds, and what
// is said to help does: its odds are below those without it.
func TestAWarmerCoverIsNeverWorse(t *testing.T) {
	seen := inMay(t)
	kinds := cover.Kinds()
	rapid.Check(t, func(r *rapid.T) {
		low := rapid.Float64Range(-8, 4).Draw(r, "minimum")
		told, err := seen.told(low)
		if err != nil {
			r.Fatal(err)
		}
		beds := told.inOrder()
		b := beds[rapid.IntRange(0, len(beds)-1).Draw(r, "bed")]
		one, two := Way{}, Way{}
		for _, w := range []*Way{&one, &two} {
			w.Spell = rapid.SampledFrom(kinds).Draw(r, "cover")
			if w.Cover, err = cover.Lookup(w.Spell); err != nil {
				r.Fatal(err)
			}
		}
		warmer := true
		for f := range told.futures {
			warmer = warmer && b.sky.under(one.Cover, f, 0) >= b.sky.under(two.Cover, f, 0)
		}
		if a, z := b.with(&one, 0, told), b.with(&two, 0, told); warmer && a.Odds > z.Odds {
			r.Fatalf("%s: %v is warmer than %v, and worse", b.place.ID, a, z)
		}
		for _, x := range answered(t, seen, Question{Minimum: &low}).Beds {
			for _, n := range x.Nights {
				for _, s := range n.Saves {
					if s.Odds >= n.Odds || s.LiftC < leastLiftC {
						r.Fatalf("%s: %v does not help (%v without)", x.Place.ID, s, n.Odds)
					}
				}
			}
		}
	})
}

// What is to be laid tonight is owned, and no piece lies over two beds.
func TestNoPieceIsLaidTwice(t *testing.T) {
	seen := inMay(t)
	h := seen.setting.Holding
	for _, low := range []float64{-6, -4, -2, -1, 0, 1} {
		a := answered(t, seen, Question{Minimum: &low})
		spells := slices.Clone(h.Covers)
		laid := 0
		for i := range a.Beds {
			if b := &a.Beds[i]; b.Tonight != nil {
				spells = append(spells, Trial(b.Place.ID, seen.setting.Today, b.Tonight.Spell))
				laid++
			}
		}
		stock, err := protect.Count(h.Gear, spells, h.Beds, seen.setting.Today)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range stock.Short {
			if s.From == seen.setting.Today {
				t.Errorf("at %g: %+v", low, s)
			}
		}
		if low == 0 && laid == 0 {
			t.Error("nothing is laid over what is tender at 0 C")
		}
	}
}

// The odds of a bed are the share of the futures in which a planting on it is under the
// temperature of its first loss, counted again from what was seen.
func TestOddsAreCounted(t *testing.T) {
	seen := inMay(t)
	low := 0.0
	told, err := seen.told(low)
	if err != nil {
		t.Fatal(err)
	}
	hurt := 0
	for _, b := range answered(t, seen, Question{Minimum: &low}).Beds {
		own := told.beds[b.Place.ID]
		n := 0
		for f := range told.futures {
			for _, p := range own.plants {
				if float64(own.under[0][f]) < growth.FirstHurtC(p.lethalC[0][f]) {
					n++
					break
				}
			}
		}
		if want := float64(n) / float64(told.futures); b.Nights[0].Odds != want {
			t.Errorf("%s: odds %g, counted %g", b.Place.ID, b.Nights[0].Odds, want)
		}
		if b.Nights[0].Odds > 0 {
			hurt++
		}
	}
	if hurt == 0 {
		t.Error("nothing is hurt at 0 C in the middle of May")
	}
}

// In the south the year is turned round, and nothing tender is set out before its summer
// without its odds.
func TestTheSouthIsTurnedRound(t *testing.T) {
	seen := seenOn(t, "south", cal.Of(2027, 9, 10), 8, nil)
	a := answered(t, seen, Question{})
	for _, s := range seen.skies {
		if got := s.highSummer(cal.Of(2027, 9, 10)); got != cal.Of(2028, 1, 20) {
			t.Errorf("high summer on %v", got)
		}
	}
	if len(a.Sites) == 0 || a.Sites[0].Last == nil || a.Sites[0].Last.P50 > cal.Of(2027, 12, 1) {
		t.Errorf("the last frost: %+v", a.Sites)
	}
}

// Shut, a cover is never cooler than opened; doors are told before the shade net.
func TestHeatIsToldBedByBed(t *testing.T) {
	seen := seenOn(t, "", cal.Of(2027, 7, 20), 12, nil)
	a := answered(t, seen, Question{})
	doors := 0
	for _, h := range a.Heat {
		if h.Rule.OfShut() {
			doors++
		}
		for _, d := range h.Days {
			if d.Odds < Least || d.C[9] < h.Rule.FromC {
				t.Errorf("%s on %s: %+v", h.Rule.ID, h.Bed, d)
			}
		}
	}
	if doors == 0 {
		t.Error("no door is to be opened in July")
	}
}
