package appetite

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"garner/internal/larder"
)

// missedPortions do not come to 80 g, without tolerance [g edible]: the book weighs
// cauliflower heads and leeks as trimmed in the garden and kale as leaves, the USDA
// as bought, with more of leaf, top and stem.
var missedPortions = map[string]float64{"cauliflower": 37, "kale": 64, "leek": 53}

// A portion as picked, less what the USDA takes for refuse, is the 80 g of edible
// vegetable that the UK counts as one portion, to a tenth. Refuse: USDA National
// Nutrient Database for Standard Reference, release 28 (testdata/edible.csv).
func TestPortionsAreEightyGramsEdible(t *testing.T) {
	file, err := os.Open("testdata/edible.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil || len(rows) < 10 {
		t.Fatal(len(rows), err)
	}
	b := book(t)
	for _, row := range rows[1:] {
		refuse, err := strconv.ParseFloat(row[1], 64)
		if err != nil {
			t.Fatal(err)
		}
		edible := 1000 * PortionKg(b, row[0]) * (1 - refuse/100)
		switch stands, missed := missedPortions[row[0]]; {
		case missed && math.Abs(edible-stands) > 1:
			t.Errorf("a portion of %s is %.0f g edible and was %.0f", row[0], edible, stands)
		case !missed && math.Abs(edible-80) > 8:
			t.Errorf("a portion of %s is %.0f g edible", row[0], edible)
		}
	}
}

// Portions of each eater are weighed by the book, by hand: three eaters, two
// portions of so much a week. A want told by weight stays as it is.
func TestPortionsAreWeighed(t *testing.T) {
	b := book(t)
	wants := []larder.Want{{Vegetable: "carrot", PortionsPerEater: 2}, {Vegetable: "leek", KgPerWeek: 0.7}, {Vegetable: "dragon", PortionsPerEater: 1}}
	got := ByWeight(b, 3, nil, wants)
	if want := 3 * 2 * PortionKg(b, "carrot"); got[0].KgPerWeek != want || want <= 0 {
		t.Errorf("carrots: %g kg a week, want %g", got[0].KgPerWeek, want)
	}
	if got[1].KgPerWeek != 0.7 || got[2].KgPerWeek != 0 || wants[0].KgPerWeek != 0 {
		t.Errorf("weighed %+v of %+v", got, wants)
	}
}

// A portion of a group is the mean of its members', by hand.
func TestAPortionOfAGroupIsTheMeanOfItsMembers(t *testing.T) {
	b := book(t)
	groups := []larder.Group{{ID: "g", Members: []larder.Member{{Vegetable: "leek"}, {Vegetable: "kale"}}}, {ID: "h", Members: []larder.Member{{Vegetable: "carrot"}}}}
	got := ByWeight(b, 2, groups, []larder.Want{{Group: "g", PortionsPerEater: 3}})[0].KgPerWeek
	if want := 2 * 3 * (PortionKg(b, "leek") + PortionKg(b, "kale")) / 2; math.Abs(got-want) > 1e-12 {
		t.Errorf("three portions for two are %g kg, want %g", got, want)
	}
}
