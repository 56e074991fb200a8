package browser_test

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// From a vegetable's gap to what would mend it, accepted with one tap and undone,
// with script and without.
func TestAGapIsMendedAndUndone(t *testing.T) {
	beside(t)
	for _, w := range []way{{name: "mouse", on: desk}, {name: "no script", on: phone, before: []chromedp.Action[chromedp.Void]{withoutScript()}}} {
		t.Run(w.name, func(t *testing.T) {
			beside(t)
			b := openTab(t, serveSample(t), w.on, w.before...)
			b.visit("/vegetable/lettuce")
			b.follow(`.leaves li:nth-of-type(2) a.mend`)
			adviceThere(t, b)
			b.says("What always remains")
			title := b.text(".next-list h2")
			b.follow(".next-list button")
			b.says("Undo")
			if !strings.HasPrefix(b.path(), "/vegetable/lettuce") {
				t.Errorf("%q leads to %s", title, b.path())
			}
			b.follow(".said button")
			b.quiet()
		})
	}
}
