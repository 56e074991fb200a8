package browser_test

import "testing"

// What the weather puts at risk, from the list to a rule and its flights, and a
// sighting told with a few taps.
func TestRiskIsReadAndASightingTold(t *testing.T) {
	beside(t)
	for _, w := range ways {
		if w.on.name != phone.name {
			continue
		}
		t.Run(w.name, func(t *testing.T) {
			beside(t)
			b := openTab(t, serveSample(t), w.on, w.before...)
			b.visit("/risk")
			b.says("Carrot fly")
			b.visit("/risk/carrot-fly")
			b.says("Flights over the sowings they hit")
			b.says("Plantings concerned")
			b.visit("/risk/sighting?problem=carrot-fly&bed=h4")
			b.choose("#f-stage", "flying")
			b.fill("#f-count", "3")
			b.follow(".row-form button.main")
			b.says("Seen in")
			b.visit("/risk/hours")
			b.quiet()
		})
	}
}
