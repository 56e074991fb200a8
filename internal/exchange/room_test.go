package exchange

import (
	"strings"
	"testing"
)

// A bed that holds more than its ground by the plan is kept and told, at the
// planting that is too much.
func TestAnOverFullBedIsTold(t *testing.T) {
	files := hand(t)
	files["plantings.csv"] += strings.Join([]string{
		"q1,main,h1,carrot,table,,seed,2027-04-20,4,,,2027-06-01,,,,,,,,",
		"q2,main,h1,carrot,table,,seed,2027-05-20,3,,,2027-09-01,,,,,,,,", // 1.5 + 4 + 3 of 7.2 m2
		"q3,main,h1,carrot,table,,seed,2027-06-01,2.5,,,2027-09-01,,,,,,,,",
		"q4,main,h2,carrot,table,,seed,2027-06-01,3.6,,,2027-09-01,,,,,,,,", // all of it
		"q5,main,h2,carrot,table,,seed,2027-06-20,3,under,q4,2027-09-01,,,,,,,,", "",
	}, "\n")
	h, report := CheckFolder(inFolder(files), testBook(t))
	if len(report.Faults) != 0 || len(report.Warnings) != 1 {
		t.Fatalf("faults %v, warnings %v", report.Faults, report.Warnings)
	}
	w := report.Warnings[0]
	if w.Phrase.Key != "exchange.bed_over_full" || w.Phrase.Args["planting"] != "q2" || w.Phrase.Args["held"] != 8.5 || w.At.Row != 8 || w.At.Column != "area_m2" {
		t.Errorf("%v", w)
	}
	if len(h.Plantings) != 10 {
		t.Errorf("%d plantings were kept", len(h.Plantings))
	}
}
