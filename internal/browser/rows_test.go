package browser_test

import (
	"testing"

	"github.com/chromedp/chromedp"
)

// way is how a person fills a form.
type way struct {
	name     string
	on       screen
	before   []chromedp.Action[chromedp.Void]
	keyboard bool
}

var ways = []way{
	{name: "mouse", on: desk},
	{name: "finger", on: phone},
	{name: "keyboard", on: desk, keyboard: true},
	{name: "no script", on: phone, before: []chromedp.Action[chromedp.Void]{withoutScript()}},
}

// hand fills forms in one way.
type hand struct {
	*tab
	keyboard bool
}

func (h hand) enter(field, text string) {
	h.t.Helper()
	if h.keyboard {
		h.tabTo(field)
		h.retype(text)
		return
	}
	h.fill(field, text)
}

// pick chooses from a list: by the first letters of what it shows, or by its value.
func (h hand) pick(field, value, shown string) {
	h.t.Helper()
	if h.keyboard {
		h.tabTo(field)
		h.keys(shown)
		return
	}
	h.choose(field, value)
}

// day writes a day into a field for dates. The same number for day and month
// reads alike in every order.
func (h hand) day(field, iso, digits string) {
	h.t.Helper()
	if h.keyboard {
		h.tabTo(field)
		h.keys(digits)
		return
	}
	h.choose(field, iso)
}

// goOn presses what leads to the next page.
func (h hand) goOn(selector string) {
	h.t.Helper()
	if h.keyboard {
		h.tabTo(selector)
		h.loads(enter())
		return
	}
	h.follow(selector)
}

// A bed is made with a slip in it, mended, renamed, planted, and taken away
// with what grows in it; one step back brings all of it again.
func TestBedsAndPlantings(t *testing.T) {
	beside(t)
	for _, w := range ways {
		t.Run(w.name, func(t *testing.T) {
			beside(t)
			h := hand{openTab(t, serveSample(t), w.on, w.before...), w.keyboard}
			h.visit("/beds")
			h.goOn(`a[href="/beds/new"]`)
			h.makesBed()
			h.renamesBed()
			h.plants()
			h.removesBed()
			h.goOn(".said form button")
			h.visit("/beds")
			h.says("Straight bed")
			h.visit("/plantings?q=straight")
			h.says("Aubergines")
			h.quiet("status of 422")
		})
	}
}

// makesBed writes a word where a number belongs, and is told so beside it.
func (h hand) makesBed() {
	h.t.Helper()
	h.enter("#f-name", "Crooked bed")
	h.enter("#f-length_m", "long")
	h.enter("#f-width_m", "1.2")
	h.pick("#f-site", "home", "Larkmeer")
	h.goOn(".row-form button.main")
	if h.text("#f-length_m-wrong") == "" {
		h.t.Error("nothing is said beside the length")
	}
	if !h.has(`#f-length_m[aria-invalid="true"][aria-describedby~="f-length_m-wrong"]`) {
		h.t.Error("the length is not marked as wrong")
	}
	for field, typed := range map[string]string{"f-name": "Crooked bed", "f-length_m": "long", "f-width_m": "1.2", "f-site": "home"} {
		if got := get(h.tab, chromedp.Value(chromedp.ID(field))); got != typed {
			h.t.Errorf("%s was %q and is %q", field, typed, got)
		}
	}
	h.enter("#f-length_m", "5")
	h.goOn(".row-form button.main")
	h.wait("it is said that the bed was made", `!!document.querySelector(".said p")`)
	h.says("Crooked bed")
}

func (h hand) renamesBed() {
	h.t.Helper()
	h.goOn(`a[aria-label*="Crooked bed"]`)
	h.enter("#f-name", "Straight bed")
	h.goOn(".row-form button.main")
	h.says("Straight bed")
}

func (h hand) plants() {
	h.t.Helper()
	h.visit("/plantings/new")
	h.pick("#f-grown", "aubergine/table", "Auberg")
	bed := eval[string](h.tab, `[...document.querySelectorAll("#f-bed option")].find(o => o.textContent === "Straight bed")?.value ?? ""`)
	h.pick("#f-bed", bed, "Straight")
	h.day("#f-date", "2027-05-05", "05052027")
	h.enter("#f-area_m2", "1.5")
	h.goOn(".row-form button.main")
	h.wait("it is said what was planted", `!!document.querySelector(".said p")`)
	h.visit("/plantings?q=straight")
	h.says("Aubergines")
}

// removesBed is asked about the planting that hangs on the bed.
func (h hand) removesBed() {
	h.t.Helper()
	h.visit("/beds")
	h.goOn(`a[aria-label*="Straight bed"]`)
	h.goOn(`.row-form a[href$="/remove"]`)
	h.says("Aubergines")
	h.goOn("main form button.main")
	h.wait("it is said what was removed", `!!document.querySelector(".said p")`)
	if eval[bool](h.tab, `document.querySelector("main").textContent.includes("Straight bed")`) {
		h.t.Error("the bed is still listed")
	}
}

// Two tabs change the same bed: the second is shown both versions and decides.
func TestTwoTabsAtOneBed(t *testing.T) {
	beside(t)
	for _, on := range screens {
		t.Run(on.name, func(t *testing.T) {
			beside(t)
			s := serveSample(t)
			first, second := openTab(t, s, on), openTab(t, s, on)
			first.visit("/beds/h1/edit")
			second.visit("/beds/h1/edit")
			first.fill("#f-name", "Walnut bed")
			first.follow(".row-form button.main")
			second.fill("#f-name", "Hazel bed")
			second.follow(".row-form button.main")
			if stands, yours := second.text("tr.differs td:nth-child(2)"), second.text("tr.differs td:nth-child(3)"); stands != "Walnut bed" || yours != "Hazel bed" {
				t.Errorf("the versions shown are %q and %q", stands, yours)
			}
			second.checked(t)
			second.follow("main form button.main")
			second.says("Hazel bed")
			second.quiet("status of 409")
			first.quiet()
		})
	}
}
