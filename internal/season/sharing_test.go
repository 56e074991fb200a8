package season_test

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"garner/internal/cal"
	"garner/internal/canopy"
	"garner/internal/climate"
	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/outlook"
	"garner/internal/season"
)

// Whatever stands on whose ground, all leaves of a bed together never take more
// than falls on the ground they hold, and taking one crop out never lowers the
// light of another on the day it goes.
func TestLeavesNeverTakeMoreThanFalls(t *testing.T) {
	f := newField(t, north, weather(t, 17), season.Ground{Light: 1})
	names := []string{"sweetcorn", "kale", "lettuce", "carrot", "radish", "leek"}
	rapid.Check(t, func(r *rapid.T) {
		n := rapid.IntRange(2, 4).Draw(r, "n")
		bed := season.Bed{}
		var draws []growth.Draw
		held := 0.0
		for i := range n {
			u := use(t, rapid.SampledFrom(names).Draw(r, "crop"))
			p := season.Planting{Parameters: growth.Prepare(u, growth.StartOf(u.Methods[0]), true), AreaM2: rapid.Float64Range(0.5, 5).Draw(r, "area"),
				Date: cal.Of(2001, 4, 1) + cal.Date(rapid.IntRange(0, 120).Draw(r, "day")), ClearBy: cal.Of(2002, 3, 1), Soil: 1,
				Shares: rapid.IntRange(-1, i-1).Draw(r, "to"), Beneath: rapid.Float64Range(0.1, 1).Draw(r, "meet")}
			held += p.AreaM2
			bed.Plantings = append(bed.Plantings, p)
			draws = append(draws, growth.Fair(u))
		}
		taken := map[int]float64{}
		full := watched(f, &bed, draws, func(i, day int, l season.Light) {
			if l.Top < 0 || l.Top > 1+1e-9 || l.Caught < 0 || l.Caught > l.Top+1e-9 {
				r.Fatalf("planting %d, day %d: %+v", i, day, l)
			}
			taken[day] += l.Caught * bed.Plantings[i].AreaM2
		})
		for day, sum := range taken {
			if sum > held+1e-9 {
				r.Fatalf("day %d: %g m2 of light on %g m2", day, sum, held)
			}
		}
		gone := rapid.IntRange(0, n-1).Draw(r, "gone")
		from := rapid.IntRange(60, 300).Draw(r, "from")
		bed.Plantings = append([]season.Planting{}, bed.Plantings...)
		bed.Plantings[gone].ClearBy = first + cal.Date(from)
		less := watched(f, &bed, draws, func(int, int, season.Light) {})
		for i := range n {
			if a, ok := less[[2]int{i, from}]; ok && i != gone && bed.Plantings[gone].Date < first+cal.Date(from) && bed.Plantings[i].Shares == gone {
				if b := full[[2]int{i, from}]; a.Top < b.Top-1e-9 {
					r.Fatalf("planting %d on day %d: %+v with its host, %+v without", i, from, b, a)
				}
			}
		}
	})
}

// Two crops on the same ground, whatever of the one is said to lie among the
// other's leaves, never take more than falls on that ground and what the gaps of
// one crop let through beside it.
func TestAPairTakesNoMoreThanItsGround(t *testing.T) {
	f := newField(t, north, weather(t, 17), season.Ground{Light: 1})
	names := []string{"sweetcorn", "kale", "lettuce", "carrot", "celery", "leek"}
	rapid.Check(t, func(r *rapid.T) {
		bed := season.Bed{}
		var draws []growth.Draw
		whole := rapid.Float64Range(1, 5).Draw(r, "area")
		areas := []float64{whole, whole * rapid.Float64Range(0.1, 1).Draw(r, "share")}
		for i, area := range areas {
			u := use(t, rapid.SampledFrom(names).Draw(r, "crop"))
			bed.Plantings = append(bed.Plantings, season.Planting{Parameters: growth.Prepare(u, growth.StartOf(u.Methods[0]), true), AreaM2: area,
				Date: cal.Of(2001, 5, 1) + cal.Date(rapid.IntRange(0, 40).Draw(r, "day")), ClearBy: cal.Of(2002, 3, 1), Soil: 1,
				Shares: i - 1, Beneath: rapid.Float64Range(0.05, 1).Draw(r, "meet")})
			draws = append(draws, growth.Fair(u))
		}
		taken, there := map[int]float64{}, map[int]int{}
		watched(f, &bed, draws, func(i, day int, l season.Light) {
			taken[day] += l.Caught * areas[i]
			there[day]++
		})
		for day, m2 := range taken {
			if there[day] == 2 && m2 > whole*(1+canopy.Gaps)+1e-9 {
				r.Fatalf("day %d: the light of %g m2 on %g m2", day, m2, whole)
			}
		}
	})
}

// A crop in turn with rows of its own is but that crop: two stands that make up
// one full stand give what that one gives, whatever the parts, but for the last
// day on which a limit is passed.
func TestACropInTurnWithItselfIsThatCrop(t *testing.T) {
	f := newField(t, north, weather(t, 5), season.Ground{Light: 1})
	everyUse(t, func(u *crop.Use, s growth.Start) {
		day, _ := cal.ParseMonthDay(u.ReferenceDate)
		own := *u
		own.UsableG = 0
		at := func(rows float64, to int) season.Planting {
			return season.Planting{Parameters: growth.Prepare(growth.Spaced(&own, 0, own.BetweenRowM*rows), s, true), Date: day.In(2001),
				AreaM2: 1, ClearBy: cal.None, Soil: 1, Shares: to, Beneath: outlook.BetweenShare}
		}
		run := func(draws int, plantings ...season.Planting) []season.Outcome {
			return f.runner.Run(f.sky, &f.beside, &season.Bed{Plantings: plantings}, slices.Repeat([]growth.Draw{growth.Fair(u)}, draws))
		}
		full := givenKg(run(1, at(1, -1))[0])
		for _, rows := range [][2]float64{{2, 2}, {4, 4.0 / 3}} {
			both := run(2, at(rows[0], -1), at(rows[1], 0))
			if got := givenKg(both[0]) + givenKg(both[1]); math.Abs(got-full) > 0.01*full {
				t.Errorf("%s %s: rows %v of its own give %.3f kg, the full stand %.3f", u.Crop, u.Name, rows, got, full)
			}
		}
	})
}

// givenKg is all pickings and what stands on the day it is ready.
func givenKg(o season.Outcome) (sum float64) {
	for _, kg := range o.Flow {
		sum += float64(kg)
	}
	if len(o.Standing) > 0 {
		sum += float64(o.Standing[0])
	}
	return sum
}

// The further others fill its ground the less room a sparse stand has, never less
// than a full stand's plants have, and a full stand has its own room always.
func TestOthersTakeRoom(t *testing.T) {
	u := use(t, "celery")
	run := func(rows float64, other float64) float64 {
		at := growth.Spaced(u, 0, u.BetweenRowM*rows)
		p := growth.Prepare(at, growth.FromPlant, true)
		s := growth.Begin(p, growth.Fair(at))
		a := growth.NewAir(climate.Day{TMinC: 12, TMaxC: 24, RadiationMJ: 20}, 18, 1, 16, 15)
		for range 150 {
			s.Crowd(p, other)
			s.Rates(p, &a, a.PARMJ, 1)
			s.Integrate(p)
		}
		return s.Organ
	}
	if run(1, 0) != run(1, 1) {
		t.Error("others take room of a full stand")
	}
	before := math.Inf(1)
	for _, other := range []float64{0, 0.3, 0.5, 0.7, 1} {
		organ := run(3, other)
		if organ > before || organ < run(1, 0)/3-1e-9 {
			t.Errorf("others fill %.1f of the ground: %.1f g/m2, %.1f with less, %.1f in a full stand", other, organ, before, run(1, 0)/3)
		}
		before = organ
	}
	if run(3, 0) <= run(3, 1) {
		t.Error("room makes no difference")
	}
}

// watched runs a bed and keeps what every planting's leaves got by day.
func watched(f *field, bed *season.Bed, draws []growth.Draw, each func(planting, day int, l season.Light)) map[[2]int]season.Light {
	got := map[[2]int]season.Light{}
	f.runner.Watch = func(i, day int, _ *growth.Plants, l season.Light) {
		got[[2]int{i, day}] = l
		each(i, day, l)
	}
	f.runner.Run(f.sky, &f.beside, bed, draws)
	f.runner.Watch = nil
	return got
}
