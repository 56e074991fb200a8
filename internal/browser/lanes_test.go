package browser_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// What is moved on the ground of the demo: early potatoes in the tunnel's right
// bed, to the left one.
const (
	groundPath = "/ground?site=share"
	movedRing  = `.ring[data-planting="` + movable + `"]`
	itsBed     = "t3"
	otherBed   = "t1"
)

// ringSays is the day and the bed of the planting's ring.
const ringSays = `(r => r ? r.dataset.date + " " + r.dataset.bed + " " + r.dataset.area : "")(document.querySelector('` + movedRing + `'))`

// A bed is chosen on the plan, the plan's date moved and a sowing dragged with the
// pointer, kept, and taken back.
func TestGroundByPointer(t *testing.T) {
	beside(t)
	b := openTab(t, serveSample(t), desk)
	b.visit(groundPath)
	b.press(`.plan a[data-bed="` + itsBed + `"]`)
	b.wait("the bed is told", `document.querySelector(".chosen-bed h2")?.textContent === "Tunnel, right"`)
	b.wait("its lane is marked", `document.querySelector('[data-lane="`+itsBed+`"]').classList.contains("chosen")`)

	plan := b.plan()
	b.drag("#date-line .pen", 300, 0, func() {
		b.wait("the plan follows while the line is held", `document.querySelector(".plan").outerHTML !== `+quote(plan))
	})
	b.wait("the address tells the day", `new URL(location.href).searchParams.get("at") > "2027-03"`)

	was := eval[string](b, ringSays)
	b.drag(movedRing+" .handle", 60, 0, func() {
		b.wait("the figures answer while the ring is held", `!!document.querySelector(".try .ba .a, .try .sum")`)
		b.wait("the lane answers while the ring is held", ringSays+` !== `+quote(was))
	})
	b.wait("it is tried later", ringSays+` > `+quote(was))
	later := eval[string](b, ringSays)
	b.drag(movedRing+" .handle", 0, b.between(itsBed, otherBed), nil)
	b.wait("it is tried in the other bed", ringSays+`.split(" ")[1] === "`+otherBed+`"`)
	if got := eval[string](b, ringSays); strings.Fields(got)[0] != strings.Fields(later)[0] {
		t.Errorf("dragged to another bed, %s became %s", later, got)
	}
	b.follow(".try form button.main")
	b.wait("it is said what was kept", `!!document.querySelector(".said p")`)
	b.wait("it stays in the other bed", ringSays+`.split(" ")[1] === "`+otherBed+`" && !document.querySelector(".try")`)
	b.follow(".said form button")
	b.wait("it is where it was", ringSays+` === `+quote(was))
	b.quiet()
}

// The same by the keyboard: the bed, the plan's date, and the sowing in time, to
// another bed and larger.
func TestGroundByKeyboard(t *testing.T) {
	beside(t)
	b := openTab(t, lookAtSample(t), desk)
	b.visit(groundPath + "&bed=" + itsBed)
	b.tabTo("#date-line")
	b.do(arrowRight())
	b.wait("the plan is a day later", `document.getElementById("date-line")?.dataset.at === "2027-01-05" && document.activeElement.id === "date-line"`)
	was := eval[string](b, ringSays)
	b.tabTo(movedRing)
	b.do(arrowRight())
	b.wait("it is a day later", ringSays+` > `+quote(was))
	b.wait("the ring keeps the focus", `document.activeElement.matches('`+movedRing+`')`)
	b.do(chromedp.KeyEvent(kb.ArrowUp))
	b.wait("it is in the bed above", ringSays+`.split(" ")[1] === "t2"`)
	b.wait("the ring keeps the focus", `document.activeElement.matches('`+movedRing+`')`)
	b.keys("+")
	b.wait("it has more ground", `Number(`+ringSays+`.split(" ")[2]) > Number(`+quote(strings.Fields(was)[2])+`)`)
	b.wait("three changes are tried", `document.querySelectorAll(".try .changes li").length === 3`)
	b.press(".try .acts > a.btn")
	b.wait("it is where it was", ringSays+` === `+quote(was)+` && !document.querySelector(".try")`)
	b.quiet()
}

// Buttons and forms do the same, on a phone and without script.
func TestGroundWithoutScript(t *testing.T) {
	beside(t)
	for _, on := range screens {
		t.Run(on.name, func(t *testing.T) {
			beside(t)
			b := openTab(t, serveSample(t), on, withoutScript())
			b.visit(groundPath)
			b.follow("#day-later")
			b.wait("the plan is a week later", `document.getElementById("date-line").dataset.at === "2027-01-11"`)
			b.follow(`[data-lane="` + itsBed + `"] h3 a`)
			was := eval[string](b, ringSays)
			b.press("#change-" + movable + " summary")
			b.follow("#week_later-" + movable)
			b.wait("it is later", ringSays+` > `+quote(was))
			b.follow("#larger-" + movable)
			b.wait("it is larger", `document.querySelectorAll(".try .changes li").length === 2`)
			b.choose("#bed-"+movable, otherBed)
			b.follow("#change-" + movable + " form .acts button")
			b.wait("it is in the other bed", ringSays+`.split(" ")[1] === "`+otherBed+`"`)
			b.follow(".try form button.main")
			b.wait("it is said what was kept", `!!document.querySelector(".said p")`)
			b.quiet()
		})
	}
}

// On a phone the plan is as wide as the screen and the lanes are swept beneath
// the names of the beds.
func TestGroundOnAPhone(t *testing.T) {
	beside(t)
	b := openTab(t, lookAtSample(t), phone)
	b.visit("/ground")
	if w := eval[float64](b, `document.querySelector(".only-phone .plan").getBoundingClientRect().width`); w < 340 || w > 390 {
		t.Errorf("the plan is %.0f px wide", w)
	}
	left := `document.querySelector(".lane-row .name").getBoundingClientRect().left`
	was := eval[float64](b, left)
	eval[bool](b, `(e => { e.scrollLeft = 400; return true })(document.querySelector(".ground-page .bands"))`)
	if is := eval[float64](b, left); is > was || is < 0 {
		t.Errorf("swept, the names of the beds go from %.0f to %.0f px", was, is)
	}
	b.quiet()
}

// plan is the plan as it is drawn.
func (b *tab) plan() string {
	b.t.Helper()
	return eval[string](b, `document.querySelector(".plan").outerHTML`)
}

// between is how far one bed's lane lies below another's [px].
func (b *tab) between(from, to string) float64 {
	b.t.Helper()
	return eval[float64](b, fmt.Sprintf(`(y => y(%s) - y(%s))(id => document.querySelector('[data-lane="' + id + '"]').getBoundingClientRect().top)`, quote(to), quote(from)))
}

// drag presses on what a selector finds, moves by some pixels in steps, does what
// is to be seen while it is held, and lets go.
func (b *tab) drag(selector string, right, down float64, held func()) {
	b.t.Helper()
	at := b.middle(selector)
	b.do(chromedp.MouseEvent(input.DispatchMouseEventTypeMousePressed, at[0], at[1], chromedp.ButtonLeft, chromedp.ClickCount(1)))
	const steps = 6
	for i := 1; i <= steps; i++ {
		b.do(chromedp.MouseEvent(input.DispatchMouseEventTypeMouseMoved, at[0]+right*float64(i)/steps, at[1]+down*float64(i)/steps, chromedp.ButtonLeft))
	}
	if held != nil {
		held()
	}
	b.do(chromedp.MouseEvent(input.DispatchMouseEventTypeMouseReleased, at[0]+right, at[1]+down, chromedp.ButtonLeft, chromedp.ClickCount(1)))
	b.wait("the answer is there", `!document.querySelector("[aria-busy]")`)
}

// middle is where the middle of what a selector finds lies on the screen, brought
// into sight [px].
func (b *tab) middle(selector string) [2]float64 {
	b.t.Helper()
	b.wait("there is "+selector, "!!document.querySelector("+quote(selector)+")")
	return eval[[2]float64](b, `(e => {
		e.scrollIntoView({block: "center"});
		const r = e.getBoundingClientRect();
		return [r.left + r.width / 2, r.top + r.height / 2];
	})(document.querySelector(`+quote(selector)+`))`)
}

// timeDragging notes, for every move of the pointer, when the frame after its
// answer is on the page.
const timeDragging = `(() => {
	window.times = [];
	let moved = 0;
	document.addEventListener("pointermove", () => { moved = performance.now() }, true);
	const lane = () => document.querySelector('` + movedRing + `')?.closest("[data-part]");
	let last = lane(), sum = document.querySelector('[data-part="tried"]');
	new MutationObserver(() => {
		const now = lane(), is = document.querySelector('[data-part="tried"]');
		if (now === last || is === sum) return;
		[last, sum] = [now, is];
		const since = moved;
		requestAnimationFrame(() => setTimeout(() => times.push(performance.now() - since)));
	}).observe(document.querySelector("[data-fragment]"), {childList: true, subtree: true});
	return true;
})()`

// measureDragging drags a sowing day by day and measures from each move to the new
// lanes and figures on the screen.
func (b *tab) measureDragging() []figure {
	b.t.Helper()
	b.visit(groundPath)
	at := b.middle(movedRing + " .handle")
	eval[bool](b, timeDragging)
	b.do(chromedp.MouseEvent(input.DispatchMouseEventTypeMousePressed, at[0], at[1], chromedp.ButtonLeft, chromedp.ClickCount(1)))
	for i := range repeats() {
		b.do(chromedp.MouseEvent(input.DispatchMouseEventTypeMouseMoved, at[0]+float64(9*(i+1)), at[1], chromedp.ButtonLeft))
		b.wait("the move is answered", fmt.Sprintf("times.length > %d", i))
	}
	b.do(chromedp.MouseEvent(input.DispatchMouseEventTypeMouseReleased, at[0]+float64(9*repeats()), at[1], chromedp.ButtonLeft, chromedp.ClickCount(1)))
	times := eval[[]float64](b, "times")
	return []figure{{"a sowing dragged on the ground: early potatoes, from the move to the new lanes and figures", spread(times)}}
}
