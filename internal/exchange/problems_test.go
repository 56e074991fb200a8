package exchange

import (
	"strings"
	"testing"
)

// A disease that is not known is kept and told with the nearest that is; known
// ones may be written with a space or a hyphen.
func TestAnUnknownDiseaseIsToldWithTheNearest(t *testing.T) {
	files := hand(t)
	header, _, _ := strings.Cut(files["records.csv"], "\n")
	bed := strings.Split(strings.Split(files["beds.csv"], "\n")[1], ",")[0]
	row := func(id, problem string) string {
		cells := make([]string, len(strings.Split(header, ",")))
		for i, name := range strings.Split(header, ",") {
			cells[i] = map[string]string{"id": id, "date": "2026-09-01", "what": "disease", "bed": bed, "problem": problem}[strings.TrimSpace(name)]
		}
		return strings.Join(cells, ",")
	}
	files["records.csv"] = strings.Join([]string{header, row("a", "clubrot"), row("b", "White rot"), row("c", "moonshine"), ""}, "\n")
	h, report := CheckFolder(inFolder(files), testBook(t))
	if len(report.Faults) != 0 || len(report.Warnings) != 2 {
		t.Fatalf("faults %v, warnings %v", report.Faults, report.Warnings)
	}
	near, none := report.Warnings[0], report.Warnings[1]
	if near.Phrase.Key != "exchange.problem_unknown_near" || near.Phrase.Args["near"] != "clubroot" || near.At.Row != 2 {
		t.Errorf("%v", near)
	}
	if none.Phrase.Key != "exchange.problem_unknown" || none.At.Row != 4 {
		t.Errorf("%v", none)
	}
	if len(h.Records) != 3 {
		t.Errorf("%d records were kept", len(h.Records))
	}
}
