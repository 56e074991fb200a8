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

// What plants were lost to need not stay in the ground; a disease with no name is
// told, for nothing can follow from it.
func TestWhatIsNoDiseaseOfTheGround(t *testing.T) {
	files := hand(t)
	files["records.csv"] = "id,date,what,planting,bed,problem\n" +
		"a,2027-02-25,died,p4,,slugs\nb,2027-02-25,failing,p4,,other\nc,2027-02-25,disease,,h1,\nd,2027-02-25,disease,,h1,slugs\n"
	_, report := CheckFolder(inFolder(files), testBook(t))
	if len(report.Faults) != 0 || len(report.Warnings) != 2 {
		t.Fatalf("faults %v, warnings %v", report.Faults, report.Warnings)
	}
	for i, key := range []string{"exchange.problem_blank", "exchange.problem_unknown"} {
		if w := report.Warnings[i]; w.Phrase.Key != key || w.At.Row != 4+i || w.At.Column != "problem" {
			t.Errorf("%v, want %s in row %d", w, key, 4+i)
		}
	}
}
