package browser_test

import (
	"fmt"
	"net/url"
	"testing"
)

// onePage is a page that everybody must be able to use.
type onePage struct {
	name, path string
	status     int                        // 0: 200
	to         func(t *testing.T, b *tab) // gets there, where an address is not enough
}

// samplePages are all pages of the demo holding.
func samplePages() []onePage {
	later := "try=" + url.QueryEscape("pot-27t:date=2027-04-12")
	return []onePage{
		{name: "table", path: "/"},
		{name: "table in own order", path: "/?order=own"},
		{name: "table with a change", path: "/?" + later},
		{name: "vegetable", path: "/vegetable/potato"},
		{name: "vegetable with a change", path: "/vegetable/potato?" + later},
		{name: "gap to be mended", path: "/vegetable/leek/mend?on=2028-02-28", to: adviceThere},
		{name: "gap to be mended with a change", path: "/vegetable/onion/mend?" + later, to: adviceThere},
		{name: "glut to be trimmed", path: "/vegetable/courgette/trim", to: adviceThere},
		{name: "vegetable with a name of two words", path: "/vegetable/sprouting%20broccoli"},
		{name: "planting", path: "/planting/pot-27t"},
		{name: "planting beside another", path: "/planting/let-27e/beside"},
		{name: "planting beside another, tried", path: "/planting/let-27e/beside?try=bru-27:strip_on=2027-07-01&try=bru-27:strip_share=0.4"},
		{name: "planting beside none", path: "/planting/pot-27m/beside"},
		{name: "faulty planting beside another", path: "/planting/let-27e/beside?strip=soon&share=130", status: 422},
		{name: "plantings", path: "/plantings"},
		{name: "plantings by bed", path: "/plantings?by=bed&show=ahead"},
		{name: "plantings found", path: "/plantings?q=leek"},
		{name: "plantings not found", path: "/plantings?q=zzzz"},
		{name: "new planting", path: "/plantings/new"},
		{name: "changed planting", path: "/plantings/pot-27t/edit"},
		{name: "faulty planting", path: "/plantings/pot-27t/edit", status: 422, to: faulty("#f-area_m2", "much")},
		{name: "removed planting", path: "/plantings/pot-27t/remove"},
		{name: "ground", path: "/ground"},
		{name: "ground with a change", path: "/ground?site=share&bed=t3&at=2027-06-01&" + later},
		{name: "lost planting", path: "/planting/kal-26/lost"},
		{name: "failing planting", path: "/planting/kal-26/failing"},
		{name: "failed tomatoes", path: "/planting/tom-26/failing"},
		{name: "moved planting", path: "/planting/par-26/move"},
		{name: "faulty loss", path: "/planting/kal-26/failing", status: 422, to: faulty("#f-kg", "much")},
		{name: "hole at the table", path: "/planting/lee-26/lost", to: quarterLost},
		{name: "weather", path: "/weather", to: unfolded},
		{name: "weather of another site", path: "/weather?site=share"},
		{name: "faulty reading", path: "/weather", status: 422, to: faultyReading},
		{name: "new address of a forecast", path: "/addresses/new?site=home"},
		{name: "new instrument", path: "/sensors/new?site=home"},
		{name: "new reading of the weather", path: "/weather_readings/new?site=home"},
		{name: "new day of a forecast", path: "/forecasts/new?site=home"},
		{name: "beds", path: "/beds"},
		{name: "new bed", path: "/beds/new"},
		{name: "new cover", path: "/covers/new?bed=h1"},
		{name: "new site", path: "/sites/new"},
		{name: "drawing", path: "/ground/draw?site=home"},
		{name: "drawing with a bed chosen", path: "/ground/draw?pick=beds/h3"},
		{name: "drawing with a tree chosen", path: "/ground/draw?site=home&pick=features/pear&zoom=2"},
		{name: "drawing of another site", path: "/ground/draw?site=share&pick=features/thorn"},
		{name: "faulty bed on a drawing", path: "/ground/draw?pick=beds/h3", status: 422, to: faultyOnDrawing},
		{name: "new feature", path: "/features/new?site=home"},
		{name: "changed feature", path: "/features/pear/edit"},
		{name: "changed site", path: "/sites/home/edit"},
		{name: "plans", path: "/plans"},
		{name: "next year", path: "/plans/next"},
		{name: "next year with something left out", path: "/plans/next?leave=swc-27"},
		{name: "two plans", path: "/plans/compare"},
		{name: "a plan that is not there", path: "/plans/compare?a=nothing", status: 404},
		{name: "free ground", path: "/ground/free"},
		{name: "free ground that does not fit", path: "/ground/free?from=2027-06-01&until=2027-06-30&try=" + url.QueryEscape("let-27b:area_m2=5")},
		{name: "free ground of no period", path: "/ground/free?from=soon", status: 422},
		{name: "light", path: "/ground/light"},
		{name: "weather files", path: "/weather/files"},
		{name: "weather file with headings nobody knows", path: "/weather/files", to: diaryWaits},
		{name: "weather files that wait no more", path: "/weather/files/found/none", status: 404},
		{name: "light in a summer month", path: "/ground/light?site=share&month=7"},
		{name: "light in no month", path: "/ground/light?month=13", status: 422},
		{name: "what next", path: "/beds/h9/next?from=2027-03-01&until=2027-08-20&area=2", to: adviceThere},
		{name: "what next from hand", path: "/beds/h9/next?hand=yes", to: adviceThere},
		{name: "standing planting", path: "/planting/spi-26", to: adviceThere},
		{name: "bed with covers", path: "/beds/s1", to: unfolded},
		{name: "bed with bare ground", path: "/beds/h10", to: unfolded},
		{name: "bed that keeps its crops", path: "/beds/t1", to: unfolded},
		{name: "faulty soil", path: "/beds/h10", status: 422, to: faultySoil},
		{name: "changed bed", path: "/beds/h10/edit"},
		{name: "week", path: "/week"},
		{name: "month of jobs", path: "/week?days=28&hours=2&people=2&costs=yes", to: unfolded},
		{name: "week that cannot be", path: "/week?days=none", status: 422},
		{name: "faulty answer", path: "/week?days=28", status: 422, to: faultyAnswer},
		{name: "sowing list", path: "/week/sowings"},
		{name: "jobs of one's own", path: "/own_jobs"},
		{name: "new job of one's own", path: "/own_jobs/new"},
		{name: "water by month", path: "/water/use", to: adviceThere},
		{name: "how large a butt", path: "/water/butt", to: unfolded},
		{name: "faulty butt", path: "/water/butt?roof=wide", status: 422},
		{name: "water that is short", path: "/water/short?site=share&left=100&days=10"},
		{name: "faulty water that is short", path: "/water/short?left=some", status: 422},
		{name: "feed with the water", path: "/water/feed"},
		{name: "water sources", path: "/water_sources"},
		{name: "new water source", path: "/water_sources/new"},
		{name: "readings of moisture", path: "/moisture_readings"},
		{name: "new reading of moisture", path: "/moisture_readings/new?bed=h1"},
		{name: "water", path: "/water", to: unfolded},
		{name: "faulty watering", path: "/water", status: 422, to: faultyWatering},
		{name: "days away", path: "/water/away?from=2027-01-10&to=2027-01-24"},
		{name: "days away that cannot be", path: "/water/away?from=2027-01-24&to=2027-01-10", status: 422},
		{name: "helper's note", path: "/water/away/note?from=2027-01-10&to=2027-01-24"},
		{name: "larder", path: "/larder", to: unfolded},
		{name: "larder that was full before", path: "/larder/already"},
		{name: "place in the larder", path: "/stores/rack"},
		{name: "picking", path: "/planting/kal-26/pick"},
		{name: "frost", path: "/frost?minimum=-16", to: unfolded},
		{name: "faulty frost", path: "/frost?minimum=cold", status: 422},
		{name: "risks", path: "/risk", to: unfolded},
		{name: "rule over hours", path: "/risk/hutton", to: unfolded},
		{name: "flights of a pest", path: "/risk/carrot-fly", to: unfolded},
		{name: "rule that is not there", path: "/risk/nothing", status: 404},
		{name: "sighting", path: "/risk/sighting?problem=carrot-fly&bed=h4"},
		{name: "faulty sighting", path: "/risk/sighting?problem=carrot-fly&bed=h4", status: 422, to: faulty("#f-count", "many")},
		{name: "hours of weather", path: "/risk/hours"},
		{name: "faulty count", path: "/larder", status: 422, to: faultyCount},
		{name: "list to give away", path: "/larder/give"},
		{name: "covers owned", path: "/gear"},
		{name: "new covers owned", path: "/gear/new"},
		{name: "seed on hand", path: "/onhand"},
		{name: "new seed on hand", path: "/onhand/new"},
		{name: "crop book", path: "/crops"},
		{name: "crop book by family", path: "/crops?by=family"},
		{name: "crop not found", path: "/crops?name=zuchinni"},
		{name: "crop", path: "/crop/carrot", to: yearThere},
		{name: "crop with an own number", path: "/crop/runner-bean?use=table&site=share", to: yearThere},
		{name: "perennial crop", path: "/crop/rhubarb", to: yearThere},
		{name: "perennial planting", path: "/planting/rhu-21"},
		{name: "own number", path: "/crops/new?crop=carrot&use=table&parameter=days_seed&unit=d&value=70"},
		{name: "wants", path: "/wants"},
		{name: "new want", path: "/wants/new"},
		{name: "new gap left", path: "/gaps_left/new"},
		{name: "new purchase", path: "/purchases/new"},
		{name: "new visit", path: "/visits/new"},
		{name: "new group", path: "/groups/new"},
		{name: "new member", path: "/members/new"},
		{name: "stores", path: "/stores"},
		{name: "new store", path: "/stores/new"},
		{name: "history", path: "/history"},
		{name: "credits", path: "/credits"},
		{name: "nowhere", path: "/nowhere", status: 404},
	}
}

// yearThere waits for the year of a crop.
func yearThere(_ *testing.T, b *tab) { b.yearThere() }

// quarterLost tells that a quarter of a planting is lost.
func quarterLost(_ *testing.T, b *tab) {
	b.press(`input[name="share"][value="0.25"]`)
	b.follow(".row-form button.main")
}

// faulty sends a form with nonsense in one field.
func faulty(field, text string) func(*testing.T, *tab) {
	return func(t *testing.T, b *tab) {
		b.fill(field, text)
		b.follow(".row-form button.main")
		b.wait("what is wrong has the focus", `document.activeElement.matches(".errs")`)
	}
}

// Every page holds to the rules of the checker in light and dark, stays inside
// the screen, can be hit with a thumb and leaves the browser content.
func TestEveryPage(t *testing.T) {
	beside(t)
	s, seen := serveSample(t), &looks{shown: map[string][]shownElement{}}
	for _, on := range screens {
		t.Run(on.name, func(t *testing.T) {
			beside(t)
			b := openTab(t, s, on)
			for _, p := range samplePages() {
				t.Run(p.name, func(t *testing.T) { b.look(t, p, seen) })
			}
		})
	}
}

// look goes to a page and holds it to all that every page must be.
func (b *tab) look(t *testing.T, p onePage, seen *looks) {
	outer := b.t
	b.t = t
	defer func() { b.t = outer }()
	b.visit(p.path)
	if p.to != nil {
		p.to(t, b)
	}
	b.inside(t)
	b.reachable(t)
	b.loadAxe()
	now := eval[[]shownElement](b, shownElements)
	if seen.sameAsBefore(p.name, now) {
		b.accessible(t, placedRun)
	} else {
		b.everythingAsked(t)
		seen.asked(p.name, now)
	}
	var expected []string
	if p.status != 0 {
		expected = append(expected, fmt.Sprintf("status of %d", p.status))
	}
	b.quiet(expected...)
}

// inside fails when the page is wider than the screen or a word is cut off at its side.
func (b *tab) inside(t *testing.T) {
	t.Helper()
	wide := eval[[]string](b, `(() => {
		const out = [], width = document.documentElement.clientWidth;
		if (document.scrollingElement.scrollWidth > width)
			out.push("the page is " + document.scrollingElement.scrollWidth + " px wide on " + width);
		const swept = e => { for (let p = e.parentElement; p; p = p.parentElement) {
			const o = getComputedStyle(p).overflowX; if (o === "auto" || o === "scroll" || o === "hidden" || o === "clip") return true } return false };
		if (out.length) for (const e of document.querySelectorAll("body *")) {
			const r = e.getBoundingClientRect();
			if (r.width && r.right > width + 1 && !swept(e) && !e.closest("svg"))
				out.push(e.tagName + "." + e.className + " reaches to " + Math.round(r.right) + ": " + e.textContent.trim().slice(0, 40));
		}
		return out.slice(0, 8);
	})()`)
	for _, w := range wide {
		t.Errorf("%s", w)
	}
}

// Sizes of what is pressed [px]: a thumb's on a phone; with a mouse the least of
// the Web Content Accessibility Guidelines 2.2, 2.5.8.
const (
	thumb   = 44
	pointer = 24
)

// reachable fails for links, buttons and fields that a finger does not hit. Those
// inside charts and running text are left out, as in the guidelines.
func (b *tab) reachable(t *testing.T) {
	t.Helper()
	least := pointer
	if b.screen.touch {
		least = thumb
	}
	small := eval[[]string](b, fmt.Sprintf(`(() => {
		const least = %d, out = [];
		const inText = e => {
			if (e.tagName !== "A" || getComputedStyle(e).display !== "inline") return false;
			const around = e.closest("p, li, td, dd, figcaption");
			return !!around && around.textContent.trim().length > e.textContent.trim().length + 1;
		};
		for (const e of document.querySelectorAll("a[href], button, input:not([type=hidden]), select, textarea, summary")) {
			if (e.closest("svg") || e.closest(".skip") || e.matches(".skip") || !e.checkVisibility({checkVisibilityCSS: true}) || inText(e)) continue;
			let r = e.getBoundingClientRect();
			const label = e.closest("label");
			if (label) r = label.getBoundingClientRect();
			if (r.width < 1 || r.height < 1) continue;
			if (r.height < least - 0.5 || r.width < least - 0.5)
				out.push(e.tagName.toLowerCase() + " " + JSON.stringify((e.textContent || e.name).trim().slice(0, 30)) + " is "
					+ Math.round(r.width) + " x " + Math.round(r.height) + " in ." + (e.parentElement.className || e.parentElement.tagName));
		}
		return out;
	})()`, least))
	for i, s := range small {
		if i == 4 {
			t.Errorf("and %d more", len(small)-i)
			break
		}
		t.Errorf("under %d px: %s", least, s)
	}
}

// checked holds the page at hand to what every page must be.
func (b *tab) checked(t *testing.T) {
	t.Helper()
	b.inside(t)
	b.reachable(t)
	b.loadAxe()
	b.everythingAsked(t)
}

// everythingAsked asks all of the checker, in both themes.
func (b *tab) everythingAsked(t *testing.T) {
	t.Helper()
	b.accessible(t, wholeRun)
	b.do(dark.emulate())
	b.accessible(t, coloursRun)
	b.do(light.emulate())
}
