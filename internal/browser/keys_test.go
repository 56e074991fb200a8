package browser_test

import (
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

func enter() chromedp.Action[chromedp.Void] { return chromedp.KeyEvent(kb.Enter) }

func arrowRight() chromedp.Action[chromedp.Void] { return chromedp.KeyEvent(kb.ArrowRight) }

// retype types over what the field with the focus holds.
func (b *tab) retype(text string) {
	b.t.Helper()
	b.do(chromedp.KeyEvent("a", chromedp.KeyModifiers(chromedp.ModifierCtrl)))
	b.keys("\b" + text)
}
