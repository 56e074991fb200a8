package calibrate

import (
	"testing"

	"garner/internal/crop"
)

// Every use of the book is grown, none quicker than its quickest sowing, and
// most come ready in most years: common practice, no source. The figures
// themselves are held against published ones on the scoreboard.
func TestEveryReferencePlantingIsGrown(t *testing.T) {
	book, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	harvests, err := Harvests(book)
	if err != nil {
		t.Fatal(err)
	}
	uses, often := 0, 0
	for _, c := range book.Crops() {
		for _, u := range c.Uses {
			if u.Feeds() {
				uses++
			}
		}
	}
	for _, h := range harvests {
		if h.Use.Pattern != crop.Perennial && h.Quick != never && h.Quick > h.Days {
			t.Errorf("%s %s: quickest %g d, reference %g d", h.Use.Crop, h.Use.Name, h.Quick, h.Days)
		}
		if 2*h.Ready > h.Years || h.Use.Pattern == crop.Perennial {
			often++
		}
	}
	if len(harvests) != uses || 10*often < 9*uses {
		t.Errorf("%d of %d uses grown, %d ready in most years", len(harvests), uses, often)
	}
}
