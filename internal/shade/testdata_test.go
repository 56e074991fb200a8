package shade

import (
	"encoding/csv"
	"os"
	"regexp"
	"strconv"
	"testing"
)

// row is one line of a file of published figures, by column.
type row map[string]string

func number(t testing.TB, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// published reads a file of figures that were read or worked out elsewhere.
func published(t testing.TB, file string) []row {
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
	var rows []row
	for _, line := range lines[1:] {
		r := row{}
		for i, column := range lines[0] {
			r[column] = line[i]
		}
		if r["source"] == "" || r["mark"] == "" {
			t.Fatalf("%s: a row without source or mark", file)
		}
		rows = append(rows, r)
	}
	return rows
}

var figure = regexp.MustCompile(`-?[0-9]+(\.[0-9]+)?`)

// figures are the numbers in an example's inputs, in their order.
func figures(t testing.TB, inputs string) (out []float64) {
	for _, text := range figure.FindAllString(inputs, -1) {
		out = append(out, number(t, text))
	}
	return out
}
