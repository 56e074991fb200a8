package browser_test

import (
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// The pages of a drafted year are held to what every page is. A household drafts one
// year at a time: both screens look at the same draft, first while it goes on.
func TestDraftedYear(t *testing.T) {
	beside(t)
	s, seen := serveSample(t), &looks{shown: map[string][]shownElement{}}
	tabs := map[string]*tab{}
	for _, on := range screens {
		tabs[on.name] = openTab(t, s, on)
	}
	for _, p := range []onePage{
		{name: "draft", path: "/draft", to: unfolded},
		{name: "faulty draft", path: "/draft", status: 422, to: faultyDraft},
		{name: "draft under way", path: "/draft", to: draftUnderWay},
		{name: "drafted year", path: "/draft", to: draftThere},
	} {
		for _, on := range screens {
			t.Run(p.name+" on "+on.name, func(t *testing.T) { tabs[on.name].look(t, p, seen) })
		}
	}
}

// faultyDraft asks for a search of no length.
func faultyDraft(t *testing.T, b *tab) {
	unfolded(t, b)
	b.fill("#f-seconds", "soon")
	b.loads(chromedp.KeyEvent("\r"))
	unfolded(t, b)
}

// draftUnderWay begins a draft that goes on until it is stopped, or finds it begun.
func draftUnderWay(t *testing.T, b *tab) {
	if b.has("#draft-bar") {
		return
	}
	unfolded(t, b)
	b.fill("#f-seconds", "600")
	b.loads(chromedp.KeyEvent("\r"))
	b.wait("a year is being drafted", `!!document.querySelector("#draft-bar")`)
}

// draftThere stops the draft if it is under way, and waits for what it came to, which the
// page shows by itself.
func draftThere(t *testing.T, b *tab) {
	b.t.Helper()
	if b.has("#draft-stop") {
		b.follow("#draft-stop")
	}
	for range 120 {
		if !b.has("#draft-bar") {
			b.wait("the year is there", `!!document.querySelector(".draft-bed")`)
			unfolded(t, b)
			return
		}
		time.Sleep(anotherLook)
	}
	b.t.Fatal("the drafted year is not there")
}
