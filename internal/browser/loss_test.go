package browser_test

import (
	"strings"
	"testing"
)

// Slugs take half a row: told on the phone in a few taps, with what was picked
// into the freezer and plants kept; the hole at the table is shown, and all of it
// is taken back in one.
func TestALossIsToldOnThePhone(t *testing.T) {
	beside(t)
	for _, w := range ways {
		if w.on.name != phone.name {
			continue
		}
		t.Run(w.name, func(t *testing.T) {
			beside(t)
			b := openTab(t, serveSample(t), w.on, w.before...)
			b.visit("/planting/kal-26")
			b.follow(`a[href="/planting/kal-26/failing"]`)
			b.press(`input[name="share"][value="0.5"]`)
			b.press(`input[name="why"][value="slugs"]`)
			b.fill("#f-kg", "1.5")
			b.choose("#f-store", "freezer")
			b.fill("#f-plants_kept", "2")
			b.follow(".row-form button.main")
			if !strings.HasPrefix(b.path(), "/planting/kal-26/hole") {
				t.Fatalf("it leads to %s", b.path())
			}
			b.says("What this takes from the table")
			b.says("Kale")
			b.says("1.8")
			if w.before == nil { // the checker is a script
				b.checked(t)
			}
			b.visit("/planting/kal-26")
			b.says("was lost on")
			b.visit("/history")
			b.says("as failing")
			b.quiet()
		})
	}
}
