package sun

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"
)

// row is one line of a file of published figures, by column.
type row map[string]string

func (r row) number(t *testing.T, column string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(r[column], 64)
	if err != nil {
		t.Fatalf("column %s: %v", column, err)
	}
	return v
}

func (r row) day(t *testing.T) int { t.Helper(); return int(r.number(t, "day")) }

// published reads a file of published figures: each says its source and how it
// was come by.
func published(t *testing.T, file string) []row {
	t.Helper()
	f, err := os.Open("testdata/" + file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	lines, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	rows := make([]row, 0, len(lines)-1)
	for _, line := range lines[1:] {
		r := row{}
		for i, column := range lines[0] {
			r[column] = line[i]
		}
		if r["mark"] != "seen" && r["mark"] != "computed" {
			t.Fatalf("%s: a row marked %q is no evidence", file, r["mark"])
		}
		rows = append(rows, r)
	}
	return rows
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if d := got - want; !(d <= tolerance && d >= -tolerance) {
		t.Errorf("%s: got %.5f, published %.5f, tolerance %g", what, got, want, tolerance)
	}
}
