package browser_test

import (
	"strings"
	"testing"
)

// What the demo household can still move on its first day.
const (
	vegetable = "potato"
	movable   = "pot-27t" // early potatoes in the tunnel
)

// From the table to a vegetable, a planting tried later, kept, and taken back.
func TestTryAndKeep(t *testing.T) {
	beside(t)
	for _, on := range screens {
		t.Run(on.name, func(t *testing.T) {
			beside(t)
			b := openTab(t, serveSample(t), on)
			b.visit("/")
			b.follow(`.row[data-vegetable="` + vegetable + `"] h2 a, .row[data-vegetable="` + vegetable + `"] h3 a`)
			was := b.laneSays()
			b.press("#later-" + movable)
			b.tried(was)
			b.follow(".try form button.main")
			b.keptAndUndone(was)
			b.quiet()
		})
	}
}

// The same by the keyboard alone: every step is reached with Tab and done with
// Enter, and the focus stays where it was while the figures change.
func TestTryByKeyboard(t *testing.T) {
	beside(t)
	b := openTab(t, serveSample(t), desk)
	b.visit("/")
	b.tabTo(`a[href="/vegetable/` + vegetable + `"]`)
	b.loads(enter())
	was := b.laneSays()
	b.tabTo("#later-" + movable)
	b.do(enter())
	b.tried(was)
	if !eval[bool](b, `document.activeElement.id === "later-`+movable+`"`) {
		t.Errorf("after trying, the focus is on %s", eval[string](b, "document.activeElement.outerHTML.slice(0, 120)"))
	}
	b.tabTo(".try form button.main")
	b.loads(enter())
	b.tabTo(".said form button")
	b.loads(enter())
	b.wait("the planting is where it was", b.laneIs(was))
	b.quiet()
}

// The ring upon a planting's lane moves with the arrow keys.
func TestMoveTheRing(t *testing.T) {
	beside(t)
	b := openTab(t, lookAtSample(t), desk)
	b.visit("/vegetable/" + vegetable)
	was := b.laneSays()
	b.tabTo(`.ring[data-planting="` + movable + `"]`)
	for range 7 {
		b.do(arrowRight())
	}
	b.tried(was)
	b.quiet()
}

// Without script the same buttons are links and the same forms post.
func TestTryWithoutScript(t *testing.T) {
	beside(t)
	for _, on := range screens {
		t.Run(on.name, func(t *testing.T) {
			beside(t)
			b := openTab(t, serveSample(t), on, withoutScript())
			b.visit("/")
			b.follow(`a[href="/vegetable/` + vegetable + `"]`)
			was := b.laneSays()
			b.follow("#later-" + movable)
			b.tried(was)
			b.follow(".try form button.main")
			b.keptAndUndone(was)
			b.quiet()
		})
	}
}

// What is tried has an address: it can be sent, found again by going back, and
// put back by a link.
func TestTriedHasAnAddress(t *testing.T) {
	beside(t)
	b := openTab(t, lookAtSample(t), desk)
	b.visit("/vegetable/" + vegetable)
	was := b.laneSays()
	b.press("#later-" + movable)
	b.tried(was)
	if !strings.Contains(b.path(), "try=") {
		t.Errorf("a change is tried at %s, which does not say so", b.path())
	}
	b.visit(b.path())
	b.tried(was)
	b.press(`.try .acts > a.btn`)
	b.wait("nothing is tried", `!document.querySelector(".try")`)
	b.wait("the planting is where it was", b.laneIs(was))
	b.quiet()
}

// laneSays is when the planting is meant to be, as its lane says.
func (b *tab) laneSays() string {
	b.t.Helper()
	return b.text(laneNote)
}

const laneNote = `[data-part="lane-` + movable + `"] .note`

// laneIs asks for what the lane said before.
func (b *tab) laneIs(was string) string {
	return `(document.querySelector(` + quote(laneNote) + `)?.textContent ?? "").replace(/\s+/g, " ").trim() === ` + quote(was)
}

// tried waits for a change to be shown: before and after side by side, what it
// does in words, and the lane at its new day.
func (b *tab) tried(was string) {
	b.t.Helper()
	b.wait("a change is shown", `!!document.querySelector(".try table.ba tbody tr")`)
	b.wait("the lane has moved", "!("+b.laneIs(was)+")")
	if got := b.text(".try .changes"); got == "" {
		b.t.Error("what is tried is not said")
	}
	if n := eval[int](b, `document.querySelectorAll(".try table.ba tbody tr").length`); n < 2 {
		b.t.Errorf("before and after have %d lines, under 2", n)
	}
	if n := eval[int](b, `document.querySelectorAll('[data-part="stack"] svg').length`); n != 2 {
		b.t.Errorf("%d drawings stand one above another, not before and after", n)
	}
}

// keptAndUndone goes on from a change just kept: it is said, is in the history,
// and goes back from there.
func (b *tab) keptAndUndone(was string) {
	b.t.Helper()
	b.wait("it is said what was kept", `!!document.querySelector(".said p")`)
	b.follow(`nav.pages a[href="/history"]`)
	if !b.has(".entries li .what") {
		b.t.Fatalf("the history has no entry:\n%s", b.start())
	}
	b.follow(".entries li:not(.taken) form button")
	b.wait("the entry is marked as taken back", `!!document.querySelector(".entries li.taken")`)
	b.visit("/vegetable/" + vegetable)
	b.wait("the planting is where it was", b.laneIs(was))
}
