package browser_test

import (
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// The pages of a drafted year are held to what every page is, each screen with a
// server of its own: a household drafts one year at a time.
func TestDraftedYear(t *testing.T) {
	beside(t)
	for _, on := range screens {
		t.Run(on.name, func(t *testing.T) {
			b := openTab(t, serveSample(t), on)
			for _, p := range []onePage{
				{name: "draft", path: "/draft", to: unfolded},
				{name: "faulty draft", path: "/draft", status: 422, to: faultyDraft},
				{name: "draft under way", path: "/draft", to: draftUnderWay},
				{name: "drafted year", path: "/draft", to: draftThere},
			} {
				t.Run(p.name, func(t *testing.T) { b.look(t, p) })
			}
		})
	}
}

// faultyDraft asks for a search of no length.
func faultyDraft(t *testing.T, b *tab) {
	unfolded(t, b)
	b.fill("#f-seconds", "soon")
	b.loads(chromedp.KeyEvent("\r"))
	unfolded(t, b)
}

// draftUnderWay begins a draft that goes on until it is stopped.
func draftUnderWay(t *testing.T, b *tab) {
	unfolded(t, b)
	b.fill("#f-seconds", "600")
	b.loads(chromedp.KeyEvent("\r"))
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
