package browser_test

import (
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// The crop book narrows while one types, and a name of any kind leads to its
// crop, with script and without.
func TestCropIsFoundByAnyName(t *testing.T) {
	beside(t)
	s := lookAtSample(t)
	for _, w := range []way{{name: "mouse", on: desk}, {name: "finger", on: phone}, {name: "keyboard", on: desk, keyboard: true},
		{name: "no script", on: phone, before: []chromedp.Action[chromedp.Void]{withoutScript()}}} {
		t.Run(w.name, func(t *testing.T) {
			beside(t)
			b := openTab(t, s, w.on, w.before...)
			h := hand{b, w.keyboard}
			b.visit("/")
			b.follow(`nav.pages a[href="/crops"]`)
			h.enter("#name", "zucchini")
			if len(w.before) == 0 {
				b.wait("one crop is left", `[...document.querySelectorAll(".crop-line")].filter(e => e.checkVisibility()).length === 1`)
				if said := b.text("[data-found]"); !strings.HasPrefix(said, "1 ") {
					t.Errorf("the book says %q of one crop", said)
				}
			}
			b.loads(chromedp.KeyEvent("\r"))
			if at := b.path(); at != "/crop/courgette" {
				t.Errorf("zucchini leads to %s", at)
			}
			b.visit("/crops?name=zuchinni")
			b.says("No crop answers to zuchinni.")
			b.follow(".nearest a")
			if at := b.path(); at != "/crop/courgette" {
				t.Errorf("the nearest name leads to %s", at)
			}
			b.quiet()
		})
	}
}

// From a crop to another use, another site, a number of one's own and back, and
// undone.
func TestCropIsReadAndCorrected(t *testing.T) {
	beside(t)
	for _, w := range []way{{name: "mouse", on: desk}, {name: "no script", on: phone, before: []chromedp.Action[chromedp.Void]{withoutScript()}}} {
		t.Run(w.name, func(t *testing.T) {
			beside(t)
			b := openTab(t, serveSample(t), w.on, w.before...)
			b.visit("/vegetable/carrot")
			b.follow(`.book a[href="/crop/carrot"]`)
			b.says("Carrots for the table")
			b.yearThere()
			if !b.has(`.strip-row svg.year[aria-label*="Sow "]`) {
				t.Error("the year is not drawn, or not told in text")
			}
			b.follow(`.ways a[href*="use=early"]`)
			b.says("In short: early carrots pulled young")
			b.yearThere()
			b.follow(`.ways a[href*="site=share"]`)
			b.yearThere()
			b.says("The year at Wilgenrik share")
			b.follow(`a[href*="parameter=in_row_m"]`)
			b.fill("#f-value", "0.04")
			b.fill("#f-source", "own rows of 2026")
			b.follow(".row-form button.main")
			if at := b.path(); !strings.HasPrefix(at, "/crop/carrot?") {
				t.Errorf("a corrected number leads to %s", at)
			}
			if said := b.text(".numbers .own"); !strings.Contains(said, "4 cm") || !strings.Contains(said, "own rows of 2026") || !strings.Contains(said, "The book has") {
				t.Errorf("the own number reads %q", said)
			}
			b.follow(".said button")
			if b.has(".numbers .own") {
				t.Error("the number stands after it was taken back")
			}
			b.quiet()
		})
	}
}

// yearThere waits until the year of a crop was worked out: the page asks again by
// itself, and without script by its link.
func (b *tab) yearThere() {
	b.t.Helper()
	for range 40 {
		if b.has("svg.year") {
			return
		}
		time.Sleep(anotherLook)
		if b.has(".crop .stale-note + p a") && !b.has("[data-fragment][aria-busy]") {
			b.loads(chromedp.Navigate(b.server.address + b.path()))
		}
	}
	b.t.Errorf("the year of a crop does not come, at %s", b.path())
}
