package season_test

import (
	"testing"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/season"
)

// Onions to stand the winter are sown in August and planted as sets in September
// (common practice, no source): not in spring or early summer, nor after midwinter.
func TestWhatStandsTheWinterIsNotSownInSpring(t *testing.T) {
	u := useOf(t, "onion", "overwintered")
	for _, c := range []struct {
		start      growth.Start
		year, m, d int
		north, too bool
	}{
		{growth.FromSeed, 2027, 6, 15, true, true},
		{growth.FromSeed, 2027, 3, 20, true, true},
		{growth.FromSeed, 2027, 8, 20, true, false},
		{growth.FromSeed, 2028, 1, 10, true, true},
		{growth.FromSeed, 2028, 2, 29, true, true},
		{growth.FromSet, 2027, 8, 20, true, true},
		{growth.FromSet, 2027, 9, 25, true, false},
		{growth.FromPlant, 2027, 9, 25, true, false},
		{growth.FromSeed, 2027, 12, 15, false, true},
		{growth.FromSeed, 2027, 2, 20, false, false},
		{growth.FromSeed, 2028, 2, 29, false, false},
	} {
		if got := season.TooEarly(u, c.start, cal.Of(c.year, c.m, c.d), c.north); got != c.too {
			t.Errorf("started as %v on %d-%02d-%02d, north %v: too early %v", c.start, c.year, c.m, c.d, c.north, got)
		}
	}
	if table := useOf(t, "carrot", "table"); season.TooEarly(table, growth.FromSeed, cal.Of(2027, 3, 1), true) {
		t.Error("carrots for the table wait for autumn")
	}
}

// The planting that a use is fitted to is started at its own time of the year, in
// the north and half a year later in the south.
func TestReferencePlantingsAreInTime(t *testing.T) {
	b, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	late := 0
	for _, c := range b.Crops() {
		for _, u := range c.Uses {
			on, err := cal.ParseMonthDay(u.ReferenceDate)
			if err != nil {
				t.Fatal(err)
			}
			if u.StartAfterSolsticeDays > 0 {
				late++
			}
			start, day := growth.StartOf(u.ReferenceMethod), on.In(2027)
			if season.TooEarly(u, start, day, true) || season.TooEarly(u, start, day+183, false) {
				t.Errorf("%s is started on %s, too early for itself", u.Label, u.ReferenceDate)
			}
		}
	}
	if late < 5 {
		t.Errorf("only %d uses wait for their time", late)
	}
}

// Winter cabbage planted in June is due at the end of January, in the south at the
// end of July; what is planted after midwinter belongs to the next year.
func TestDueIsInTheYearOfGrowth(t *testing.T) {
	u := useOf(t, "cabbage", "winter")
	for _, c := range []struct {
		on    cal.Date
		north bool
		due   cal.Date
	}{
		{cal.Of(2026, 6, 25), true, cal.Of(2027, 1, 31)},
		{cal.Of(2026, 12, 25), false, cal.Of(2027, 7, 31)},
		{cal.Of(2027, 1, 10), true, cal.Of(2028, 1, 31)},
	} {
		if due := season.Due(u, c.on, c.north); due < c.due-2 || due > c.due+2 {
			t.Errorf("planted on %v it is due on %v, not about %v", c.on, due, c.due)
		}
	}
	if due := season.Due(useOf(t, "cabbage", "summer"), cal.Of(2027, 4, 20), true); due.IsSet() {
		t.Errorf("summer cabbage is due on %v", due)
	}
}
