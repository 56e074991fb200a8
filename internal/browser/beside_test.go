package browser_test

import (
	"strings"
	"testing"
)

// From a planting to what stands on its ground: lower leaves taken off by way of
// trying, kept, and taken back.
func TestBesideTriedAndKept(t *testing.T) {
	beside(t)
	for _, on := range screens {
		t.Run(on.name, func(t *testing.T) {
			beside(t)
			b := openTab(t, serveSample(t), on)
			b.visit("/planting/let-27e")
			b.follow(`a[href="/planting/let-27e/beside"]`)
			b.press(`.offer a[data-try]`)
			b.wait("what is tried is shown", `!!document.querySelector(".try form button.main")`)
			if at := eval[string](b, "location.search"); !strings.Contains(at, "strip_on") {
				t.Errorf("the address is %s", at)
			}
			b.follow(".try form button.main")
			b.wait("the page stands as kept", `!document.querySelector(".try") && location.search === ""`)
			b.follow(".said form button")
			b.quiet()
		})
	}
}
