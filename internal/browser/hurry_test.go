package browser_test

import (
	"fmt"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// nothingOnItsWay holds when every change of a drawing has been answered.
const nothingOnItsWay = `!document.querySelector("[data-draw][aria-busy]")`

// drawing opens the drawing of the demo with a bed chosen, and tells its scale
// [px/m].
func (b *tab) drawing(bed string) (perM float64) {
	b.t.Helper()
	b.visit("/ground/draw?pick=beds/" + bed)
	b.wait("rings are drawn", `!!document.querySelector(".site-rings .ring")`)
	return eval[float64](b, `(s => s.getScreenCTM().a * s.dataset.scale)(document.querySelector("svg.site"))`)
}

// keptAt opens the drawing anew and holds the bed to where it ought to lie.
func (b *tab) keptAt(bed string, x, y float64) {
	b.t.Helper()
	b.drawing(bed)
	if isX, isY := b.figure("x"), b.figure("y"); isX != x || isY != y {
		b.t.Errorf("it is kept at %v, %v, want %v, %v", isX, isY, x, y)
	}
}

// A quick second change does not meet the first on its way.
func TestDrawQuickly(t *testing.T) {
	beside(t)
	b := openTab(t, serveSample(t), desk)
	perM := b.drawing("h3")
	x, y := b.inSight("a.thing.chosen .shape")
	b.dragged(x, y, x+0.5*perM, y)
	b.dragged(x+0.5*perM, y, x+0.5*perM, y-0.3*perM)
	b.dragged(x+0.5*perM, y-0.3*perM, x, y-0.3*perM)
	b.settled("all three were kept", "y_m", "11.7")
	b.settled("all three were kept", "x_m", "4.5")
	b.keptAt("h3", 4.5, 11.7)
	b.quiet()
}

// A bed that is held while the answer to an earlier change comes goes on from
// where it lies.
func TestDrawHeldOverAnAnswer(t *testing.T) {
	beside(t)
	b := openTab(t, serveSample(t), desk)
	perM := b.drawing("h3")
	x, y := b.inSight("a.thing.chosen .shape")
	b.dragged(x, y, x+0.5*perM, y)
	x += 0.5 * perM
	b.do(b.pointer(0, false, x, y))
	b.wait("the first is answered", nothingOnItsWay)
	b.do(b.pointer(1, false, x, y-0.1*perM), b.pointer(2, false, x, y-0.3*perM), b.pointer(3, true, x, y-0.3*perM))
	b.settled("the second was kept", "y_m", "11.7")
	b.keptAt("h3", 5, 11.7)
	b.quiet()
}

// A button pressed twice before there is an answer does it twice: a step, and the
// way back.
func TestDrawPressedTwice(t *testing.T) {
	beside(t)
	b := openTab(t, serveSample(t), desk)
	b.drawing("h3")
	twice := func(selector string) {
		t.Helper()
		eval[bool](b, `(press => { press(); setTimeout(press); return true })(() => document.querySelector(`+quote(selector)+`).click())`)
	}
	twice(`.draw-chosen button[value="right"]`)
	b.settled("it went two steps", "x_m", "4.7")
	twice("#draw-undo")
	b.settled("both are taken back", "x_m", "4.5")
	b.keptAt("h3", 4.5, 11.4)
	b.quiet()
}

// What was moved by keys is kept when the page is left at once, to remove
// something or for good.
func TestDrawLeftAtOnce(t *testing.T) {
	beside(t)
	b := openTab(t, serveSample(t), desk)
	b.drawing("h3")
	eval[bool](b, `(document.querySelector("a.thing.chosen").focus(), true)`)
	b.do(chromedp.KeyEvent(kb.ArrowUp))
	b.loads(chromedp.KeyEvent(kb.Delete))
	b.says("Home 3")
	b.keptAt("h3", 4.5, 11.5)
	eval[bool](b, `(document.querySelector("a.thing.chosen").focus(), true)`)
	b.do(chromedp.KeyEvent(kb.ArrowUp))
	b.visit("/gear")
	for range 20 { // it may come after the first look
		if b.drawing("h3"); b.figure("y") == 11.6 {
			break
		}
	}
	b.keptAt("h3", 4.5, 11.6)
	b.quiet("Autofocus")
}

// A sowing that is let go of by Escape before the first answer is there stands
// where it was.
func TestGroundEscapedAtOnce(t *testing.T) {
	beside(t)
	b := openTab(t, lookAtSample(t), desk)
	b.visit(groundPath)
	at := b.middle(movedRing + " .handle")
	eval[bool](b, `(document.addEventListener("pointerdown", e => { window.pressed = e.pointerId }, true), true)`)
	b.do(b.pointer(0, false, at[0], at[1]))
	eval[bool](b, fmt.Sprintf(`(e => {
		e.dispatchEvent(new PointerEvent("pointermove", {pointerId: window.pressed, clientX: %v, clientY: %v, bubbles: true}));
		e.dispatchEvent(new KeyboardEvent("keydown", {key: "Escape", bubbles: true}));
		return true;
	})(document.querySelector('%s'))`, at[0]+80, at[1], movedRing))
	b.wait("the answer is there", `!document.querySelector("[aria-busy]")`)
	if left := eval[string](b, `(r => (r.getAttribute("transform") ?? "") + r.classList.contains("moving"))(document.querySelector('`+movedRing+`'))`); left != "false" {
		t.Errorf("the ring is left at %s", left)
	}
	if now := b.middle(movedRing + " .handle"); now != at {
		t.Errorf("the ring is at %v, was at %v", now, at)
	}
	b.do(b.pointer(2, true, at[0]+80, at[1]))
	b.quiet()
}
