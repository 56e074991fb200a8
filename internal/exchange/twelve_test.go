package exchange

import (
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"

	"garner/internal/fault"
	"garner/internal/words"
)

var update = flag.Bool("update", false, "write the golden files and the documents made from the tables")

// report writes faults as the command line does: place and words, a fault a line.
func reportOf(faults fault.List) string {
	var b strings.Builder
	for _, f := range faults {
		fmt.Fprintf(&b, "%s row %d column %s: %s\n", f.At.File, f.At.Row, f.At.Column, words.English().Text(f.Phrase))
	}
	return b.String()
}

// Twelve faults of twelve kinds, in nine files, give twelve rows.
func TestTwelveFaultsGiveTwelveRows(t *testing.T) {
	files := hand(t)
	change(t, files, "holding.csv", "Europe/London", "Europe/Londinium")
	change(t, files, "sites.csv", "51.5,", "71.5,")
	change(t, files, "beds.csv", "4.5,0.8", "4.5,0")
	change(t, files, "covers.csv", "2027-05-10,2027-10-01", "2027-05-01,2027-10-01")
	change(t, files, "varieties.csv", "Red Lane,carrot,,-6", "Red Lane,carrott,,-6")
	change(t, files, "plantings.csv", "p2,main,h1", "p2,main,h9")
	change(t, files, "plantings.csv", "2027-05-25,7.2", "25/05/2027,7.2")
	change(t, files, "plantings.csv", "2027-02-20,0.6", "2027-02-20,60")
	change(t, files, "plantings.csv", "red-lane,,2027-02-15", "red-lane,crown,2027-02-15")
	change(t, files, "wants.csv", "06-01,09-30", "06-31,09-30")
	change(t, files, "stores.csv", "damp sand", "damp sande")
	change(t, files, "weather/days.csv", "0.4,7.9", "7.9,0.4")
	h, report := CheckFolder(inFolder(files), testBook(t))
	if h != nil || len(report.Faults) != 12 {
		t.Errorf("%d faults, holding %v", len(report.Faults), h)
	}
	got := reportOf(report.Faults)
	const golden = "testdata/twelve_faults.golden"
	if *update {
		if err := os.WriteFile(golden, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil || got != string(want) {
		t.Errorf("%v\n%s", err, got)
	}
}
