package larder

import (
	"testing"

	"garner/internal/cal"
)

func TestInSeason(t *testing.T) {
	md := func(m, d int) cal.MonthDay { return cal.MonthDay{Month: m, Day: d} }
	for _, c := range []struct {
		name     string
		from, to cal.MonthDay
		day      cal.Date
		want     bool
	}{
		{"all year", cal.MonthDay{}, cal.MonthDay{}, cal.Of(2027, 8, 9), true},
		{"first day", md(6, 1), md(9, 30), cal.Of(2027, 6, 1), true},
		{"last day", md(6, 1), md(9, 30), cal.Of(2027, 9, 30), true},
		{"day after", md(6, 1), md(9, 30), cal.Of(2027, 10, 1), false},
		{"across the new year, before it", md(11, 15), md(3, 1), cal.Of(2027, 12, 31), true},
		{"across the new year, after it", md(11, 15), md(3, 1), cal.Of(2028, 1, 1), true},
		{"across the new year, out", md(11, 15), md(3, 1), cal.Of(2028, 3, 2), false},
		{"29 February goes with the 28th", md(12, 1), md(2, 28), cal.Of(2028, 2, 29), true},
		{"29 February is not March", md(3, 1), md(4, 1), cal.Of(2028, 2, 29), false},
		{"no start", cal.MonthDay{}, md(2, 1), cal.Of(2027, 1, 1), true},
		{"no end", md(10, 1), cal.MonthDay{}, cal.Of(2027, 12, 31), true},
		{"one day", md(5, 5), md(5, 5), cal.Of(2027, 5, 5), true},
	} {
		w := Want{From: c.from, To: c.to}
		if got := w.InSeason(c.day); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}

// A winter want over a table that begins in December: two seasons, each whole,
// and a second want adds to it.
func TestWantAcrossTheNewYear(t *testing.T) {
	in := simple(430, 0, plain)
	in.First = cal.Of(2026, 12, 1)
	in.Wants = []Want{
		{ID: "a", Vegetable: "carrot", KgPerWeek: 7, From: cal.MonthDay{Month: 11, Day: 1}, To: cal.MonthDay{Month: 1, Day: 31}},
		{ID: "b", Vegetable: "carrot", KgPerWeek: 3.5, From: cal.MonthDay{Month: 1, Day: 1}, To: cal.MonthDay{Month: 1, Day: 31}},
	}
	want := run(t, in, Future{}).Courses[0].Want
	for _, c := range []struct {
		day cal.Date
		kg  float32
	}{{cal.Of(2026, 12, 31), 1}, {cal.Of(2027, 1, 1), 1.5}, {cal.Of(2027, 2, 1), 0}, {cal.Of(2027, 10, 31), 0}, {cal.Of(2027, 11, 1), 1}, {cal.Of(2028, 1, 31), 1.5}} {
		if got := want[c.day-in.First]; got != c.kg {
			t.Errorf("%v: %g kg, want %g", c.day, got, c.kg)
		}
	}
	near(t, "two winters", total(want), 2*31*1.5+31+61)
}
