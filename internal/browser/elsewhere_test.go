package browser_test

import (
	"context"
	"fmt"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// weekPages are the pages of the week, its water and its weather.
var weekPages = []string{"/week", "/week/sowings", "/water", "/water/use", "/water/butt", "/water/short", "/water/away?from=2027-01-10&to=2027-01-24", "/frost", "/risk", "/risk/hutton", "/risk/carrot-fly", "/weather"}

// The pages of the week, of a household in the south, stay inside both screens, can be hit
// with a thumb and leave the browser content.
func TestTheWeekInTheSouth(t *testing.T) {
	beside(t)
	s := serve(t, "", "--sample=south")
	for _, on := range screens {
		t.Run(on.name, func(t *testing.T) {
			b := openTab(t, s, on)
			for _, path := range weekPages {
				b.visit(path)
				b.inside(t)
				b.reachable(t)
			}
			b.visit("/frost")
			b.says("in the open (Quenda Steps)")
			b.quiet()
		})
	}
}

// Frost and risk are whole on paper of either size: no words are cut off at its side, and
// what only a screen can use is left out.
func TestFrostAndRiskOnPaper(t *testing.T) {
	beside(t)
	b := openTab(t, lookAtSample(t), desk)
	for _, p := range papers {
		t.Run(p.name, func(t *testing.T) {
			b.t = t
			for _, page := range []struct {
				path, says string
				most       int // sheets
			}{
				{"/frost?minimum=-16", "Blossom of fruit", 3},
				{"/risk", "Carrot fly", 2},
				{"/risk/carrot-fly", "What growers do about it", 6},
				{"/risk/hutton", "What growers do about it", 3},
			} {
				sheets, text := b.print(page.path, p)
				t.Logf("%s takes %d sheets", page.path, sheets)
				if sheets > page.most {
					t.Errorf("%s takes %d sheets", page.path, sheets)
				}
				printed(t, text, page.says)
				notPrinted(t, text, "I have seen it", "History")
				b.insidePaper(t, p)
			}
		})
	}
}

// marginMM is the blank side of a printed sheet.
const marginMM = 12

// insidePaper fails where what is printed reaches over the side of the paper, swept parts
// too: paper is not swept.
func (b *tab) insidePaper(t *testing.T, on paper) {
	t.Helper()
	width := int64((on.size.Width*25.4 - 2*marginMM) / 25.4 * 96)
	b.do(chromedp.EmulateViewport(width, 1000), printMedia("print"))
	for _, w := range eval[[]string](b, fmt.Sprintf(`[...document.querySelectorAll("main *")].filter(e => {
		const r = e.getBoundingClientRect();
		return r.width > 1 && r.right > %d + 1 && e.checkVisibility({checkVisibilityCSS: true}) && !(e.closest("svg") && !e.matches("svg"));
	}).slice(0, 4).map(e => e.tagName + "." + e.className + " reaches to " + Math.round(e.getBoundingClientRect().right) + ": " + e.textContent.trim().slice(0, 60))`, width)) {
		t.Errorf("cut off on %s, %d px wide: %s", on.name, width, w)
	}
	b.do(printMedia(""), b.screen.emulate())
}

// printMedia lays the page out as for paper, or with nothing as for the screen.
func printMedia(media string) chromedp.Action[chromedp.Void] {
	return chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		_, err := cdp.Call(ctx, t, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: media})
		return err
	})
}
