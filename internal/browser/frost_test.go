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

// The stage of the blossom that is seen is told on a phone and at a desk, by hand and by
// keys, with and without script: the page tells it from then on, and a step back takes it
// out again. The page stays readable to all and its buttons large enough.
func TestBlossomIsTold(t *testing.T) {
	beside(t)
	for _, w := range ways {
		t.Run(w.name, func(t *testing.T) {
			beside(t)
			h := hand{openTab(t, serveSample(t), w.on, w.before...), w.keyboard}
			h.visit("/frost")
			h.pick("#f-stage-pear", "full_bloom", "full")
			h.goOn("#blossom button.main")
			h.says("As you say: full bloom")
			h.inside(t)
			h.reachable(t)
			if len(w.before) == 0 {
				h.loadAxe()
				h.accessible(t, wholeRun)
			}
			h.goOn(".said form button")
			h.wait("the stage is taken back", `!document.body.textContent.includes("As you say: full bloom")`)
			h.quiet()
		})
	}
}
