package desk

import (
	"fmt"
	"testing"
)

func TestPeek(t *testing.T) {
	h := sampleHolding(t)
	r, err := FreeGround(h, FreeOptions{})
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range r.Free {
		fmt.Printf("%s %s..%s %.2f at %.2f odds %.2f [%s %v] before %v next %v\n", f.Bed, f.From, f.Until, f.AreaM2, f.At, f.Odds, f.FromEarly, f.FromLate, f.Space.Before, f.Space.Next)
	}
	for _, w := range r.Wrong {
		fmt.Println(w.Bed, w.What, w.From, w.Until, w.OverM2, w.Odds, w.Plantings, w.Overlap.Overlap.Mend)
	}
}
