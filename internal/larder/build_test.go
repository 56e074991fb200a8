package larder

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"garner/internal/cal"
	"garner/internal/crop"
)

// monday is the first day of the small tables below.
var monday = cal.Of(2027, 1, 4)

// sand is a cellar with damp sand at an even 2 C.
func sand(kg float64) Store {
	return Store{ID: "sand", Name: "Sand", Method: "damp sand", WinterC: 2, SummerC: 2, CapacityKg: kg}
}

// only returns one way of keeping for everything.
func only(row crop.Storage) func(string, string, string) (crop.Storage, bool) {
	return func(_, _, method string) (crop.Storage, bool) { return row, row.Method == method }
}

// plain keeps ten days at 2 C and loses nothing.
var plain = crop.Storage{Method: "damp sand", BestC: 2, LifeDays: 10, Q10: 2.5, FloorC: 0}

// simple is a table for carrots wanted at a kg a day all year.
func simple(days int, kgADay float64, row crop.Storage, stores ...Store) Setting {
	return Setting{First: monday, Days: days, Northern: true, Vegetables: []string{"carrot"},
		Wants:  []Want{{ID: "w", Vegetable: "carrot", KgPerWeek: 7 * kgADay}},
		Stores: stores, Keeping: only(row)}
}

// carrots is a batch of carrots in the sand.
func carrots(id string, kg float64, stored cal.Date) Opening {
	return Opening{Batch: Batch{ID: id, Store: "sand", Crop: "carrot", Use: "table", Kg: kg, Stored: stored}, Vegetable: "carrot"}
}

// supply is a carrot planting from the table's first day plus late.
func supply(id string, late int) *Supply {
	return &Supply{Planting: id, Vegetable: "carrot", Crop: "carrot", Use: "table", First: monday + cal.Date(late)}
}

// run runs one future once.
func run(t testing.TB, in Setting, f Future) *Year {
	t.Helper()
	p, err := NewPantry(in)
	if err != nil {
		t.Fatal(err)
	}
	out := p.NewYear()
	if err := p.Run(p.NewScratch(), f, out); err != nil {
		t.Fatal(err)
	}
	return out
}

// same compares a course with what was reckoned by hand.
func same(t *testing.T, what string, got []float32, want ...float64) {
	t.Helper()
	if len(got) != len(want) {
		t.Fatalf("%s has %d days, want %d", what, len(got), len(want))
	}
	for d := range want {
		if math.Abs(float64(got[d])-want[d]) > 1e-5 {
			t.Errorf("%s = %.5g, want %.5g", what, got, want)
			return
		}
	}
}

func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 1e-6 {
		t.Errorf("%s = %.7g, want %.7g", what, got, want)
	}
}

// table reads a file of testdata, as maps by column.
func table(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []map[string]string
	for _, row := range rows[1:] {
		m := map[string]string{}
		for i, head := range rows[0] {
			m[head] = row[i]
		}
		out = append(out, m)
	}
	return out
}

func number(t *testing.T, row map[string]string, column string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(row[column], 64)
	if err != nil {
		t.Fatalf("%s of %v: %v", column, row, err)
	}
	return v
}
