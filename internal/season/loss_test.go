package season_test

import (
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"garner/internal/cal"
	"garner/internal/growth"
	"garner/internal/season"
)

// losing runs one planting on its own bed with what was lost of it.
func (f *field) losing(p season.Planting, lost ...season.Loss) season.Outcome {
	p.Losses = lost
	return f.runner.Run(f.sky, &f.beside, &season.Bed{Plantings: []season.Planting{p}}, []growth.Draw{growth.Fair(p.Parameters.Use)})[0]
}

func lossDrawn(t *rapid.T, name string) season.Loss {
	return season.Loss{On: cal.Of(2001, 3, 1) + cal.Date(rapid.IntRange(0, 300).Draw(t, name+" day")), Share: rapid.Float64Range(0, 1).Draw(t, name+" share")}
}

// Losing more never gives more weight on any day, and never a crop that stands
// longer; a loss of nothing changes no bit.
func TestMoreLossNeverGivesMore(t *testing.T) {
	f := newField(t, north, weather(t, 4), season.Ground{Light: 1})
	for _, name := range []string{"carrot", "courgette", "tomato", "kale", "lettuce"} {
		u := use(t, name)
		day, _ := cal.ParseMonthDay(u.ReferenceDate)
		p := season.Planting{ID: "a", Parameters: growth.Prepare(u, growth.StartOf(u.Methods[0]), true), Date: day.In(2001), AreaM2: 2, ClearBy: cal.None, Shares: -1, Soil: 1}
		whole := f.losing(p)
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				one, two := lossDrawn(t, "one"), lossDrawn(t, "two")
				lost := []season.Loss{one}
				some := f.losing(p, lost...)
				lost = append(lost, two)
				slices.SortStableFunc(lost, func(a, b season.Loss) int { return int(a.On - b.On) })
				more := f.losing(p, lost...)
				neverMore(t, whole, some)
				neverMore(t, some, more)
				one.Share = 0
				if none := f.losing(p, one); !reflect.DeepEqual(none, whole) {
					t.Fatal("a loss of nothing is another course")
				}
			})
		})
	}
}

func neverMore(t *rapid.T, a, b season.Outcome) {
	t.Helper()
	if len(b.Standing) > len(a.Standing) || len(b.Flow) > len(a.Flow) {
		t.Fatalf("it stands %d days where it stood %d, bears %d where it bore %d", len(b.Standing), len(a.Standing), len(b.Flow), len(a.Flow))
	}
	for i, kg := range b.Standing {
		if kg > a.Standing[i] {
			t.Fatalf("day %d of standing: %g kg, before %g", i, kg, a.Standing[i])
		}
	}
	for i, kg := range b.Flow {
		if kg > a.Flow[i] {
			t.Fatalf("day %d of bearing: %g kg, before %g", i, kg, a.Flow[i])
		}
	}
}

// Half lost and half of the rest lost leave a quarter, from those days on and
// not before.
func TestLossesAddUpOnWhatIsLeft(t *testing.T) {
	f := newField(t, north, weather(t, 4), season.Ground{Light: 1})
	u := use(t, "carrot")
	p := season.Planting{ID: "a", Parameters: growth.Prepare(u, growth.FromSeed, true), Date: cal.Of(2001, 4, 10), AreaM2: 2, ClearBy: cal.None, Shares: -1, Soil: 1}
	whole := f.losing(p)
	if whole.Ready < 0 || len(whole.Standing) < 20 {
		t.Fatalf("the carrots stand %d days", len(whole.Standing))
	}
	first := f.sky.First + cal.Date(whole.First)
	half := f.losing(p, season.Loss{On: cal.Of(2001, 5, 1), Share: 0.5}, season.Loss{On: first + 10, Share: 0.5})
	for i, kg := range whole.Standing {
		share := float32(0.5)
		if i >= 10 {
			share = 0.25
		}
		if got, want := half.Standing[i], kg*share; got < want*0.99999 || got > want*1.00001 {
			t.Fatalf("day %d stands %g kg, want %g", i, got, want)
		}
	}
}

// What is lost as a whole ends that day with nothing left to lift, and what was
// not ready by then is told as lost.
func TestAllLostEnds(t *testing.T) {
	f := newField(t, north, weather(t, 4), season.Ground{Light: 1})
	u := use(t, "carrot")
	p := season.Planting{ID: "a", Parameters: growth.Prepare(u, growth.FromSeed, true), Date: cal.Of(2001, 4, 10), AreaM2: 2, ClearBy: cal.None, Shares: -1, Soil: 1}
	whole := f.losing(p)
	young := f.losing(p, season.Loss{On: cal.Of(2001, 5, 20), Share: 1})
	if young.End != growth.Lost || young.First >= 0 {
		t.Errorf("young and lost it ends %s with a harvest from day %d", young.End, young.First)
	}
	on := f.sky.First + cal.Date(whole.First+5)
	late := f.losing(p, season.Loss{On: on, Share: 1})
	if n := len(late.Standing); n != 6 || late.Standing[5] != 0 || late.Standing[4] != whole.Standing[4] || late.Over != whole.First+5 {
		t.Errorf("lost on day 5 of its harvest it stands %v and is over on day %d", late.Standing, late.Over-whole.First)
	}
}

// What stands under a crop gets its light back as that one is lost.
func TestLossLetsLightThrough(t *testing.T) {
	f := newField(t, north, weather(t, 11), season.Ground{Light: 1})
	u := use(t, "carrot")
	tall := *u
	tall.HeightM = 2
	upper := season.Planting{ID: "upper", Parameters: growth.Prepare(&tall, growth.FromSeed, true), Date: cal.Of(2001, 4, 25), AreaM2: 1, ClearBy: cal.None, Shares: -1, Soil: 1}
	under := season.Planting{ID: "under", Parameters: growth.Prepare(u, growth.FromSeed, true), Date: cal.Of(2001, 6, 1), AreaM2: 0.4, ClearBy: cal.None, Shares: 0, Beneath: 0.5, Soil: 1}
	draws := []growth.Draw{growth.Fair(u), growth.Fair(u)}
	var ready []int
	for _, share := range []float64{0, 0.4, 0.8, 1} {
		upper.Losses = []season.Loss{{On: cal.Of(2001, 6, 10), Share: share}}
		ready = append(ready, f.runner.Run(f.sky, &f.beside, &season.Bed{Plantings: []season.Planting{upper, under}}, draws)[1].Ready)
	}
	if !slices.IsSortedFunc(ready, func(a, b int) int { return b - a }) || ready[0] <= ready[3] || ready[3] < 0 {
		t.Errorf("the more is lost of the upper crop, the lower is ready on day %d", ready)
	}
}
