package browser_test

import (
	"bytes"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"os"
	"path/filepath"
	"sort"
	"testing"

	"github.com/chromedp/chromedp"
)

// picture is a page as it is shown in the documents.
type picture struct {
	name, path string
	on         screen
	theme      theme
	high       int64 // of the screen; 0: as the screen is
	empty      bool  // on an empty data directory
}

// triedPath is a vegetable with a change that mends weeks: seedlings that are
// planted three weeks later keep longer into spring.
const triedPath = "/vegetable/onion?try=one-27:date=2027-05-01"

// groundPicture is the ground at midsummer with a bed chosen.
const groundPicture = "/ground?bed=h6&at=2027-06-22"

var album = []picture{
	{name: "table", path: "/", on: desk, theme: light, high: 1060},
	{name: "table-dark", path: "/", on: desk, theme: dark, high: 1060},
	{name: "table-phone", path: "/", on: phone, theme: light},
	{name: "vegetable", path: triedPath, on: desk, theme: light},
	{name: "vegetable-phone", path: triedPath, on: phone, theme: light, high: 1500},
	{name: "planting", path: "/planting/pot-27t", on: desk, theme: light, high: 1000},
	{name: "ground", path: groundPicture, on: desk, theme: light, high: 1500},
	{name: "ground-dark", path: groundPicture, on: desk, theme: dark, high: 900},
	{name: "ground-phone", path: groundPicture, on: phone, theme: light, high: 1500},
	{name: "week", path: "/week", on: desk, theme: light, high: 1500},
	{name: "week-phone", path: "/week", on: phone, theme: light, high: 1500},
	{name: "water", path: "/water", on: desk, theme: light, high: 1200},
	{name: "beds", path: "/beds", on: desk, theme: light},
	{name: "start", path: "/start", on: desk, theme: light, empty: true},
	{name: "start-phone", path: "/start", on: phone, theme: light, empty: true},
}

// With -pictures the pages are photographed into docs/pictures; make pictures
// does it.
func TestPictures(t *testing.T) {
	if !*pictures {
		t.Skip("takes pictures with -pictures only")
	}
	sample, empty := lookAtSample(t), serveEmpty(t)
	for _, p := range album {
		s, on := sample, p.on
		if p.empty {
			s = empty
		}
		if p.high != 0 {
			on.height = p.high
		}
		if on.touch {
			on.scale = 1.5
		}
		b := openTab(t, s, on, p.theme.emulate())
		b.do(p.theme.emulate())
		b.visit(p.path)
		if p.path == triedPath {
			b.wait("a change is shown", `!!document.querySelector(".try .ba")`)
		}
		if p.empty {
			b.fill("#f-q", "Hamburg")
			b.wait("places are offered", `!!document.querySelector('#places input[type="radio"]')`)
		}
		file := filepath.Join(root, "docs/pictures", p.name+".png")
		if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
			t.Fatal(err)
		}
		small := fewColours(t, get(b, chromedp.CaptureScreenshot()))
		if err := os.WriteFile(file, small, 0o644); err != nil {
			t.Fatal(err)
		}
		t.Logf("%s: %d kB", p.name, len(small)/1000)
	}
}

// mostColours keeps a picture of ink on paper small; the eye does not see the
// difference.
const mostColours = 32

// fewColours writes a picture anew with its commonest colours alone, each other
// one as the nearest of them.
func fewColours(t *testing.T, file []byte) []byte {
	t.Helper()
	full, err := png.Decode(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	reduced := image.NewPaletted(full.Bounds(), commonest(full))
	draw.Draw(reduced, full.Bounds(), full, full.Bounds().Min, draw.Src)
	var out bytes.Buffer
	encoder := png.Encoder{CompressionLevel: png.BestCompression}
	if err := encoder.Encode(&out, reduced); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// commonest returns the commonest colours of a picture, none too near to one
// that is more common.
func commonest(full image.Image) color.Palette {
	count := map[color.RGBA]int{}
	r := full.Bounds()
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			count[color.RGBAModel.Convert(full.At(x, y)).(color.RGBA)]++
		}
	}
	all := make([]color.RGBA, 0, len(count))
	for c := range count {
		all = append(all, c)
	}
	sort.Slice(all, func(i, k int) bool {
		if count[all[i]] != count[all[k]] {
			return count[all[i]] > count[all[k]]
		}
		a, b := all[i], all[k]
		return a.R != b.R && a.R < b.R || a.R == b.R && (a.G < b.G || a.G == b.G && a.B < b.B)
	})
	var out color.Palette
	for _, c := range all {
		if len(out) == mostColours {
			break
		}
		if len(out) == 0 || apart(c, out[out.Index(c)].(color.RGBA)) > 18 {
			out = append(out, c)
		}
	}
	return out
}

// apart is how far two colours lie apart, in the one in which they differ most.
func apart(a, b color.RGBA) int {
	d := func(x, y uint8) int { return max(int(x)-int(y), int(y)-int(x)) }
	return max(d(a.R, b.R), d(a.G, b.G), d(a.B, b.B))
}
