package browser_test

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"sync"
	"testing"
)

// inAugust is a data directory with the demo on a day on which much is due to be fed.
var inAugust = sync.OnceValues(func() (string, error) { return demoOn("2027-08-02") })

// demoOn takes the demo in with another day for today, as its files would be taken in.
func demoOn(today string) (string, error) {
	at := filepath.Join(filepath.Dir(program), "demo-"+today)
	files, data := filepath.Join(at, "files"), filepath.Join(at, "data")
	if err := exec.Command(program, "export", files, "--sample").Run(); err != nil {
		return "", err
	}
	told := filepath.Join(files, "holding.csv")
	text, err := os.ReadFile(told)
	if err != nil {
		return "", err
	}
	if err := os.WriteFile(told, bytes.Replace(text, []byte("2027-01-04"), []byte(today), 1), 0o600); err != nil {
		return "", err
	}
	return data, exec.Command(program, "import", files, "--as", "household", "--data", data).Run()
}

// serveAugust serves a copy of its own of the demo in August.
func serveAugust(t *testing.T) *server {
	t.Helper()
	return serveCopy(t, inAugust)
}

// All that is due is told as fed with one tap and taken back with one, on a phone and a
// desk, by keys, and without script.
func TestAllAreFed(t *testing.T) {
	beside(t)
	for _, w := range ways {
		t.Run(w.name, func(t *testing.T) {
			beside(t)
			h := hand{openTab(t, serveAugust(t), w.on, w.before...), w.keyboard}
			h.visit("/water/feed")
			if w.name == "finger" {
				h.checked(t)
				h.apart(t, "nav.ways")
			}
			h.goOn("#feed-all button.main")
			h.says("Last fed")
			if h.has("#feed-all") {
				t.Error("what was fed is offered again")
			}
			h.goOn(".said form button")
			if !h.has("#feed-all button.main") {
				t.Error("it was not taken back")
			}
			h.quiet()
		})
	}
}

// The links from one page of water to another stand apart, and the page's own is in sight.
func TestTheWaysOfWaterStandApart(t *testing.T) {
	beside(t)
	b := openTab(t, lookAtSample(t), phone)
	for _, path := range []string{"/water", "/water/use", "/water/butt", "/water/short", "/water/feed", "/water_sources", "/moisture_readings"} {
		b.visit(path)
		b.apart(t, "nav.ways")
		if !eval[bool](b, `(() => { const r = document.querySelector("nav.ways [aria-current]").getBoundingClientRect(); return r.left >= 0 && r.right <= innerWidth })()`) {
			t.Errorf("%s: where one is lies out of sight", path)
		}
	}
}

// apart fails where the words of neighbours in a row overlap.
func (b *tab) apart(t *testing.T, row string) {
	t.Helper()
	over := eval[string](b, `(() => {
		const words = [...document.querySelectorAll("`+row+` > *")].map(e => { const r = document.createRange(); r.selectNodeContents(e); return {name: e.textContent, at: r.getBoundingClientRect()} })
		words.sort((a, b) => a.at.top - b.at.top || a.at.left - b.at.left)
		for (let i = 1; i < words.length; i++)
			if (words[i].at.top < words[i-1].at.bottom && words[i].at.left < words[i-1].at.right) return words[i-1].name + " and " + words[i].name
		return words.length ? "" : "no row"
	})()`)
	if over != "" {
		t.Errorf("%s: %s overlap", b.path(), over)
	}
}
