package desk

import (
	"fmt"
	"testing"

	"garner/internal/plan"
)

func BenchmarkGroundYearTried(b *testing.B) {
	o := demoOffice(b)
	if _, err := o.GroundYearView("", nil); err != nil {
		b.Fatal(err)
	}
	day := 0
	for b.Loop() {
		day++
		date := fmt.Sprintf("2027-0%d-%02d", 3+day/28%3, 1+day%28)
		if _, err := o.GroundYearView("", []plan.Change{{Action: "set", Planting: "pot-27t", Field: "date", Value: date}}); err != nil {
			b.Fatal(err)
		}
	}
}

func TestDump(t *testing.T) {
	o := demoOffice(t)
	for _, site := range []string{"home", "share"} {
		v, err := o.GroundYearView(site, nil)
		if err != nil {
			t.Fatal(err)
		}
		for _, b := range v.Beds {
			t.Logf("%s %v %.1f m2 covers %v", b.ID, b.Name, b.AreaM2(), b.Covers)
			for _, h := range b.Held {
				t.Logf("    %-9s %-24s %s..%s (%s %s) at %.2f share %.2f %s stays %v", h.ID, h.Name, h.Date, h.Clear.P50, h.Clear.P10, h.Clear.P90, h.At, h.Share, h.Relation, h.Stays)
			}
			for _, f := range b.Free {
				t.Logf("    free %.2f + %.2f %s..%s", f.At, f.Share, f.From, f.Until)
			}
			for _, w := range b.Wrong {
				t.Logf("    WRONG %v", w)
			}
		}
	}
}
