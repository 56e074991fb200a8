package browser_test

import (
	"context"
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
)

// A file of weather is dragged from a folder onto the page, let go, and looked at.
func TestAWeatherFileIsDropped(t *testing.T) {
	beside(t)
	file := filepath.Join(t.TempDir(), "gauge.csv")
	if err := os.WriteFile(file, []byte("date,tmin_c,tmax_c,rain_mm\n2026-02-01,1,6,2.5\n2026-02-02,2,7,0\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	b := openTab(t, serveSample(t), desk)
	b.visit("/weather/files")
	x, y := b.inSight("#weather-file")
	for _, kind := range []input.DispatchDragEventType{input.DispatchDragEventTypeDragEnter, input.DispatchDragEventTypeDragOver, input.DispatchDragEventTypeDrop} {
		b.do(chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
			_, err := cdp.Call(ctx, t, input.DispatchDragEvent, input.DispatchDragEventParams{Type: kind, X: x, Y: y,
				Data: &input.DragData{Items: []*input.DragDataItem{}, Files: []string{file}, DragOperationsMask: 1}})
			return err
		}))
	}
	b.wait("the field has the file", `document.querySelector("#weather-file").files[0]?.name === "gauge.csv"`)
	b.follow(".form button.main")
	b.says("gauge.csv")
	b.says("1 February 2026")
	b.follow(`form[action="/weather/files/keep"] button.main`)
	if !b.has(`button[aria-label="Remove gauge.csv"]`) {
		t.Errorf("it is not on record:\n%s", b.start())
	}
	b.quiet()
}
