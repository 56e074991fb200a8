package browser_test

import (
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

func enter() chromedp.Action[chromedp.Void] { return chromedp.KeyEvent(kb.Enter) }

func arrowRight() chromedp.Action[chromedp.Void] { return chromedp.KeyEvent(kb.ArrowRight) }
