package growth

import (
	"testing"

	"garner/internal/climate"
	"garner/internal/crop"
)

// The harvest patterns are data: these tests walk one use of each pattern
// through a steady mild summer and look at what the pattern must show.

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

// course is what a planting shows from day to day in steady weather.
type course struct {
	stand, yield []float64
	last         Plants
}

func steady(u *crop.Use, start Start, days int, tMin, tMax, radiation, dayLength float64) course {
	p := Prepare(u, start, true)
	s := Begin(p, Fair(u))
	s.StartSeason(p, 1, 3)
	day := climate.Day{TMinC: tMin, TMaxC: tMax, RadiationMJ: radiation}
	a := NewAir(day, day.MeanC(), 1, day.MeanC(), dayLength)
	var c course
	for range days {
		s.Rates(p, &a, a.PARMJ, 1)
		s.Integrate(p)
		stand := 0.0
		if s.Stage == Ready && p.Stands() {
			stand = s.FreshKgM2(p)
		}
		c.stand = append(c.stand, stand)
		c.yield = append(c.yield, s.YieldedKgM2(p))
	}
	c.last = s
	return c
}

func count(v []float64) (n int) {
	for _, x := range v {
		if x > 0 {
			n++
		}
	}
	return n
}

func sum(v []float64) (t float64) {
	for _, x := range v {
		t += x
	}
	return t
}

func TestPullStandsAndThenIsOver(t *testing.T) {
	c := steady(bookUse(t, "lettuce", "heart"), FromPlant, 200, 10, 20, 18, 13)
	if n := count(c.stand); n < 5 || n > 60 {
		t.Errorf("a heart stands %d days", n)
	}
	if c.last.Stage != Over || c.last.End != Harvested || count(c.yield) != 0 {
		t.Errorf("ended %s, %s", c.last.Stage, c.last.End)
	}
}

func TestPickingGoesOnForWeeks(t *testing.T) {
	c := steady(bookUse(t, "courgette", "table"), FromPlant, 200, 13, 25, 20, 15)
	if n := count(c.yield); n < 30 {
		t.Errorf("picked on %d days", n)
	}
	if count(c.stand) != 0 {
		t.Error("fruit to be picked also stands to be pulled")
	}
}

func TestFlushesComeAndGo(t *testing.T) {
	u := bookUse(t, "sweet-pepper", "table")
	c := steady(u, FromPlant, 260, 15, 27, 20, 15)
	crests := 0
	for i := 8; i < len(c.yield)-8; i++ {
		high := c.yield[i] > 0
		for k := -8; k <= 8; k++ {
			high = high && (k == 0 || c.yield[i] > c.yield[i+k])
		}
		if high {
			crests++
		}
	}
	if crests < 2 {
		t.Errorf("%d flushes, want two or more in a long warm season", crests)
	}
}

func TestCutComesAgain(t *testing.T) {
	u := bookUse(t, "chard", "leaf")
	c := steady(u, FromSeed, 220, 10, 20, 18, 13)
	n := count(c.yield)
	if n < 3 || n > int(u.Cuts) {
		t.Errorf("%d cuts, want 3 to %g", n, u.Cuts)
	}
}

func TestLeafFirstCostsTheHead(t *testing.T) {
	u := bookUse(t, "cabbage", "spring")
	stripped := steady(u, FromPlant, 200, 8, 17, 16, 13)
	whole := *u
	whole.LeafShare = 0
	left := steady(&whole, FromPlant, 200, 8, 17, 16, 13)
	if sum(stripped.yield) <= 0 {
		t.Error("no leaf was taken")
	}
	if got, want := highest(stripped.stand), highest(left.stand); got <= 0 || got >= want {
		t.Errorf("head %g kg after leaf, %g without", got, want)
	}
}

func highest(v []float64) (h float64) {
	for _, x := range v {
		h = max(h, x)
	}
	return h
}

func TestPerennialBearsEachYearAndCloses(t *testing.T) {
	u := bookUse(t, "rhubarb", "")
	c := steady(u, FromCrown, 3*365, 4, 14, 14, 13)
	seasons, bearing := 0, false
	for _, y := range c.yield {
		if y > 0 && !bearing {
			seasons++
		}
		bearing = y > 0
	}
	if seasons != 3 {
		t.Errorf("%d seasons in three years", seasons)
	}
	for year := range 3 {
		if n := count(c.yield[year*365 : (year+1)*365]); n > int(u.SeasonDays)+1 {
			t.Errorf("picked on %d days of a season of %g", n, u.SeasonDays)
		}
	}
	if total, full := sum(c.yield[365:730]), u.YieldKgM2; total < 0.5*full*(1-u.StandLoss) || total > 1.05*full {
		t.Errorf("a full year gives %g kg/m2, the book says %g", total, full)
	}
}

// Chives sown in place are first cut some eighty days later, a division within
// weeks (Irish Eyes herbs growing guide: 80 days to maturity).
func TestSownPerennialWaitsForItsFirstSeason(t *testing.T) {
	u := bookUse(t, "chives", "leaf")
	first := func(start Start) int {
		p := Prepare(u, start, true)
		s := Begin(p, Fair(u))
		s.StartSeason(p, 90, 0)
		day := climate.Day{TMinC: 8, TMaxC: 18, RadiationMJ: 16}
		a := NewAir(day, day.MeanC(), 1, day.MeanC(), 14)
		for i := range 150 {
			s.Rates(p, &a, a.PARMJ, 1)
			s.Integrate(p)
			if s.Stage == Ready {
				return i
			}
		}
		return -1
	}
	if sown, split := first(FromSeed), first(FromCrown); sown < 70 || sown > 95 || split < 0 || split > 45 {
		t.Errorf("first cut %d days from seed, %d from a division", sown, split)
	}
}

// A gate holds development until the day is long enough.
func TestGateWaitsForLongDays(t *testing.T) {
	u := bookUse(t, "onion", "sets")
	short := steady(u, FromSet, 250, 10, 20, 18, u.GateLongH-0.5)
	long := steady(u, FromSet, 250, 10, 20, 18, u.GateLongH+0.5)
	if short.last.Development > u.GateStage {
		t.Errorf("bulbing in short days: stage %g", short.last.Development)
	}
	if long.last.Development < 1 {
		t.Errorf("no bulb in long days: stage %g", long.last.Development)
	}
}

// A crop that needs the winter stays at its gate without it.
func TestGateWaitsForChill(t *testing.T) {
	u := bookUse(t, "sprouting-broccoli", "late")
	if u.GateChill <= 0 {
		t.Fatal("late sprouting broccoli has no chill gate")
	}
	warm := steady(u, FromPlant, 400, 16, 26, 18, 14)
	if warm.last.Development > u.GateStage+1e-9 {
		t.Errorf("budded without a winter: stage %g", warm.last.Development)
	}
}
