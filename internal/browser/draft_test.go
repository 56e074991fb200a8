package browser_test

import (
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// faultyDraft asks for a search of no length.
func faultyDraft(t *testing.T, b *tab) {
	unfolded(t, b)
	b.fill("#f-seconds", "soon")
	b.loads(chromedp.KeyEvent("\r")) // the long unfolded form still moves under a pointer
	unfolded(t, b)
}

// draftUnderWay begins a draft that goes on until it is stopped.
func draftUnderWay(t *testing.T, b *tab) {
	unfolded(t, b)
	b.fill("#f-seconds", "600")
	b.loads(chromedp.KeyEvent("\r")) // the long unfolded form still moves under a pointer
	b.wait("a year is being drafted", `!!document.querySelector("#draft-bar")`)
}

// draftThere stops the draft under way and waits for what it came to, which the page
// shows by itself.
func draftThere(t *testing.T, b *tab) {
	b.t.Helper()
	b.follow("#draft-stop")
	for range 120 {
		if !b.has("#draft-bar") {
			b.wait("the year is there", `!!document.querySelector(".draft-bed")`)
			unfolded(t, b)
			return
		}
		time.Sleep(patience / 40)
	}
	b.t.Fatal("the drafted year is not there")
}
