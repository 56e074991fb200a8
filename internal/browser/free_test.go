package browser_test

import (
	"testing"

	"github.com/chromedp/chromedp"
)

// What comes free in a period of one's own, with script and without: the period is
// chosen, its ground listed and drawn, and each piece leads to what could follow.
func TestFreeGroundOfAPeriod(t *testing.T) {
	beside(t)
	s := lookAtSample(t)
	for _, w := range []way{{name: "mouse", on: desk}, {name: "finger", on: phone}, {name: "no script", on: phone, before: []chromedp.Action[chromedp.Void]{withoutScript()}}} {
		t.Run(w.name, func(t *testing.T) {
			beside(t)
			b := openTab(t, s, w.on, w.before...)
			b.visit("/beds")
			b.follow(`.page-head a[href="/ground/free"]`)
			b.says("Free now")
			b.choose("#f-from", "2027-06-01")
			b.choose("#f-until", "2027-06-30")
			b.choose("#f-site", "share")
			b.follow(".period button")
			b.says("Free on 1 June 2027")
			b.says("Tunnel, middle")
			if b.has(`.free-line a[href^="/beds/h4/"]`) {
				t.Error("a bed of another site is listed")
			}
			if !b.has(`.free-line a[href^="/beds/t2/next?area="][href*="from=2027-06-23"]`) {
				t.Error("the middle of the tunnel has no way to what could follow")
			}
			if !b.has(`svg.free-plan[aria-label^="Plan of "] .free-plan-free`) {
				t.Error("the free ground is not drawn")
			}
			b.quiet()
		})
	}
}
