package place

import (
	"testing"

	"garner/internal/cal"
)

func TestASourceIsShut(t *testing.T) {
	winter := WaterSource{ShutFrom: cal.MonthDay{Month: 11, Day: 15}, ShutTo: cal.MonthDay{Month: 3, Day: 10}}
	summer := WaterSource{ShutFrom: cal.MonthDay{Month: 2, Day: 28}, ShutTo: cal.MonthDay{Month: 7, Day: 1}}
	never := WaterSource{}
	for _, c := range []struct {
		on             cal.Date
		winter, summer bool
	}{
		{cal.Of(2027, 11, 14), false, false}, {cal.Of(2027, 11, 15), true, false}, {cal.Of(2028, 1, 1), true, false}, {cal.Of(2028, 2, 29), true, true},
		{cal.Of(2028, 3, 10), true, true}, {cal.Of(2028, 3, 11), false, true}, {cal.Of(2028, 7, 1), false, true}, {cal.Of(2028, 7, 2), false, false},
	} {
		if winter.ShutOn(c.on) != c.winter || summer.ShutOn(c.on) != c.summer || never.ShutOn(c.on) {
			t.Errorf("%v: %v, %v, %v", c.on, winter.ShutOn(c.on), summer.ShutOn(c.on), never.ShutOn(c.on))
		}
	}
}
