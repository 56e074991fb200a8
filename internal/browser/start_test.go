package browser_test

import (
	"testing"

	"github.com/chromedp/chromedp"
)

// What a newcomer knows without looking anything up.
const (
	nearTown = "Hamburg"
	ground   = "11 beds 6 x 1.2, tunnel 6 x 4"
)

var notes = []string{
	"leeks bed 1, 42 left",
	"carrots early July, half bed 5",
	"potatoes bed 2 and 3, end of April",
	"kale bed 4, a row, midsummer",
}

// From an empty data directory to a first table, with the mouse or a finger.
func TestFirstRun(t *testing.T) {
	beside(t)
	for _, on := range screens {
		t.Run(on.name, func(t *testing.T) {
			beside(t)
			b := openTab(t, serveEmpty(t), on)
			b.visit("/")
			b.startsAt()
			b.checked(t)
			b.fill("#f-q", nearTown)
			b.press(`#places input[type="radio"]`)
			b.onward("#f-adults")
			b.checked(t)
			b.fill("#f-children", "2")
			b.onward("#f-beds")
			b.checked(t)
			b.fill("#f-beds", ground)
			b.note("#f-lines")
			b.onward(".read")
			b.understands()
			b.checked(t)
			b.onward(".rows .row")
			b.firstTable()
			b.visit("/start")
			if at := b.path(); at != "/" {
				t.Errorf("with a holding the first run leads to %s, not to its table", at)
			}
			b.quiet()
		})
	}
}

// The same by the keyboard alone.
func TestFirstRunByKeyboard(t *testing.T) {
	beside(t)
	b := openTab(t, serveEmpty(t), desk)
	b.visit("/")
	b.tabTo("#f-q")
	b.keys(nearTown)
	b.wait("places are offered", `!!document.querySelector('#places input[type="radio"]')`)
	b.tabTo(`#places input[type="radio"]`)
	b.keys(" ")
	b.onwardByKeys("#f-adults")
	b.tabTo("#f-children")
	b.retype("2")
	b.onwardByKeys("#f-beds")
	b.tabTo("#f-beds")
	b.retype(ground)
	b.tabTo("#f-lines")
	b.lines()
	b.onwardByKeys(".read")
	b.understands()
	b.onwardByKeys(".rows .row")
	b.firstTable()
	b.quiet()
}

// The same without script: places are looked up by a button.
func TestFirstRunWithoutScript(t *testing.T) {
	beside(t)
	for _, on := range screens {
		t.Run(on.name, func(t *testing.T) {
			beside(t)
			b := openTab(t, serveEmpty(t), on, withoutScript())
			b.visit("/")
			b.fill("#f-q", nearTown)
			b.follow(`.find-row button`)
			b.press(`#places input[type="radio"]`)
			b.onward("#f-adults")
			b.onward("#f-beds")
			b.fill("#f-beds", ground)
			b.note("#f-lines")
			b.onward(".read")
			b.understands()
			b.onward(".rows .row")
			b.firstTable()
			b.quiet()
		})
	}
}

// What cannot be used is told where it was typed, and nothing is lost.
func TestFirstRunAsksAgain(t *testing.T) {
	beside(t)
	b := openTab(t, serveEmpty(t), phone)
	b.visit("/")
	b.fill("#f-q", "Qqqxzzyw")
	b.follow(".start button.main")
	if !b.has(".errs") {
		t.Errorf("a place that is none is taken:\n%s", b.start())
	}
	b.wait("what is wrong has the focus", `document.activeElement.matches(".errs")`)
	if got := get(b, chromedp.Value(chromedp.ID("f-q"))); got != "Qqqxzzyw" {
		t.Errorf("what was typed is now %q", got)
	}
	b.checked(t)
	b.quiet("status of 422")
}

// startsAt waits for the first step, and for the way past it.
func (b *tab) startsAt() {
	b.t.Helper()
	b.wait("the first run begins", `!!document.querySelector("#f-q")`)
	if !b.has(`form[action="/start/sample"] button`) {
		b.t.Error("the demo household is not offered")
	}
}

// onward goes to the next step, which has what a selector finds.
func (b *tab) onward(next string) {
	b.t.Helper()
	b.follow(".start .acts button.main")
	b.wait("the next step is there", "!!document.querySelector("+quote(next)+")")
}

func (b *tab) onwardByKeys(next string) {
	b.t.Helper()
	b.tabTo(".start .acts button.main")
	b.loads(enter())
	b.wait("the next step is there", "!!document.querySelector("+quote(next)+")")
}

// note types the lines of the notebook.
func (b *tab) note(field string) {
	b.t.Helper()
	b.press(field)
	b.lines()
}

func (b *tab) lines() {
	b.t.Helper()
	for i, line := range notes {
		if i > 0 {
			b.do(enter())
		}
		b.keys(line)
	}
}

// understands holds each line to a planting that was understood.
func (b *tab) understands() {
	b.t.Helper()
	if n := eval[int](b, `document.querySelectorAll(".read li.ok .understood").length`); n != len(notes) {
		b.t.Errorf("%d of %d lines were understood:\n%s", n, len(notes), b.text(".read"))
	}
}

// firstTable is a table with rows and drawings, and the plantings told.
func (b *tab) firstTable() {
	b.t.Helper()
	if n := eval[int](b, `document.querySelectorAll(".rows .row .rib svg path").length`); n < 20 {
		b.t.Errorf("the first table has only %d strokes", n)
	}
	if n := eval[int](b, `document.querySelectorAll(".rows .row").length`); n < 8 {
		b.t.Errorf("the first table has only %d rows", n)
	}
	b.visit("/plantings")
	for _, name := range []string{"leek", "carrot", "potato", "kale"} {
		if !eval[bool](b, `document.querySelector("main").textContent.toLowerCase().includes(`+quote(name)+`)`) {
			b.t.Errorf("the plantings have no %s", name)
		}
	}
}
