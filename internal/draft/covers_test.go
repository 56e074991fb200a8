package draft_test

import (
	"fmt"
	"testing"

	"garner/internal/draft"
	"garner/internal/place"
)

func TestProbe(t *testing.T) {
	h := small(t)
	h.Gear = []place.Gear{{ID: "f", Kind: "fleece", Pieces: 1, LengthM: 8, WidthM: 2}, {ID: "l", Kind: "film", Pieces: 1, LengthM: 8, WidthM: 3}}
	a := built(t, small(t))
	d := built(t, h)
	fmt.Println(len(a.Problem.Sowings), len(d.Problem.Sowings), len(d.Classes))
	for j, c := range d.Columns {
		if c.Under.Kind != "" {
			fmt.Println(d.Problem.Sowings[j].ID, c.Date, c.Clear, c.Odds, c.Under.Off)
		}
	}
	s := greedy(d.Problem, 80)
	rows, err := d.Lay(s.Units)
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range rows {
		fmt.Println(r.Planting.Bed, r.Planting.Crop, r.Planting.Use, r.Planting.Date, r.Planting.AreaM2, r.Under)
	}
	fmt.Println(d.Covers(rows))
	fmt.Println(greedy(a.Problem, 80).Objective(), s.Objective())
	_ = draft.Futures
}
