package browser_test

import (
	"context"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// screen is what a page is looked at on.
type screen struct {
	name          string
	width, height int64
	scale         float64
	touch         bool
}

var (
	phone = screen{name: "phone", width: 390, height: 844, scale: 2, touch: true}
	desk  = screen{name: "desk", width: 1440, height: 900, scale: 1}
)

var screens = []screen{phone, desk}

// emulate makes a tab as large as the screen.
func (s screen) emulate() chromedp.Action[chromedp.Void] {
	options := []chromedp.EmulateViewportOption{chromedp.EmulateScale(s.scale), chromedp.EmulateLandscape}
	if s.touch {
		options = []chromedp.EmulateViewportOption{chromedp.EmulateScale(s.scale), chromedp.EmulatePortrait,
			chromedp.EmulateMobile, chromedp.EmulateTouch}
	}
	return chromedp.EmulateViewport(s.width, s.height, options...)
}

// theme is what the person's system prefers.
type theme string

const (
	light theme = "light"
	dark  theme = "dark"
)

func (c theme) emulate() chromedp.Action[chromedp.Void] {
	return chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		_, err := cdp.Call(ctx, t, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
			Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: string(c)}}})
		return err
	})
}

// withoutScript turns the script of the pages off. The driver can still read them.
func withoutScript() chromedp.Action[chromedp.Void] {
	return chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		_, err := cdp.Call(ctx, t, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true})
		return err
	})
}

// withFocus lets a tab behave as the one in front, whatever other tabs do.
func withFocus() chromedp.Action[chromedp.Void] {
	return chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		_, err := cdp.Call(ctx, t, emulation.SetFocusEmulationEnabled, emulation.SetFocusEmulationEnabledParams{Enabled: true})
		return err
	})
}
