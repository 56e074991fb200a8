package outlook_test

import (
	"encoding/json"
	"flag"
	"math"
	"os"
	"testing"

	"garner/internal/outlook"
)

var update = flag.Bool("update", false, "write the golden table anew")

const golden = "testdata/golden/table.json"

// The table is the same to 1e-9 on every machine. The golden file is our own
// past output, not a validation; make test runs this on a second architecture.
func TestTableIsTheSameOnEveryMachine(t *testing.T) {
	s := compute(t, setting(t, small(), 2), outlook.NewMemory()).Summarise(false)
	if *update {
		text, err := json.MarshalIndent(s, "", " ")
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(golden, append(text, '\n'), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	text, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	var want outlook.Summary
	if err := json.Unmarshal(text, &want); err != nil {
		t.Fatal(err)
	}
	for i, v := range s.Vegetables {
		w := want.Vegetables[i]
		for name, pair := range map[string][2][]float64{"want": {v.Want, w.Want}, "fresh": {v.Fresh, w.Fresh}, "stored": {v.Stored, w.Stored},
			"short": {v.Short, w.Short}, "over": {v.Over, w.Over}, "short p90": {v.ShortP90, w.ShortP90}, "gap": {v.GapChance, w.GapChance}} {
			for k := range pair[0] {
				if gap := math.Abs(pair[0][k] - pair[1][k]); gap > 1e-9*max(1, math.Abs(pair[1][k])) {
					t.Fatalf("%s %s week %d: %.12g, was %.12g; after a wanted change of the numbers run go test ./internal/outlook -update", v.Name, name, k, pair[0][k], pair[1][k])
				}
			}
		}
	}
}
