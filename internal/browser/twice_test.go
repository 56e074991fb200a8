package browser_test

import "sync"

// A page is looked at on two screens. Where both show the same elements in the same
// colours, what the checker asks of elements, and of colours in the other theme, is
// asked on the first alone; what hangs on size and place is asked on both.

// placedRun asks only what hangs on where and how large things are.
const placedRun = `{resultTypes: ["violations"], runOnly: {type: "rule", values: ["color-contrast-enhanced", "link-in-text-block", "target-size", "scrollable-region-focusable"]}, preload: false}`

// shownElement is an element that is shown, without its content: its tag and attributes,
// its colours, and whether its text is large enough for less contrast
// (Web Content Accessibility Guidelines 2.2, 1.4.6).
type shownElement struct {
	Is    string
	Large bool
}

const shownElements = `[...document.querySelectorAll("body *")].filter(e => e.checkVisibility({checkVisibilityCSS: true})).map(e => {
	const s = getComputedStyle(e), size = parseFloat(s.fontSize);
	return {Is: e.cloneNode(false).outerHTML + [s.color, s.backgroundColor, s.backgroundImage, s.opacity, s.fill, s.stroke].join(" "),
		Large: size >= 24 || size >= 18.66 && s.fontWeight >= 700};
})`

// looks are what pages showed on the first screen on which all was asked of them.
type looks struct {
	mutex sync.Mutex
	shown map[string][]shownElement
}

// sameAsBefore tells whether a page shows what it did on the other screen, with no text
// that was large and is not.
func (l *looks) sameAsBefore(page string, now []shownElement) bool {
	l.mutex.Lock()
	defer l.mutex.Unlock()
	before, known := l.shown[page]
	if !known || len(before) != len(now) {
		return false
	}
	for i := range now {
		if now[i].Is != before[i].Is || before[i].Large && !now[i].Large {
			return false
		}
	}
	return true
}

// asked keeps what a page showed when all was asked of it.
func (l *looks) asked(page string, now []shownElement) {
	l.mutex.Lock()
	defer l.mutex.Unlock()
	l.shown[page] = now
}
