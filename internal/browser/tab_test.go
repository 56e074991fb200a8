package browser_test

import (
	"context"
	"encoding/json"
	"fmt"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// patience is how long a page may take before it counts as stuck. It is no measure of
// speed: a machine that does much else needs it.
const patience = time.Minute

// anotherLook is the time between two looks at what takes a while.
const anotherLook = 500 * time.Millisecond

// tab is one tab of the browser that looks at one server.
type tab struct {
	t       *testing.T
	server  *server
	screen  screen
	ctx     context.Context
	console console
}

// console is what the browser complained of.
type console struct {
	mutex sync.Mutex
	lines []string
}

// openTab opens an empty tab; it is closed when the test ends.
func openTab(t *testing.T, s *server, on screen, before ...chromedp.Action[chromedp.Void]) *tab {
	t.Helper()
	ctx, done := chromedp.NewContext(oneBrowser, chromedp.WithNewBrowserContext())
	t.Cleanup(done)
	b := &tab{t: t, server: s, screen: on, ctx: ctx}
	b.do(append([]chromedp.Action[chromedp.Void]{on.emulate(), light.emulate(), withFocus()}, before...)...)
	messages := chromedp.Console(ctx)
	go func() {
		for m, err := range messages {
			if err != nil {
				return
			}
			if m.Type == chromedp.ConsoleError || m.Type == chromedp.ConsoleWarning || m.IsException() {
				b.console.mutex.Lock()
				b.console.lines = append(b.console.lines, fmt.Sprintf("%s (%s %s:%d)", m, m.Source, m.URL, m.Line+1))
				b.console.mutex.Unlock()
			}
		}
	}()
	return b
}

// quiet fails when the browser has complained since the last time. An answer of
// a status is a complaint to the browser, and is named as expected where a page
// is meant to refuse.
func (b *tab) quiet(expected ...string) {
	b.t.Helper()
	b.console.mutex.Lock()
	defer b.console.mutex.Unlock()
lines:
	for _, line := range b.console.lines {
		for _, e := range expected {
			if strings.Contains(line, e) {
				continue lines
			}
		}
		b.t.Errorf("the browser says: %s", line)
	}
	b.console.lines = nil
}

func (b *tab) do(actions ...chromedp.Action[chromedp.Void]) {
	b.t.Helper()
	ctx, cancel := context.WithTimeout(b.ctx, patience)
	defer cancel()
	// The first actions bind the life of the tab to their context.
	if chromedp.FromContext(b.ctx).Target == nil {
		ctx = b.ctx
	}
	if err := chromedp.Do(ctx, actions...); err != nil {
		b.t.Fatal(err)
	}
}

// get runs an action that has an answer.
func get[T any](b *tab, action chromedp.Action[T]) T {
	b.t.Helper()
	ctx, cancel := context.WithTimeout(b.ctx, patience)
	defer cancel()
	v, err := chromedp.Run(ctx, action)
	if err != nil {
		b.t.Fatal(err)
	}
	return v
}

// eval asks the page.
func eval[T any](b *tab, script string) T {
	b.t.Helper()
	return get(b, chromedp.Evaluate[T](script, chromedp.EvalAwaitPromise))
}

// visit goes to an address of the server.
func (b *tab) visit(path string) {
	b.t.Helper()
	b.do(chromedp.Navigate(b.server.address + path))
}

// path is the address the tab is at, without the server's.
func (b *tab) path() string {
	b.t.Helper()
	return strings.TrimPrefix(get(b, chromedp.Location()), b.server.address)
}

// press clicks what a selector finds, or taps it on a screen one touches, at
// the place where it is drawn.
func (b *tab) press(selector string) {
	b.t.Helper()
	b.wait("there is "+selector, "!!document.querySelector("+quote(selector)+")")
	b.do(b.pressed(selector))
}

func (b *tab) pressed(selector string) chromedp.Action[chromedp.Void] {
	if b.screen.touch {
		return chromedp.Tap(chromedp.CSS(selector))
	}
	return chromedp.Click(chromedp.CSS(selector))
}

// follow presses what leads to another page and waits for that page.
func (b *tab) follow(selector string) {
	b.t.Helper()
	b.wait("there is "+selector, "!!document.querySelector("+quote(selector)+")")
	b.loads(b.pressed(selector))
}

// loads does what leads to another page and waits for that page.
func (b *tab) loads(action chromedp.Action[chromedp.Void]) {
	b.t.Helper()
	get(b, chromedp.WaitEvent(page.LoadEventFired, nil, action))
}

// fill empties a field and types into it.
func (b *tab) fill(selector, text string) {
	b.t.Helper()
	b.press(selector)
	eval[bool](b, fmt.Sprintf(`(e => { e.focus(); if (e.select) e.select(); return true })(document.querySelector(%s))`, quote(selector)))
	b.keys("\b" + text)
}

// choose chooses an entry of a list by its value, as the browser's own list would.
func (b *tab) choose(selector, value string) {
	b.t.Helper()
	done := eval[bool](b, fmt.Sprintf(`((e, v) => {
		e.value = v;
		e.dispatchEvent(new Event("input", {bubbles: true}));
		e.dispatchEvent(new Event("change", {bubbles: true}));
		return e.value === v;
	})(document.querySelector(%s), %s)`, quote(selector), quote(value)))
	if !done {
		b.t.Fatalf("%s has no choice %q", selector, value)
	}
}

// keys types.
func (b *tab) keys(text string) {
	b.t.Helper()
	b.do(chromedp.KeyEvent(text))
}

// mostTabs is how often Tab is pressed before a thing counts as out of reach of
// the keyboard.
const mostTabs = 250

// tabTo presses Tab until the focus is on what a selector finds.
func (b *tab) tabTo(selector string) {
	b.t.Helper()
	for range mostTabs {
		b.keys("\t")
		if eval[bool](b, "!!document.activeElement && document.activeElement.matches("+quote(selector)+")") {
			if !eval[bool](b, focusShown) {
				b.t.Errorf("%s has the focus and does not show it", selector)
			}
			return
		}
	}
	b.t.Fatalf("the keyboard does not reach %s on %s", selector, b.path())
}

// focusShown tells whether what has the focus is drawn differently for it.
const focusShown = `(() => {
	const style = getComputedStyle(document.activeElement);
	return style.outlineStyle !== "none" && parseFloat(style.outlineWidth) > 0 || style.boxShadow !== "none"
		|| document.activeElement.matches("svg *");
})()`

// text is what a selector's first element says; the test ends where there is none.
func (b *tab) text(selector string) string {
	b.t.Helper()
	b.wait("there is "+selector, "!!document.querySelector("+quote(selector)+")")
	return strings.Join(strings.Fields(eval[string](b, "document.querySelector("+quote(selector)+").textContent")), " ")
}

// has tells whether a selector finds something.
func (b *tab) has(selector string) bool {
	b.t.Helper()
	return eval[bool](b, "!!document.querySelector("+quote(selector)+")")
}

// says fails unless the page has a text.
func (b *tab) says(text string) {
	b.t.Helper()
	b.wait("the page says "+text, "document.body.textContent.replace(/\\s+/g, ' ').includes("+quote(text)+")")
}

// wait waits until something is true of the page. The page may be loaded anew
// meanwhile.
func (b *tab) wait(what, script string) {
	b.t.Helper()
	end := time.Now().Add(patience)
	var last error
	for time.Now().Before(end) {
		ok, err := chromedp.Run(b.ctx, chromedp.Evaluate[bool](script))
		if err == nil && ok {
			return
		}
		last = err
		time.Sleep(10 * time.Millisecond)
	}
	b.t.Fatalf("waited in vain until %s, at %s (%v)\n%s", what, b.path(), last, b.start())
}

// start is the beginning of what the page says, for a failing test.
func (b *tab) start() string {
	text := eval[string](b, `document.body ? document.body.innerText.slice(0, 1500) : ""`)
	return text
}

func quote(text string) string {
	q, _ := json.Marshal(text) // a string is always written
	return string(q)
}
