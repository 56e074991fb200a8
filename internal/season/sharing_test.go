package season_test

import (
	"testing"

	"pgregory.net/rapid"

	"garner/internal/cal"
	"garner/internal/canopy"
	"garner/internal/growth"
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
