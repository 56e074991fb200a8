package crop

import (
	"math"
	"testing"
)

// By hand: potatoes 0.3 by 0.7 m stand 4.76 to the square metre, which at 55 g a
// tuber is 0.262 kg; the common rule is 2.5 kg for 10 m2. Beans 24 to a metre of
// row, rows 0.5 m apart, three seeds to the gram: 48 seeds, 16 g.
func TestPlantingStock(t *testing.T) {
	for _, c := range []struct {
		use    Use
		method string
		want   float64
	}{
		{Use{InRowM: 0.3, BetweenRowM: 0.7, SetG: 55, Methods: []string{Set}}, "", 2.619},
		{Use{InRowM: 0.3, BetweenRowM: 0.7, SetG: 55, Methods: []string{Set, Plant}}, Plant, 0},
		{Use{BetweenRowM: 0.5, SowPerM: 24, SeedsPerGram: 3, DryMatter: 0.87, Methods: []string{Seed}}, Seed, 0.16},
		{Use{BetweenRowM: 0.25, SowPerM: 150, SeedsPerGram: 700, DryMatter: 0.12, Methods: []string{Seed}}, Seed, 0},
		{Use{SowPerM: 24, DryMatter: 0.87, Methods: []string{Seed}}, Seed, 0},
	} {
		if got := c.use.StockKg(c.method, 10); math.Abs(got-c.want) > 0.001 {
			t.Errorf("%+v by %q: %g kg for 10 m2, want %g", c.use, c.method, got, c.want)
		}
	}
}
