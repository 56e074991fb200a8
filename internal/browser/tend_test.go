package browser_test

import "testing"

// unfolded opens all that is folded on a page.
func unfolded(_ *testing.T, b *tab) {
	eval[bool](b, `(document.querySelectorAll("details").forEach(d => { d.open = true }), true)`)
}

// faultySoil sends an amount that is none.
func faultySoil(_ *testing.T, b *tab) {
	b.fill("#f-soil-value", "plenty")
	b.follow(`button[value="composted"]`)
}

// Compost is recorded, a film taken off for a while, a disease recorded and the
// bed told to keep its crops; one step back brings that back.
func TestABedIsTended(t *testing.T) {
	beside(t)
	for _, w := range ways {
		t.Run(w.name, func(t *testing.T) {
			beside(t)
			h := hand{openTab(t, serveSample(t), w.on, w.before...), w.keyboard}
			h.visit("/beds/h1")
			h.enter("#f-soil-value", "3")
			h.goOn(`button[value="composted"]`)
			h.says("270 L")
			h.unfold("#covers li details")
			h.day("#f-off-h1-low-off", "2027-04-04", "04042027")
			h.day("#f-off-h1-low-on", "2027-05-05", "05052027")
			h.goOn("#covers li details button")
			h.says("off 4 April 2027")
			h.says("on 5 May 2027, off 10 May 2027")
			h.unfold("#rotation details")
			h.pick("#f-disease-problem", "white-rot", "White rot")
			h.goOn("#rotation details button")
			h.says("White rot was seen here in 2027")
			h.goOn("#rotation form button")
			h.says("This bed keeps its crops")
			h.goOn(".said form button")
			h.says("It asks for 20 years without its hosts")
			h.quiet()
		})
	}
}

// unfold opens what is folded.
func (h hand) unfold(details string) {
	h.t.Helper()
	if h.keyboard {
		h.tabTo(details + " > summary")
		h.do(enter())
		return
	}
	h.press(details + " > summary")
}
