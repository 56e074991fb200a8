package browser_test

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// figure is a measured time or size.
type figure struct{ what, value string }

// How fast the pages answer is measured and told, never asserted: a test must
// not depend on what else the machine does. With -update the figures go into
// docs/performance.md.
func TestMeasureSpeed(t *testing.T) {
	if slow(t); !*update {
		t.Parallel() // nobody reads the figures
	}
	began := time.Now()
	s := serveEmpty(t)
	start := time.Since(began)
	b := openTab(t, s, desk)
	b.visit("/")
	b.follow(`form[action="/start/sample"] button`)
	b.wait("the demo is there", `document.querySelectorAll(".rows .row").length > 20`)
	figures := []figure{{"garner serve, from its start to its address", milliseconds(start)}}
	figures = append(figures, b.measureTable()...)
	figures = append(figures, b.measureTrying()...)
	figures = append(figures, b.measureDragging()...)
	for _, f := range figures {
		t.Logf("%-60s %s", f.what, f.value)
	}
	if *update {
		writeFigures(t, figures)
	}
}

// repeats is how often a thing is measured: often only where it is written down.
func repeats() int {
	if *update {
		return 12
	}
	return 3
}

// loaded is what the browser knows of the loading of a page [ms, bytes].
type loaded struct{ Answer, Painted, Page, All float64 }

// measureTable loads the first page with results stored and nothing cached.
func (b *tab) measureTable() []figure {
	b.t.Helper()
	var answer, painted []float64
	var last loaded
	for range repeats() {
		c := openTab(b.t, b.server, b.screen)
		c.visit("/")
		c.wait("the page is painted", `performance.getEntriesByName("first-contentful-paint").length > 0`)
		last = eval[loaded](c, `(() => {
			const page = performance.getEntriesByType("navigation")[0];
			const parts = performance.getEntriesByType("resource");
			return {Answer: page.responseEnd - page.requestStart, Page: page.transferSize,
				Painted: performance.getEntriesByName("first-contentful-paint")[0].startTime,
				All: parts.reduce((sum, p) => sum + p.transferSize, page.transferSize)};
		})()`)
		answer, painted = append(answer, last.Answer), append(painted, last.Painted)
	}
	return []figure{
		{"the table asked for to its last byte, results stored", spread(answer)},
		{"the table asked for to the first paint, nothing cached", spread(painted)},
		{"the table alone, as sent", kilobytes(last.Page)},
		{"the table with its style and script, as sent", kilobytes(last.All)},
	}
}

// timeTrying moves a planting a week later time after time, and measures from
// the click to the frame after the new figures are on the page. Each date is new,
// so that each is computed.
const timeTrying = `(async () => {
	const id = %s, times = [];
	for (let i = 0; i < %d; i++) {
		const link = document.getElementById(id), was = link.href, start = performance.now();
		link.click();
		await new Promise(done => {
			const look = () => {
				if (document.getElementById(id)?.href === was || !document.querySelector(".try .ba")) return;
				watch.disconnect();
				requestAnimationFrame(() => setTimeout(done));
			};
			const watch = new MutationObserver(look);
			watch.observe(document.querySelector("[data-fragment]"), {childList: true, subtree: true, attributes: true});
		});
		times.push(performance.now() - start);
		await new Promise(done => setTimeout(done, 50));
	}
	return times;
})()`

func (b *tab) measureTrying() []figure {
	b.t.Helper()
	var out []figure
	for _, c := range []struct{ vegetable, planting, what string }{
		{"potato", "pot-27t", "a change tried: early potatoes a week later, from the click to the new figures"},
		{"leek", "", "a change tried: leeks a week later, from the click to the new figures"},
		{"tomato", "", "a change tried: tomatoes a week later, from the click to the new figures"},
	} {
		b.visit("/vegetable/" + c.vegetable)
		id := "later-" + c.planting
		if c.planting == "" {
			id = eval[string](b, `document.querySelector('[id^="later-"]').id`)
		}
		times, err := chromedp.Run(b.ctx, chromedp.Evaluate[[]float64](fmt.Sprintf(timeTrying, quote(id), repeats()), chromedp.EvalAwaitPromise))
		if err != nil {
			b.t.Fatal(err)
		}
		out = append(out, figure{c.what, spread(times)})
	}
	return out
}

// spread tells the middle of some times, the quickest and the slowest [ms].
func spread(ms []float64) string {
	slices.Sort(ms)
	return fmt.Sprintf("%.0f ms (%.0f to %.0f)", ms[len(ms)/2], ms[0], ms[len(ms)-1])
}

func milliseconds(d time.Duration) string { return fmt.Sprintf("%d ms", d.Milliseconds()) }

func kilobytes(bytes float64) string { return fmt.Sprintf("%.0f kB", bytes/1000) }

// performanceTitle heads the part of docs/performance.md that is written here.
const performanceTitle = "## In the browser\n"

func writeFigures(t *testing.T, figures []figure) {
	t.Helper()
	name := filepath.Join(root, "docs/performance.md")
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	before, _, _ := strings.Cut(string(text), performanceTitle)
	var out strings.Builder
	out.WriteString(strings.TrimRight(before, "\n") + "\n\n" + performanceTitle + "\n")
	out.WriteString("Measured on the demo household in headless Chromium at 1440 x 900 on the same machine, program and browser\n")
	out.WriteString("sharing its cores: the middle of several, the quickest and the slowest. A change is tried anew each time.\n\n")
	out.WriteString("| what | measured |\n| --- | --- |\n")
	for _, f := range figures {
		fmt.Fprintf(&out, "| %s | %s |\n", f.what, f.value)
	}
	if err := os.WriteFile(name, []byte(out.String()), 0o644); err != nil {
		t.Fatal(err)
	}
}
