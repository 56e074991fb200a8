package browser_test

import "testing"

// A night is told on the page of frost, with and without script, by hand and by keys, and
// the night as it stands is one link away.
func TestANightIsTold(t *testing.T) {
	beside(t)
	for _, w := range ways {
		t.Run(w.name, func(t *testing.T) {
			beside(t)
			h := hand{openTab(t, lookAtSample(t), w.on, w.before...), w.keyboard}
			h.visit("/frost")
			h.says("Frost and heat")
			h.says("Blossom of fruit")
			h.enter("#f-minimum", "-16")
			h.goOn(".frost-if button")
			h.says("beds are at risk")
			h.says("nothing is kept")
			h.goOn(".bar a")
			h.says("in the open (")
			h.quiet()
		})
	}
}
