package desk

import "testing"

// The group a crop rotates with (common practice, no source): annuals with their
// family, what stands for years outside, an annual of a family of perennials
// anywhere.
func TestCropsTellWhatTheyRotateWith(t *testing.T) {
	b, err := book()
	if err != nil {
		t.Fatal(err)
	}
	for id, want := range map[string]string{"kale": "brassicas", "pea": "legumes", "leek": "onions", "carrot": "roots", "tomato": "potatoes",
		"lettuce": "anywhere", "rhubarb": "permanent", "perennial-kale": "permanent", "buckwheat": "anywhere"} {
		c, u, err := useOf(b, id, "")
		if err != nil {
			t.Fatal(err)
		}
		if got := rotationOf(c, u); got != want {
			t.Errorf("%s rotates with %s, want %s", id, got, want)
		}
	}
}
