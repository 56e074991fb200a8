package browser_test

import "testing"

// faultyReading sends a temperature that is none.
func faultyReading(_ *testing.T, b *tab) {
	b.fill("#f-reading-tmin_c", "cold")
	b.follow("#read button.main")
}

// A gauge and a thermometer are read and a forecast is typed; one step back takes
// the forecast away again.
func TestTheWeatherIsRead(t *testing.T) {
	beside(t)
	for _, w := range ways {
		t.Run(w.name, func(t *testing.T) {
			beside(t)
			h := hand{openTab(t, serveSample(t), w.on, w.before...), w.keyboard}
			h.visit("/weather")
			h.says("Nothing is on record")
			h.enter("#f-reading-rain_mm", "12")
			h.enter("#f-reading-tmin_c", "-4")
			h.goOn("#read button.main")
			h.says("lowest −4")
			h.unfold("#forecast details")
			h.enter("#f-forecast-tmin_c-0", "-6")
			h.enter("#f-forecast-tmax_c-0", "1")
			h.goOn("#forecast details button.main")
			h.says("The day ahead brings −6")
			h.goOn(".said form button")
			h.says("No forecast is told")
			h.quiet()
		})
	}
}
