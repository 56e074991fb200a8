package outlook_test

import (
	"reflect"
	"slices"
	"testing"

	"garner/internal/cal"
	"garner/internal/demotest"
	"garner/internal/larder"
	"garner/internal/outlook"
	"garner/internal/season"
)

// The first weeks are those of the whole table bit for bit, in every season, whether the
// memory knows nothing or some of the whole table.
func TestTheWeeksAheadAreThoseOfTheWholeTable(t *testing.T) {
	for _, name := range []string{"main", "south"} {
		for _, day := range []cal.Date{cal.Of(2027, 1, 4), cal.Of(2027, 3, 17), cal.Of(2027, 5, 20), cal.Of(2027, 8, 2), cal.Of(2027, 10, 9)} {
			h := demotest.Holding(t, name)
			h.Today = day
			s := demotest.Setting(t, h, 30)
			s.Today, s.From = day, day.Monday()
			until := day + 42
			ahead, err := outlook.Ahead(s, outlook.NewMemory(), until)
			if err != nil {
				t.Fatal(err)
			}
			whole, err := outlook.Compute(s, outlook.NewMemory())
			if err != nil {
				t.Fatal(err)
			}
			if ahead.End() < until || ahead.End() >= until+7 {
				t.Errorf("%s from %v: ends on %v", name, day, ahead.End())
			}
			sameWeeks(t, whole, ahead)
			if n := sameFates(t, s, whole, ahead); n < 5 {
				t.Errorf("%s from %v: only %d plantings have begun", name, day, n)
			}
			partly(t, s, whole, until)
		}
	}
}

// partly looks ahead over the memory of a table of nearly the same plan.
func partly(t *testing.T, s outlook.Setting, whole *outlook.Table, until cal.Date) {
	t.Helper()
	m, other := outlook.NewMemory(), *s.Holding
	other.Plantings = slices.Clone(other.Plantings)
	other.Plantings[0].AreaM2 *= 1.5
	before := s
	before.Holding = &other
	for _, half := range []outlook.Setting{before, s} {
		var err error
		if half.Holding == s.Holding {
			var ahead *outlook.Table
			if ahead, err = outlook.Ahead(half, m, until); err == nil {
				sameWeeks(t, whole, ahead)
			}
		} else {
			_, err = outlook.Compute(half, m)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	again, err := outlook.Compute(s, m)
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(again.Summarise(true), whole.Summarise(true)) {
		t.Error("looking ahead changed the table that came after it")
	}
}

// sameWeeks holds the weeks to those of the whole table.
func sameWeeks(t *testing.T, whole, ahead *outlook.Table) {
	t.Helper()
	days := 7 * ahead.Weeks
	for i := range ahead.Vegetables {
		w, a := &whole.Vegetables[i], &ahead.Vegetables[i]
		for f := range a.Years {
			first := func(kg []float32) []float32 {
				if kg == nil {
					return nil
				}
				return kg[:days]
			}
			c := &w.Years[f]
			if want := (larder.Course{Want: first(c.Want), Fresh: first(c.Fresh), Stored: first(c.Stored), Bought: first(c.Bought), Short: first(c.Short), Over: first(c.Over)}); a.Name != w.Name || !reflect.DeepEqual(want, a.Years[f]) {
				t.Fatalf("from %v: %s differs in future %d", whole.From, w.Name, f)
			}
		}
		sources := map[string][]float64{}
		for _, s := range ahead.Sources(a.Name) {
			sources[s.Planting+s.Batch] = append(s.Fresh, s.Stored...)
		}
		for _, s := range whole.Sources(a.Name) {
			if want := append(slices.Clone(s.Fresh[:ahead.Weeks]), s.Stored[:ahead.Weeks]...); !reflect.DeepEqual(want, sources[s.Planting+s.Batch]) {
				t.Fatalf("from %v: what %s%s gives differs", whole.From, s.Planting, s.Batch)
			}
		}
	}
	for i := range ahead.Stores {
		for f, level := range ahead.Stores[i].LevelKg {
			if !slices.Equal(level, whole.Stores[i].LevelKg[f][:days]) {
				t.Fatalf("from %v: store %s differs in future %d", whole.From, whole.Stores[i].Store, f)
			}
		}
	}
}

// sameFates holds what has begun to its fate in the whole table, and counts it.
func sameFates(t *testing.T, s outlook.Setting, whole, ahead *outlook.Table) (begun int) {
	t.Helper()
	starts := map[string]cal.Date{}
	for _, p := range s.Holding.Plantings {
		starts[p.ID] = p.Date
	}
	for i := range ahead.Plantings {
		w, a := &whole.Plantings[i], &ahead.Plantings[i]
		if starts[w.Planting] >= ahead.End() {
			continue
		}
		begun++
		c, _ := s.Book.Crop(w.Crop)
		u, err := c.Use(w.Use)
		if err != nil {
			t.Fatal(err)
		}
		for f := range a.Years {
			want := *w.Years[f]
			if u.Pattern == "perennial" {
				want = untilPicked(want, a.Years[f])
			}
			if !reflect.DeepEqual(&want, a.Years[f]) {
				t.Fatalf("from %v: the fate of %s differs in future %d", whole.From, w.Planting, f)
			}
		}
	}
	return begun
}

// untilPicked is the fate of a perennial as far as it was followed.
func untilPicked(whole season.Outcome, ahead *season.Outcome) season.Outcome {
	if ahead.Gone >= 0 {
		return whole
	}
	whole.Gone, whole.Over, whole.End = ahead.Gone, ahead.Over, ahead.End
	whole.Flow = whole.Flow[:min(len(whole.Flow), len(ahead.Flow))]
	return whole
}
