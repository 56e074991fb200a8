package larder

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"garner/internal/crop"
)

// kindOf groups the methods by what the published lives are for; others have
// none to be held against.
var kindOf = map[string]string{
	"damp sand": "fresh", "clamp": "fresh", "cool shed": "fresh", "hung": "fresh", "nets": "fresh", "cured": "fresh", "fridge": "fresh", "cellar": "fresh",
	Frozen: "frozen", "dried": "dried",
}

// No life in the crop book is longer than the longest one published for the crop
// kept in that way: USDA Handbook 66 in several editions, UC Davis, extension
// services and USDA/FSIS FoodKeeper, all seen (testdata/longest_life.csv holds
// the longest with its source).
func TestBookLivesAreNotAboveThePublished(t *testing.T) {
	book, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	longest := map[[2]string]float64{}
	for _, row := range table(t, "longest_life.csv") {
		longest[[2]string{row["book_id"], row["kind"]}] = number(t, row, "longest_d")
	}
	checked := 0
	for _, c := range book.Crops() {
		for _, u := range c.Uses {
			for _, s := range u.Storage {
				limit, known := longest[[2]string{c.ID, kindOf[s.Method]}]
				if !known {
					continue
				}
				checked++
				if got := LifeDays(s, s.BestC); got > limit {
					t.Errorf("%s, %s, %s: %g days, longest published %g", c.ID, u.Name, s.Method, got, limit)
				}
				if !keeps(s) {
					t.Errorf("%s, %s, %s cannot be reckoned with: %+v", c.ID, u.Name, s.Method, s)
				}
			}
		}
	}
	if checked == 0 {
		t.Error("no life of the book was held against a published one")
	}
}

// printedRange is a range of temperatures in what a source prints, as in "5 months
// at 0-4.4 C".
var printedRange = regexp.MustCompile(` at (-?[0-9.]+)-([0-9.]+) C`)

// A life that its source prints for a range of temperatures holds all through it: the
// best temperature of the book's row is the upper end of the first range printed. Rows
// that speak of two ways are left out.
func TestALifeHoldsOverThePrintedRange(t *testing.T) {
	book, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	checked := 0
	for _, c := range book.Crops() {
		for _, u := range c.Uses {
			for _, s := range u.Storage {
				found := printedRange.FindAllStringSubmatch(s.Where, -1)
				if len(found) != 1 || s.Mark == "judgement" || strings.Contains(s.Where, ";") {
					continue
				}
				checked++
				if top, _ := strconv.ParseFloat(found[0][2], 64); math.Abs(s.BestC-top) > 0.5 {
					t.Errorf("%s, %s, %s: best at %g C, its source says %q", c.ID, u.Name, s.Method, s.BestC, s.Where)
				}
			}
		}
	}
	if checked < 40 {
		t.Errorf("%d lives with a printed range", checked)
	}
}
