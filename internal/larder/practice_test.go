package larder

import (
	"testing"

	"garner/internal/cal"
	"garner/internal/crop"
)

// What gardeners reckon with, from common practice without a source, against the
// lives of the crop book in stores of the told temperatures. The column met holds
// what comes out; a miss stands there as a miss.
func TestHomePracticeAsItStands(t *testing.T) {
	book, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range table(t, "home_practice.csv") {
		c, known := book.Crop(row["crop"])
		if !known {
			t.Fatalf("no crop %s", row["crop"])
		}
		u, err := c.Use(row["use"])
		if err != nil {
			t.Fatal(err)
		}
		last := keepsUntil(t, u, &Store{Method: row["method"], WinterC: number(t, row, "winter_c"), SummerC: number(t, row, "summer_c")}, day(t, row["stored"]))
		met := "no"
		if last >= day(t, row["from"]) && last <= day(t, row["to"]) {
			met = "yes"
		}
		t.Logf("%s: until %s, %s", row["what"], last, met)
		if met != row["met"] {
			t.Errorf("%s: until %s, wanted from %s to %s: met %s, the table says %q", row["what"], last, row["from"], row["to"], met, row["met"])
		}
	}
}

// keepsUntil is the last day on which what was stored on a day is good.
func keepsUntil(t *testing.T, u *crop.Use, store *Store, stored cal.Date) cal.Date {
	t.Helper()
	for _, row := range u.Storage {
		if row.Method != store.Method {
			continue
		}
		worn, at := 0.0, stored
		for worn < 1-wearSlack {
			at++
			worn += 1 / LifeDays(row, store.TemperatureC(at, true))
		}
		return at
	}
	t.Fatalf("%s of %s does not keep by %s", u.Name, u.Crop, store.Method)
	return cal.None
}

func day(t *testing.T, cell string) cal.Date {
	t.Helper()
	d, err := cal.Parse(cell)
	if err != nil {
		t.Fatal(err)
	}
	return d
}
