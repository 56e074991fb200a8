package browser_test

import "testing"

// aDryBed is a bed of the demo that is asked for.
const aDryBed = "#bed-t1"

// faultyWatering tells the watering of a bed with a word.
func faultyWatering(_ *testing.T, b *tab) {
	b.press(aDryBed + " details > summary")
	b.fill(aDryBed+" input[name=amount]", "plenty")
	b.follow(aDryBed + " details button.main")
}

// A bed is watered by cans, told on the page, and taken back, with and without script,
// by hand and by keys.
func TestABedIsWatered(t *testing.T) {
	beside(t)
	for _, w := range ways {
		t.Run(w.name, func(t *testing.T) {
			beside(t)
			h := hand{openTab(t, serveSample(t), w.on, w.before...), w.keyboard}
			h.visit("/water")
			h.unfold(aDryBed + " details")
			h.enter("#amount-t1", "2.5")
			h.goOn(aDryBed + " details button.main")
			h.says("Last watered")
			h.says("25 L")
			h.goOn(".said form button")
			if h.has(".said") && h.text(aDryBed+" .says") == "" {
				t.Error("the bed is gone")
			}
			h.quiet()
		})
	}
}

// The helper's note is printed on one sheet of either size, with room for a pencil.
func TestTheHelpersNoteIsPrinted(t *testing.T) {
	beside(t)
	b := openTab(t, lookAtSample(t), desk)
	for _, on := range papers {
		sheets, text := b.print("/water/away/note?from=2027-01-10&to=2027-01-24", on)
		if sheets != 1 {
			t.Errorf("the note takes %d sheets", sheets)
		}
		printed(t, text, "For whoever looks after our garden", "Whom to ask", "What you saw")
		notPrinted(t, text, "Back to the days away", "History")
	}
}
