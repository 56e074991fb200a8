package words

import (
	"testing"

	"garner/internal/cal"
)

// A forecast is told as sharply as it deserves: a date within four weeks, a week
// within ten, a part of a month beyond. The limits are the project's own rule.
func TestSharpTellsADayAsSharplyAsItDeserves(t *testing.T) {
	today := cal.Of(2027, 3, 9)
	for _, tc := range []struct {
		day  cal.Date
		want string
	}{
		{cal.Of(2026, 10, 9), "9 October 2026"},
		{cal.Of(2027, 2, 11), "11 February"},
		{today, "9 March"},
		{cal.Of(2027, 4, 6), "6 April"},
		{cal.Of(2027, 4, 7), "the week of 5 April"},
		{cal.Of(2027, 5, 18), "the week of 17 May"},
		{cal.Of(2027, 5, 19), "mid May"},
		{cal.Of(2027, 6, 10), "early June"},
		{cal.Of(2027, 6, 21), "late June"},
		{cal.Of(2027, 7, 31), "late July"},
		{cal.Of(2028, 1, 15), "mid January 2028"},
		{cal.None, "never"},
	} {
		if got := English().Text(Sharp(tc.day, today)); got != tc.want {
			t.Errorf("%s seen from %s is %q, want %q", tc.day, today, got, tc.want)
		}
	}
	if got := English().Text(Sharp(cal.Of(2027, 1, 3), cal.Of(2026, 12, 20))); got != "3 January 2027" {
		t.Errorf("a date of next year within four weeks is %q", got)
	}
}

func TestCountWritesNumbersToNineInWords(t *testing.T) {
	f := English().Format()
	for n, want := range map[float64]string{0: "no", 1: "one", 9: "nine", 10: "10", 26: "26", 2.5: "2.5"} {
		if got := f.Count(n); got != want {
			t.Errorf("%v is written %q, want %q", n, got, want)
		}
	}
	if one, more := f.counted("words.span", 1), f.counted("words.span", 8); one != "one week" || more != "eight weeks" {
		t.Errorf("spans are written %q and %q", one, more)
	}
}
