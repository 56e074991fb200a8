package browser_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// paper is what a page is printed on.
type paper struct {
	name string
	size chromedp.PaperSize
}

var papers = []paper{{"A4", chromedp.PaperA4}, {"Letter", chromedp.PaperLetter}}

// The table fits one sheet lying down; the other pages print with their words
// and without what only a screen can use.
func TestPrint(t *testing.T) {
	beside(t)
	b := openTab(t, lookAtSample(t), desk)
	for _, p := range papers {
		t.Run(p.name, func(t *testing.T) {
			b.t = t
			sheets, text := b.print("/", p, chromedp.PDFLandscape())
			if sheets != 1 {
				t.Errorf("the table takes %d sheets", sheets)
			}
			printed(t, text, "The year at the table", "Potatoes", "Lamb's lettuce", "Share of the table home-grown")
			notPrinted(t, text, "Plantings\n", "The same in figures")
			sheets, text = b.print("/vegetable/potato", p)
			if sheets > 2 {
				t.Errorf("a vegetable takes %d sheets", sheets)
			}
			printed(t, text, "Potatoes", "Early potatoes, Home 3")
			_, text = b.print("/planting/pot-27t", p)
			printed(t, text, "Early potatoes")
			_, text = b.print("/plantings", p)
			printed(t, text, "Winter leeks")
			notPrinted(t, text, "Add a planting")
			if sheets, text = b.print("/ground?bed=h4", p, chromedp.PDFLandscape()); sheets != 2 {
				t.Errorf("the ground takes %d sheets", sheets)
			}
			printed(t, text, "Larkmeer house garden", "The year in the beds", "Home 4")
			notPrinted(t, text, "A week earlier")
			_, text = b.print("/beds", p)
			printed(t, text, "Home 1", "Row 5")
			if sheets, text = b.print("/crops", p); sheets > 2 {
				t.Errorf("the crop book takes %d sheets", sheets)
			}
			printed(t, text, "The crop book", "Courgette", "Sprouting broccoli")
			notPrinted(t, text, "Find by any name")
			b.visit("/crop/leek")
			b.yearThere()
			_, text = b.print("/crop/leek", p)
			printed(t, text, "The year at Larkmeer house garden", "Planted out", "In the open", "Running to seed", "Seen in the source")
			notPrinted(t, text, "Correct")
		})
	}
}

var sheet = regexp.MustCompile(`/Type\s*/Page\b[^s]`)

// print returns how many sheets a page takes and what is written on them; the
// text is empty where no reader of such files is installed.
func (b *tab) print(path string, on paper, options ...chromedp.PDFOption) (int, string) {
	b.t.Helper()
	b.visit(path)
	pdf := get(b, chromedp.PrintToPDF(append(options, chromedp.PDFPaper(on.size), chromedp.PDFPreferCSSPageSize())...))
	sheets := len(sheet.FindAll(pdf, -1))
	if sheets == 0 {
		b.t.Fatalf("%s: nothing was printed", path)
	}
	reader, err := exec.LookPath("pdftotext")
	if err != nil {
		return sheets, ""
	}
	file := filepath.Join(b.t.TempDir(), "page.pdf")
	if err := os.WriteFile(file, pdf, 0o600); err != nil {
		b.t.Fatal(err)
	}
	out, err := exec.Command(reader, "-layout", file, "-").Output()
	if err != nil {
		b.t.Fatal(err)
	}
	return sheets, string(out)
}

func printed(t *testing.T, text string, wanted ...string) {
	t.Helper()
	if text == "" {
		return
	}
	text = strings.ReplaceAll(text, "’", "'")
	for _, w := range wanted {
		if !strings.Contains(text, w) {
			t.Errorf("%q is not on the paper:\n%.1500s", w, text)
		}
	}
}

func notPrinted(t *testing.T, text string, unwanted ...string) {
	t.Helper()
	for _, w := range unwanted {
		if strings.Contains(text, w) {
			t.Errorf("%q is on the paper", w)
		}
	}
}
