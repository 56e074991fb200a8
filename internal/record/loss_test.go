package record_test

import (
	"math"
	"testing"

	"garner/internal/cal"
	"garner/internal/record"
)

func TestLosses(t *testing.T) {
	day := cal.Of(2027, 6, 1)
	told := func(what record.What, after int, value float64, unit string) record.Record {
		return record.Record{Date: day + cal.Date(after), What: what, Planting: "a", Value: value, Unit: unit}
	}
	for name, c := range map[string]struct {
		records []record.Record
		plants  float64
		left    float64
		lost    cal.Date
	}{
		"nothing":                     {nil, 40, 1, cal.None},
		"died":                        {[]record.Record{told(record.Died, 0, 0, "")}, 40, 0, day},
		"a third died":                {[]record.Record{told(record.Died, 0, 1.0/3, "share")}, 40, 2.0 / 3, cal.None},
		"failing, nothing told":       {[]record.Record{told(record.Failing, 0, 0, "")}, 40, 1, cal.None},
		"shares are of what is left":  {[]record.Record{told(record.Failing, 0, 0.5, "share"), told(record.Died, 3, 0.5, "share")}, 40, 0.25, cal.None},
		"whatever their order":        {[]record.Record{told(record.Died, 3, 0.5, "share"), told(record.Failing, 0, 0.5, "share")}, 40, 0.25, cal.None},
		"plants are of those set out": {[]record.Record{told(record.Died, 0, 10, "plants"), told(record.Died, 1, 10, "plants")}, 40, 0.5, cal.None},
		"the last plants":             {[]record.Record{told(record.Died, 0, 30, "plants"), told(record.Died, 2, 10, "plants")}, 40, 0, day + 2},
		"more plants than there were": {[]record.Record{told(record.Died, 0, 99, "plants")}, 40, 0, day},
		"plants of nobody knows":      {[]record.Record{told(record.Died, 0, 30, "plants")}, 0, 1, cal.None},
		"half moved":                  {[]record.Record{told(record.Moved, 0, 0.5, "share")}, 40, 0.5, cal.None},
		"cleared is not lost":         {[]record.Record{told(record.Cleared, 0, 0, "")}, 40, 1, cal.None},
	} {
		lost := record.Losses(c.records, "a", c.plants)
		if got := record.Left(lost, day+30); math.Abs(got-c.left) > 1e-12 || record.Left(lost, day-1) != 1 {
			t.Errorf("%s: %g is left, want %g", name, got, c.left)
		}
		if on := record.LostOn(lost); on != c.lost {
			t.Errorf("%s: all is lost on %s, want %s", name, on, c.lost)
		}
		if others := record.Losses(c.records, "b", c.plants); others != nil {
			t.Errorf("%s: another planting lost %v", name, others)
		}
	}
}
