package season_test

import (
	"sort"
	"testing"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/season"
	"garner/internal/sun"
)

// The checks in this file are common practice, no source: what a grower at a
// cool maritime site near 51 N would call sense.

var maritime = sun.Location{LatitudeDeg: 51, LongitudeDeg: 0, ElevationM: 20}

const practiceYears = 20

// practice is a maritime site under a cover and in a share of the light, with
// twenty years of weather.
type practice struct{ *field }

func newPractice(t *testing.T, kind cover.Kind, light float64) *practice {
	t.Helper()
	g, err := climate.NewGenerator(normals(0), maritime)
	if err != nil {
		t.Fatal(err)
	}
	days := g.Days(3, 0, 0, first, (practiceYears+2)*366)
	ground := season.Ground{Light: light}
	if kind != cover.Open {
		ground.Spells = []cover.Spell{{Kind: kind, On: first, Off: cal.None}}
	}
	return &practice{newField(t, maritime, days, ground)}
}

// everyYear grows a planting put in on a day of each year.
func (p *practice) everyYear(u *crop.Use, s growth.Start, month, day int, each func(year int, date cal.Date, o season.Outcome)) {
	for y := 2001; y < 2001+practiceYears; y++ {
		d := cal.Of(y, month, day)
		each(y, d, p.grow(u, s, d, nil))
	}
}

// medianReady returns the median day on which the plantings came ready, as days
// since 1 January of the year they went in; those that never did count as late.
func (p *practice) medianReady(u *crop.Use, s growth.Start, month, day int) int {
	var at []int
	p.everyYear(u, s, month, day, func(y int, _ cal.Date, o season.Outcome) {
		ready := 9999
		if o.Ready >= 0 {
			ready = int(first) + o.Ready - int(cal.Of(y, 1, 1))
		}
		at = append(at, ready)
	})
	sort.Ints(at)
	return at[len(at)/2]
}

func useOf(t *testing.T, crop, name string) *crop.Use {
	t.Helper()
	c, ok := testBook(t).Crop(crop)
	if !ok {
		t.Fatalf("no crop %s", crop)
	}
	u, err := c.Use(name)
	if err != nil {
		t.Fatal(err)
	}
	return u
}

// Carrots sown in mid-August in a bed that loses half its light do not reach
// table size before winter; sown in early July in the open they do.
func TestLateCarrotsInShade(t *testing.T) {
	u := useOf(t, "carrot", "table")
	count := func(light float64, month, day int) (n int) {
		newPractice(t, cover.Open, light).everyYear(u, growth.FromSeed, month, day, func(y int, _ cal.Date, o season.Outcome) {
			if o.Ready >= 0 && first+cal.Date(o.Ready) < cal.Of(y, 12, 1) {
				n++
			}
		})
		return n
	}
	if n := count(0.5, 8, 15); n > practiceYears/10 {
		t.Errorf("sown in mid-August in half light: table size in %d years of %d", n, practiceYears)
	}
	if n := count(1, 7, 3); n < practiceYears*7/10 {
		t.Errorf("sown in early July in the open: table size in only %d years of %d", n, practiceYears)
	}
}

// usableBulbG is the weight of an onion 4-5 cm across.
const usableBulbG = 45

// Over-wintered onions give usable bulbs in May under cover and early in June
// outdoors, ripe tops from mid-June to mid-July; spring sets ripen in August.
func TestOnionsThroughTheYear(t *testing.T) {
	u := useOf(t, "onion", "overwintered")
	start := growth.StartOf(u.Methods[0])
	bulb := func(kind cover.Kind) int {
		p := newPractice(t, kind, 1)
		var at []int
		for y := 2001; y < 2001+practiceYears; y++ {
			usable := 9999
			params := growth.Prepare(u, start, true)
			p.grow(u, start, cal.Of(y, 9, 20), func(day int, s *growth.Plants) {
				if usable == 9999 && s.PieceG(params) >= usableBulbG {
					usable = int(first) + day - int(cal.Of(y+1, 1, 1)) + 1
				}
			})
			at = append(at, usable)
		}
		sort.Ints(at)
		return at[len(at)/2]
	}
	between(t, "usable bulbs under a tunnel", bulb(cover.Tunnel), dayOf(4, 25), dayOf(5, 31))
	between(t, "usable bulbs outdoors", bulb(cover.Open), dayOf(5, 25), dayOf(6, 20))
	open := newPractice(t, cover.Open, 1)
	between(t, "ripe tops", open.medianReady(u, start, 9, 20)-365, dayOf(6, 12), dayOf(7, 18))
	between(t, "main crop from sets", open.medianReady(useOf(t, "onion", "sets"), growth.FromSet, 3, 25), dayOf(7, 25), dayOf(8, 31))
}

func dayOf(month, day int) int { return cal.MonthDay{Month: month, Day: day}.DayOfYear() }

func between(t *testing.T, what string, got, low, high int) {
	t.Helper()
	if got < low || got > high {
		t.Errorf("%s on day %d of the year, want %d to %d", what, got, low, high)
	}
}

// A courgette plant in full summer gives 3 to 5 fruits a week of 15-20 cm
// (200-250 g).
func TestCourgettesAWeek(t *testing.T) {
	u := useOf(t, "courgette", "table")
	p := newPractice(t, cover.Open, 1)
	params := growth.Prepare(u, growth.FromPlant, true)
	weekly := 0.0
	p.everyYear(u, growth.FromPlant, 6, 1, func(y int, _ cal.Date, o season.Outcome) {
		from, to := int(cal.Of(y, 8, 1)-first), int(cal.Of(y, 8, 29)-first)
		for i, kg := range o.Flow {
			if day := o.First + i; day >= from && day < to {
				weekly += float64(kg) / 4 / practiceYears / (1 - u.StandLoss)
			}
		}
	})
	const fruitKg = 0.225
	if fruits := weekly / params.PlantsPerM2() / fruitKg; fruits < 3 || fruits > 5 {
		t.Errorf("%.1f fruits a week, want 3 to 5", fruits)
	}
}

// A sweet pepper from a heated start under cover gives two flushes: its picking
// has two crests with a trough between.
func TestPepperFlushes(t *testing.T) {
	u := useOf(t, "sweet-pepper", "table")
	p := newPractice(t, cover.Tunnel, 1)
	two := 0
	p.everyYear(u, growth.FromPlant, 5, 12, func(_ int, _ cal.Date, o season.Outcome) {
		if crests(o.Flow) >= 2 {
			two++
		}
	})
	if two < practiceYears*6/10 {
		t.Errorf("two flushes in %d years of %d", two, practiceYears)
	}
}

// crests counts the stretches of picking over half the best day, smoothed over
// a week.
func crests(flow []float32) (n int) {
	week := make([]float64, len(flow))
	best := 0.0
	for i := range flow {
		for k := max(0, i-3); k <= min(len(flow)-1, i+3); k++ {
			week[i] += float64(flow[k])
		}
		best = max(best, week[i])
	}
	high := false
	for _, v := range week {
		switch {
		case !high && v > 0.3*best:
			high = true
			n++
		case high && v < 0.15*best:
			high = false
		}
	}
	return n
}

// Three lettuce sowings three weeks apart in spring come ready closer together
// than they were sown.
func TestSpringLettuceClosesUp(t *testing.T) {
	u := useOf(t, "lettuce", "heart")
	p := newPractice(t, cover.Open, 1)
	ready := []int{p.medianReady(u, growth.FromSeed, 3, 20), p.medianReady(u, growth.FromSeed, 4, 10), p.medianReady(u, growth.FromSeed, 5, 1)}
	for i := 1; i < 3; i++ {
		if gap := ready[i] - ready[i-1]; gap < 0 || gap >= 21 {
			t.Errorf("sowings %d and %d come ready %d days apart, want under 21", i, i+1, gap)
		}
	}
}
