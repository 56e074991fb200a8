package browser_test

import (
	"context"
	"fmt"
	"math"
	"strconv"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// faultyOnDrawing sends a bed off the plan by the form beside it.
func faultyOnDrawing(_ *testing.T, b *tab) {
	b.fill("#f-x_m", "400")
	b.press(".draw-chosen button.main")
	b.wait("what is wrong is told", `!!document.querySelector(".draw-chosen .err")`)
}

// inSight is where the middle of what a selector finds is on the screen.
func (b *tab) inSight(selector string) (x, y float64) {
	b.t.Helper()
	b.wait("there is "+selector, "!!document.querySelector("+quote(selector)+")")
	at := eval[[]float64](b, `(() => { const e = document.querySelector(`+quote(selector)+`); e.scrollIntoView({block: "center", inline: "center"});
		const r = e.getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2] })()`)
	return at[0], at[1]
}

// dragged presses at one place, moves to another in steps and lets go there.
func (b *tab) dragged(x, y, toX, toY float64) {
	b.t.Helper()
	const steps = 6
	for i := 0; i <= steps+1; i++ {
		share := math.Min(1, float64(i)/steps)
		b.do(b.pointer(i, i == steps+1, x+share*(toX-x), y+share*(toY-y)))
	}
}

// pointer is one event of a drag: by a finger on a screen one touches.
func (b *tab) pointer(step int, last bool, x, y float64) chromedp.Action[chromedp.Void] {
	return chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		if b.screen.touch {
			kind, points := input.DispatchTouchEventTypeTouchMove, []*input.TouchPoint{{X: x, Y: y}}
			switch {
			case step == 0:
				kind = input.DispatchTouchEventTypeTouchStart
			case last:
				kind, points = input.DispatchTouchEventTypeTouchEnd, []*input.TouchPoint{}
			}
			_, err := cdp.Call(ctx, t, input.DispatchTouchEvent, input.DispatchTouchEventParams{Type: kind, TouchPoints: points})
			return err
		}
		kind := input.DispatchMouseEventTypeMouseMoved
		switch {
		case step == 0:
			kind = input.DispatchMouseEventTypeMousePressed
		case last:
			kind = input.DispatchMouseEventTypeMouseReleased
		}
		_, err := cdp.Call(ctx, t, input.DispatchMouseEvent, input.DispatchMouseEventParams{Type: kind, X: x, Y: y, Button: input.MouseButtonLeft, Buttons: 1, ClickCount: 1})
		return err
	})
}

// figure is a number of the thing that is chosen, as the page has it.
func (b *tab) figure(name string) float64 {
	b.t.Helper()
	text := eval[string](b, `document.querySelector("a.thing.chosen")?.getAttribute("data-`+name+`") ?? ""`)
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		b.t.Fatalf("the %s of what is chosen is %q", name, text)
	}
	return v
}

// settled waits until what was done has come back from the server.
func (b *tab) settled(what, field, value string) {
	b.t.Helper()
	b.wait(what, fmt.Sprintf(`document.querySelector(".draw-chosen [name=%s]")?.value === %s && !document.querySelector("[data-draw][aria-busy]")`, field, quote(value)))
}

// A bed is added, dragged, made longer by its ring and turned by a key; each is
// one step back, and steps can be done again. With a mouse and with a finger.
func TestDrawABed(t *testing.T) {
	beside(t)
	for _, on := range screens {
		t.Run(on.name, func(t *testing.T) {
			beside(t)
			b := openTab(t, serveSample(t), on)
			b.visit("/ground/draw?site=share")
			b.press(`a.thing[data-thing="beds/s1"]`)
			b.wait("what is pressed is chosen", `document.querySelector(".draw-chosen h2")?.textContent === "Row 1"`)
			b.fill("#draw-name", "New bed")
			b.press(".draw-add button")
			b.wait("it is chosen", `document.querySelector(".draw-chosen h2")?.textContent === "New bed"`)
			b.press(`.draw-chosen button[value="narrower"]`)
			b.settled("a button makes it narrower", "width_m", "1.1")
			b.dragsTheBed()
			b.turnsTheBed()
			b.stepsBack()
			b.quiet()
		})
	}
}

// dragsTheBed moves the chosen bed by two metres and makes it a metre longer.
func (b *tab) dragsTheBed() {
	b.t.Helper()
	perM := eval[float64](b, `(s => s.getScreenCTM().a * s.dataset.scale)(document.querySelector("svg.site"))`)
	wasX, wasY := b.figure("x"), b.figure("y")
	x, y := b.inSight("a.thing.chosen .shape")
	b.dragged(x, y, x-1*perM, y-2*perM)
	b.settled("it was moved", "x_m", decimals(math.Round((wasX-1)*20)/20))
	if got := b.figure("y"); math.Abs(got-wasY-2) > 0.06 {
		b.t.Errorf("dragged up by 2 m it lies %v m higher", got-wasY)
	}
	was := b.figure("length")
	x, y = b.inSight(`.site-rings [data-ring="length"] .reach`)
	b.dragged(x, y, x+1*perM, y)
	b.settled("it is longer", "length_m", decimals(was+1))
	size := eval[[]float64](b, `(r => [r.width, r.height])(document.querySelector(".site-rings .reach").getBoundingClientRect())`)
	if least := map[bool]float64{true: thumb, false: pointer}[b.screen.touch]; size[0] < least-0.5 || size[1] < least-0.5 {
		b.t.Errorf("a ring is hit within %v px", size)
	}
}

func decimals(v float64) string { return strconv.FormatFloat(math.Round(v*100)/100, 'f', -1, 64) }

// turnsTheBed turns it by keys; what is pressed quickly is one change.
func (b *tab) turnsTheBed() {
	b.t.Helper()
	eval[bool](b, `(document.querySelector("a.thing.chosen").focus(), true)`)
	b.keys("rrr")
	b.settled("it is turned", "turn_deg", "15")
	if !eval[bool](b, `document.activeElement.matches("a.thing.chosen")`) {
		b.t.Error("the focus is lost once it is turned")
	}
}

// stepsBack takes back the turn, the length and the move, and does them again.
func (b *tab) stepsBack() {
	b.t.Helper()
	x, long := b.figure("x"), b.figure("length")
	b.press("#draw-undo")
	b.settled("it is not turned", "turn_deg", "")
	b.press("#draw-undo")
	b.settled("it is as short as before", "length_m", decimals(long-1))
	b.press("#draw-undo")
	b.wait("it is where it was", fmt.Sprintf(`Math.abs(document.querySelector("a.thing.chosen")?.dataset.x - %v) > 0.9`, x-0.5))
	for _, want := range [][2]string{{"length_m", decimals(long - 1)}, {"length_m", decimals(long)}, {"turn_deg", "15"}} {
		b.press("#draw-redo")
		b.settled("it is done again", want[0], want[1])
		b.wait("the steps are there", `!document.querySelector("[data-draw][aria-busy]")`)
	}
}

// By the keyboard alone: Tab to a bed, move it, make it longer; what lies outside
// the plan is refused, put back and told. Delete asks, and Leave comes back.
func TestDrawByKeyboard(t *testing.T) {
	beside(t)
	b := openTab(t, serveSample(t), desk)
	b.visit("/ground/draw?site=home")
	b.tabTo(`a.thing[data-thing="beds/h12"]`)
	b.do(chromedp.KeyEvent(kb.ArrowUp), chromedp.KeyEvent(kb.ArrowUp), chromedp.KeyEvent(kb.ArrowLeft))
	b.settled("it was moved", "y_m", "6.2")
	b.settled("it was moved", "x_m", "10.9")
	b.keys("l")
	b.settled("it is longer", "length_m", "5.1")
	for range 3 {
		b.do(chromedp.KeyEvent(kb.ArrowDown, chromedp.KeyModifiers(chromedp.ModifierShift)))
	}
	b.settled("it was moved by metres", "y_m", "3.2")
	for range 4 {
		b.do(chromedp.KeyEvent(kb.ArrowDown, chromedp.KeyModifiers(chromedp.ModifierShift)))
	}
	b.wait("it is told that it lies outside", `document.querySelector(".draw-chosen .err")?.textContent.includes("Move it in")`)
	if y := b.figure("y"); y != 3.2 {
		t.Errorf("what was refused is drawn at %v m", y)
	}
	b.tabTo(`a.thing[data-thing="features/pear"]`)
	b.loads(chromedp.KeyEvent(kb.Delete))
	b.says("Pear")
	b.follow(`main a.btn[href^="/ground/draw"]`)
	b.wait("the drawing is there", `!!document.querySelector("svg.site")`)
	b.quiet("status of 422", "Autofocus")
}

// An L is cut by two numbers, and one of its corners dragged; without script the
// same form does it.
func TestDrawAnL(t *testing.T) {
	beside(t)
	for _, w := range []way{ways[0], ways[3]} {
		t.Run(w.name, func(t *testing.T) {
			beside(t)
			b := openTab(t, serveSample(t), w.on, w.before...)
			b.visit("/ground/draw?pick=beds/h4")
			b.press(".draw-cut summary")
			b.fill("#cut-length", "2")
			b.fill("#cut-width", "0.4")
			b.press(`.draw-cut button[value="cut"]`)
			b.wait("it is an L", `document.querySelector("a.thing.chosen")?.dataset.outline === "0 0; 6 0; 6 0.8; 4 0.8; 4 1.2; 0 1.2"`)
			b.says("6.4 m²")
			if len(w.before) > 0 {
				b.follow("#draw-undo")
				b.wait("it is a rectangle again", `document.querySelector("a.thing.chosen")?.dataset.shape === "rectangle"`)
				b.quiet()
				return
			}
			perM := eval[float64](b, `(s => s.getScreenCTM().a * s.dataset.scale)(document.querySelector("svg.site"))`)
			x, y := b.inSight(`.site-rings [data-ring="4"] .reach`)
			b.dragged(x, y, x+1*perM, y)
			b.wait("its corner was dragged", `document.querySelector("a.thing.chosen")?.dataset.outline === "0 0; 6 0; 6 0.8; 4 0.8; 5 1.2; 0 1.2"`)
			b.wait("nothing is on its way", `!document.querySelector("[data-draw][aria-busy]")`)
			b.quiet()
		})
	}
}

// The plan prints on one sheet, with names, sizes, scale and a list of the beds.
func TestPrintADrawing(t *testing.T) {
	beside(t)
	b := openTab(t, lookAtSample(t), desk)
	for _, path := range []string{"/ground/draw?pick=beds/h3", "/ground/draw?site=share"} {
		sheets, text := b.print(path, papers[0])
		if sheets != 1 {
			t.Errorf("%s takes %d sheets", path, sheets)
		}
		printed(t, text, "Plan of", "Drawn to scale. 4 January 2027", "north", "by 1.2 m", "m²")
		notPrinted(t, text, "Keep", "Add to the plan", "In small steps")
	}
}

// A site without a plan asks for its width and depth and for which way is up;
// then there is a sheet to draw on. Without script too.
func TestBeginADrawing(t *testing.T) {
	beside(t)
	for _, w := range []way{ways[1], ways[3]} {
		t.Run(w.name, func(t *testing.T) {
			beside(t)
			b := openTab(t, serveSample(t), w.on, w.before...)
			b.visit("/sites/home/edit")
			b.fill("#f-plan_width_m", "")
			b.fill("#f-plan_depth_m", "")
			b.follow(".row-form button.main")
			b.says("Nothing is drawn of this site yet")
			if len(w.before) == 0 {
				b.checked(t)
			}
			b.fill("#f-plan_width_m", "24")
			b.fill("#f-plan_depth_m", "18")
			b.fill("#f-up_deg", "90")
			b.follow("main form button.main")
			b.says("24 by 18 m. The top of the plan faces east.")
			if !b.has("svg.site a.thing") {
				t.Error("nothing is drawn")
			}
			b.quiet()
		})
	}
}
