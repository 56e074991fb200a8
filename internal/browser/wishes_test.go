package browser_test

import (
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// wishWays are by keys alone, and without script on a phone.
var wishWays = []way{
	{name: "keyboard", on: desk, keyboard: true},
	{name: "no script", on: phone, before: []chromedp.Action[chromedp.Void]{withoutScript()}},
}

// What is wished of a draft is kept: the page opens with it later, it is changed where
// it was told, and one step back brings the old wish back.
func TestDraftWishesAreKept(t *testing.T) {
	beside(t)
	for _, w := range wishWays {
		t.Run(w.name, func(t *testing.T) {
			beside(t)
			h := hand{openTab(t, serveSample(t), w.on, w.before...), w.keyboard}
			h.visit("/draft")
			h.enter("#f-seconds", "1")
			h.enter("#f-hours", "7")
			h.unfold(`form[action="/draft"] details:last-of-type`)
			h.pick("#f-crop-1", "carrot", "Carr")
			h.goOn(`form[action="/draft"] button.main`)
			h.says("what is asked of a drafted year, 2 wishes")
			draftDone(h)
			h.visit("/draft")
			h.wait("the wishes are there", `document.querySelector("#f-hours").value === "7" && document.querySelector("#f-crop-1").value === "carrot"`)
			h.unfold(`[data-part="ask"] > details`)
			h.enter("#f-hours", "6")
			h.goOn(`form[action="/draft"] button.main`)
			h.says("at most 6 hours a week")
			h.goOn(".said form button")
			draftDone(h)
			h.visit("/draft")
			h.wait("the old wish is back", `document.querySelector("#f-hours").value === "7"`)
			h.quiet()
		})
	}
}

// draftDone waits until no draft is under way, looking again now and then.
func draftDone(h hand) {
	h.t.Helper()
	for range 400 {
		h.visit("/draft")
		h.wait("the page is there", `!!document.querySelector("#draft-bar, #f-hours")`)
		if h.has("#f-hours") {
			return
		}
		time.Sleep(anotherLook)
	}
	h.t.Fatal("the draft does not end")
}

// Next year is carried forward from this one, kept as a draft and taken back.
func TestACarriedYearIsKept(t *testing.T) {
	beside(t)
	for _, w := range wishWays {
		t.Run(w.name, func(t *testing.T) {
			beside(t)
			h := hand{openTab(t, serveSample(t), w.on, w.before...), w.keyboard}
			h.visit("/plans")
			h.goOn(`a.btn[href="/plans/next"]`)
			h.goOn(`.carry-wrong .acts a.link`)
			h.says("Take in again")
			h.goOn(`form[action="/plans/next"] button.main`)
			h.says("2028")
			h.visit("/plans")
			n := eval[int](h.tab, `document.querySelectorAll(".list > li").length`)
			if n != 3 {
				t.Errorf("%d plans are listed", n)
			}
			h.visit("/history")
			h.says("2028")
			h.goOn(`form[action="/undo"] button`)
			h.visit("/plans")
			if n := eval[int](h.tab, `document.querySelectorAll(".list > li").length`); n != 2 {
				t.Errorf("taken back, %d plans are listed", n)
			}
			h.quiet()
		})
	}
}
