package browser_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/chromedp"
)

// A table under headings of the household's own is explained once, its bad row is
// left out, and it is on record; taken back, it is not. The same without script.
func TestWeatherFileIsTakenIn(t *testing.T) {
	beside(t)
	file := filepath.Join(t.TempDir(), "diary.csv")
	text := "Day,Lowest (F),Highest (F),Rain (in)\n1/2/2026,41,50,0.10\n2/2/2026,38,47,T\n3/2/2026,39,x,0\n"
	if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	for _, w := range []way{ways[0], ways[3]} {
		t.Run(w.name, func(t *testing.T) {
			beside(t)
			h := hand{openTab(t, serveSample(t), w.on, w.before...), w.keyboard}
			h.visit("/weather/files")
			h.do(chromedp.SetUploadFiles(chromedp.ID("weather-file"), []string{file}))
			h.follow(".form button.main")
			h.says("The columns of diary.csv")
			h.choose("#f-date_order", "dmy")
			h.follow(".row-form button.main")
			h.says("is not a number")
			h.follow(`form[action="/weather/files/keep"] button.main`)
			h.says("nothing is kept")
			h.press(`input[name="keep"]`)
			h.follow(`form[action="/weather/files/keep"] button.main`)
			h.says("diary.csv")
			h.says("1 February 2026 to 3 February 2026")
			h.follow(".said form button")
			if h.has(`button[aria-label="Remove diary.csv"]`) {
				t.Error("taken back, and still on record")
			}
			h.quiet("status of 422")
		})
	}
}

// diaryWaits brings a table whose headings nobody knows.
func diaryWaits(t *testing.T, b *tab) {
	t.Helper()
	file := filepath.Join(t.TempDir(), "diary.csv")
	if err := os.WriteFile(file, []byte("Day,Lowest (F),Rain (in)\n2026-02-01,41,0.10\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	b.do(chromedp.SetUploadFiles(chromedp.ID("weather-file"), []string{file}))
	b.follow(".form button.main")
}
