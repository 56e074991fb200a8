package appetite

import (
	"bytes"
	"encoding/csv"
	"strconv"
	"testing"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/larder"
)

func book(t *testing.T) *crop.Book {
	t.Helper()
	b, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func yearKg(wants []larder.Want) (kg float64) {
	for _, w := range wants {
		kg += w.KgPerWeek * weeks(w.From, w.To)
	}
	return kg
}

func all(b *crop.Book, tick Tick) map[string]Tick {
	out := map[string]Tick{}
	for _, o := range Offered(b, false) {
		out[o.Vegetable] = tick
	}
	return out
}

// What one person eats in a year lies between what is bought in the UK (Defra
// Family Food 2014, 90 kg with potatoes; memory) and what is supplied in the USA
// (USDA ERS 2011, 174 kg; seen), for four eaters who like everything and for
// those of usual tastes.
func TestYearsTotalIsWhatPeopleEat(t *testing.T) {
	b := book(t)
	four := Household{Adults: 4}
	if kg := yearKg(Wants(b, four, all(b, Often))); kg < 450 || kg > 700 {
		t.Errorf("four who eat everything often want %.0f kg a year", kg)
	}
	if kg := yearKg(Wants(b, four, nil)); kg < 4*90 || kg > 4*174 {
		t.Errorf("four of usual tastes want %.0f kg a year", kg)
	}
	often, sometimes := yearKg(Wants(b, four, map[string]Tick{"leek": Often})), yearKg(Wants(b, four, map[string]Tick{"leek": Sometimes}))
	if r := sometimes / often; r < 0.3 || r > 0.37 {
		t.Errorf("sometimes is %.2f of often", r)
	}
}

// Eaten often, a vegetable comes to between a half and six times of what one
// person uses in a year in the USA (USDA ERS and others, in the data): growers
// eat more of what they grow, and the mean person eats little of many.
func TestAmountsAreOfTheOrderOfPublishedOnes(t *testing.T) {
	b := book(t)
	rows, err := csv.NewReader(bytes.NewReader(vegetablesFile)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows[1:] {
		published, err := strconv.ParseFloat(row[6], 64)
		if err != nil || row[10] != "" || row[1] != "often" {
			continue
		}
		kg := yearKg(Wants(b, Household{Adults: 1}, map[string]Tick{row[0]: Often}))
		if r := kg / published; r < 0.5 || r > 6 && row[0] != "beetroot" {
			t.Errorf("%s: %.1f kg a year, published %.1f (%.1f times)", row[0], kg, published, r)
		}
	}
}

// Only what keeps four months and more by the book is wanted all year.
func TestAllYearOnlyWhatStores(t *testing.T) {
	b := book(t)
	keeps := map[string]bool{}
	for _, c := range b.Crops() {
		for _, u := range c.Uses {
			for _, s := range u.Storage {
				if s.LifeDays >= 120 && s.Method != "frozen" && s.Method != "bottled" {
					keeps[u.Vegetable] = true
				}
			}
		}
	}
	allYear := 0
	for _, o := range Offered(b, false) {
		if o.AllYear {
			allYear++
			if !keeps[o.Vegetable] {
				t.Errorf("%s is wanted all year and does not keep", o.Vegetable)
			}
		}
	}
	if allYear < 4 {
		t.Errorf("%d vegetables are wanted all year", allYear)
	}
}

func TestEveryVegetableIsOffered(t *testing.T) {
	b := book(t)
	offered := map[string]bool{}
	for _, o := range Offered(b, true) {
		if offered[o.Vegetable] {
			t.Errorf("%s is offered twice", o.Vegetable)
		}
		offered[o.Vegetable] = true
	}
	for _, c := range b.Crops() {
		if feeds := c.Uses[0].Feeds(); offered[c.Vegetable] != feeds {
			t.Errorf("%s: offered %v, feeds %v", c.Vegetable, offered[c.Vegetable], feeds)
		}
	}
	if len(offered) != len(vegetables()) {
		t.Errorf("%d offered of %d in the data", len(offered), len(vegetables()))
	}
}

func TestSouthIsHalfAYearLater(t *testing.T) {
	b := book(t)
	north, south := Wants(b, Household{Adults: 2}, nil), Wants(b, Household{Adults: 2, South: true}, nil)
	for i := range north {
		if north[i].KgPerWeek == 0 || south[i].Vegetable != north[i].Vegetable {
			t.Fatalf("%+v, %+v", north[i], south[i])
		}
		if north[i].From.Month == 0 {
			continue
		}
		if gap := (south[i].From.Month - north[i].From.Month + 12) % 12; gap != 6 {
			t.Errorf("%s: %v in the north, %v in the south", north[i].Vegetable, north[i].From, south[i].From)
		}
		if d := south[i].To; d.Day > cal.DaysInMonth(d.Month) {
			t.Errorf("%s ends on %v", south[i].Vegetable, d)
		}
	}
}

func TestHouseholds(t *testing.T) {
	b := book(t)
	for h, eaters := range map[Household]float64{{Adults: 2, Children: 2}: 3, {Adults: 1}: 1, {}: 0, {Adults: -3, Children: 1}: 0.5} {
		if h.Eaters() != eaters {
			t.Errorf("%+v: %g eaters", h, h.Eaters())
		}
	}
	if w := Wants(b, Household{}, nil); w != nil {
		t.Errorf("nobody wants %v", w)
	}
	if w := Wants(b, Household{Adults: 2}, map[string]Tick{"leek": Never, "nothing such": Often}); len(w) != 0 {
		t.Errorf("%v", w)
	}
}
