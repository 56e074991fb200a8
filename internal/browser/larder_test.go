package browser_test

import "testing"

// faultyCount counts a batch with a word.
func faultyCount(_ *testing.T, b *tab) {
	b.press(".batches details > summary")
	b.fill(".batches details input[name=kg]", "plenty")
	b.follow(".batches details button.main")
}

// A batch is counted, then found to be gone, and one step back brings it back, with
// and without script, by hand and by keys.
func TestABatchIsCounted(t *testing.T) {
	beside(t)
	for _, w := range ways {
		t.Run(w.name, func(t *testing.T) {
			beside(t)
			h := hand{openTab(t, serveSample(t), w.on, w.before...), w.keyboard}
			h.visit("/larder")
			h.says("Sacks in the cellar, dark side, 58 kg")
			potatoes := `.batches details:has(#count-b-potato)`
			h.unfold(potatoes)
			h.enter("#count-b-potato", "41.5")
			h.goOn(potatoes + " button.main")
			h.says("Sacks in the cellar, dark side, 41.5 kg")
			h.says("Counted")
			h.unfold(potatoes)
			h.goOn(potatoes + ` button[name="left"]`)
			if h.has("#count-b-potato") {
				t.Error("a batch of which nothing is left is still told")
			}
			h.goOn(".said form button")
			h.says("Sacks in the cellar, dark side, 41.5 kg")
			h.quiet()
		})
	}
}

// The list to give away is printed by itself, and the larder without its forms.
func TestTheLarderIsPrinted(t *testing.T) {
	beside(t)
	b := openTab(t, lookAtSample(t), desk)
	sheets, text := b.print("/larder/give", papers[0])
	if sheets != 1 {
		t.Errorf("the list takes %d sheets", sheets)
	}
	printed(t, text, "To give away", "Cabbages")
	sheets, text = b.print("/larder", papers[0])
	if sheets > 5 {
		t.Errorf("the larder takes %d sheets", sheets)
	}
	printed(t, text, "The larder", "Sacks in the cellar", "To mind")
	notPrinted(t, text, "None is left", "Places and room")
}
