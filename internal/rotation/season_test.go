package rotation

import (
	"testing"

	"garner/internal/cal"
)

// A growing year begins on the day it is told to begin, in leap years too.
func TestGrowingYearsBeginOnTheirFirstDay(t *testing.T) {
	for year := 2024; year <= 2032; year++ {
		for _, south := range []bool{false, true} {
			first := begins(year, south)
			if season(first, south) != year || season(first-1, south) != year-1 {
				t.Errorf("south %v: %v lies in %d, the day before in %d", south, first, season(first, south), season(first-1, south))
			}
		}
	}
	if got := named(2008, true); got != "2008/09" {
		t.Errorf("the southern year from July 2008 is told as %s", got)
	}
	if got := season(cal.Of(2028, 7, 1), true); got != 2027 {
		t.Errorf("1 July of a leap year lies in %d", got)
	}
}
