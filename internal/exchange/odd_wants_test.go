package exchange

import (
	"testing"
)

// Wants that may stand and are hardly meant as they are told are warned of, each once at its
// cell, and the holding is read all the same.
func TestOddWantsAreWarnedOf(t *testing.T) {
	for _, c := range []struct {
		old, new, key string
		row           int
		column        string
	}{
		{"0.9,", "0,", "exchange.want_nothing", 2, "kg_per_week"},
		{"0.9,06-01,09-30,,,", "0,06-01,09-30,,floor,", "exchange.want_floor_nothing", 2, "kg_per_week"},
		{"0.9,", "24.6,", "exchange.want_much", 2, "kg_per_week"}, // of three and a half eaters
		{"0.9,06-01,09-30,,,", ",06-01,09-30,36,,", "exchange.want_portions_much", 2, "portions_per_eater"},
		{"0.9,06-01,09-30,,,", "0.9,06-01,09-30,,,1.5", "exchange.want_buys_more", 2, "buy_kg_per_week"},
		{"06-01,09-30", "06-01,06-01", "exchange.want_one_day", 2, "to"},
		{"0.9,06-01,09-30,,,", "2,06-01,10-01,,floor,", "exchange.want_floor_over", 2, "importance"},
	} {
		files := hand(t)
		change(t, files, "wants.csv", c.old, c.new)
		h, report := CheckFolder(inFolder(files), testBook(t))
		if h == nil || len(report.Warnings) != 1 {
			t.Errorf("%s: faults %v, warnings %v", c.key, report.Faults, report.Warnings)
			continue
		}
		w := report.Warnings[0]
		if w.Phrase.Key != c.key || w.At.File != "wants.csv" || w.At.Row != c.row || w.At.Column != c.column {
			t.Errorf("%s is told as %v", c.key, w)
		}
	}
}

// A floor within what is wanted, or in another season, is not odd; nor is what a hungry household eats.
func TestSoundWantsAreNotOdd(t *testing.T) {
	for _, c := range [][2]string{
		{"0.9,06-01,09-30,,,", "0.9,06-01,10-31,,floor,"},
		{"0.9,06-01,09-30,,,", "2,06-01,09-30,,floor,"},
		{"0.9,", "24.4,"},
		{"0.9,06-01,09-30,,,", "0.9,06-01,09-30,,,0.9"},
		{"06-01,09-30", "10-01,09-30"},
	} {
		files := hand(t)
		change(t, files, "wants.csv", c[0], c[1])
		if h, report := CheckFolder(inFolder(files), testBook(t)); h == nil || len(report.Warnings) != 0 {
			t.Errorf("%s: faults %v, warnings %v", c[1], report.Faults, report.Warnings)
		}
	}
}

// A report knows the rows of its files, blank ones passed over.
func TestAReportKnowsItsRows(t *testing.T) {
	files := hand(t)
	change(t, files, "wants.csv", "w2,", "\nw2,")
	if _, report := CheckFolder(inFolder(files), testBook(t)); report.At("wants", 1, "vegetable").Row != 4 || report.At("wants", 0, "vegetable").Row != 2 {
		t.Errorf("%v", report.At("wants", 1, "vegetable"))
	}
}
