package browser_test

import (
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// adviceThere waits for a ranking, or for leaving and clearing.
func adviceThere(_ *testing.T, b *tab) {
	b.t.Helper()
	for range 60 {
		if !b.has(".stale-note") {
			return
		}
		time.Sleep(anotherLook)
		if b.has("[data-stale] .stale-note + p a") && !b.has("[data-fragment][aria-busy]") {
			b.loads(chromedp.Navigate(b.server.address + b.path()))
		}
	}
	b.t.Fatal("the advice is not there")
}

// From a bed to what could follow, sown with one tap and undone, with script and
// without.
func TestWhatNextIsSownAndUndone(t *testing.T) {
	beside(t)
	for _, w := range []way{{name: "mouse", on: desk}, {name: "no script", on: phone, before: []chromedp.Action[chromedp.Void]{withoutScript()}}} {
		t.Run(w.name, func(t *testing.T) {
			beside(t)
			b := openTab(t, serveSample(t), w.on, w.before...)
			b.visit("/beds/s1")
			b.follow(`a[href="/beds/s1/next"]`)
			b.visit("/beds/s1/next?from=2027-03-01&until=2027-08-20&area=2")
			adviceThere(t, b)
			name := b.text(".next-list h2")
			b.follow(".next-list button")
			b.says("Undo")
			if !strings.Contains(strings.ToLower(b.text("main")), strings.ToLower(name)) {
				t.Errorf("%s is not on the bed", name)
			}
			b.follow(".said button")
			b.quiet()
		})
	}
}
