package browser_test

import "testing"

// A butt is told, a larger one tried; a reading is told at its bed and taken back.
func TestWaterThereIs(t *testing.T) {
	beside(t)
	for _, w := range ways {
		t.Run(w.name, func(t *testing.T) {
			beside(t)
			h := hand{openTab(t, serveSample(t), w.on, w.before...), w.keyboard}
			h.visit("/water/butt?source=tunnel-butt")
			h.says("Tanks at the shed")
			h.visit("/moisture_readings/new?bed=t1&date=2027-01-04")
			h.pick("#f-way", "finger", "A finger")
			h.pick("#f-felt", "dry", "Dry")
			h.goOn("form.row-form button.main")
			h.says("Felt dry")
			h.goOn(".said form button")
			h.says("Its moisture was never read")
			h.quiet()
		})
	}
}
