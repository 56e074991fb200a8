package web

import (
	"flag"
	"net/http"
	"os"
	"slices"
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/words"
)

var update = flag.Bool("update", false, "write the list of the pages")

// pagesFile lists what can be asked for. The tests in the browser hold their own list of
// pages against it.
const pagesFile = "testdata/pages.txt"

// notPages are patterns that stand for no page of words, and why.
var notPages = map[string]string{
	"GET /static/":      "the stylesheet, the script and the pictures",
	"GET /week.ics":     "a calendar; its texts are tested with the feed",
	"GET /start":        "leads to the table once there is a holding; tested without one",
	"GET /start/places": "a part of the start's page; tested without a holding",
}

// asked are the patterns of a server that answer a GET.
func asked(t *testing.T) (patterns []string, routes *router) {
	t.Helper()
	s, err := New(Options{Offices: noOffice, Words: words.English()})
	if err != nil {
		t.Fatal(err)
	}
	routes = s.routes()
	for _, p := range routes.patterns {
		if strings.HasPrefix(p, "GET ") {
			patterns = append(patterns, p)
		}
	}
	slices.Sort(patterns)
	return patterns, routes
}

// Every page is read: none that can be asked for is left out, all texts come from the
// catalogue, and nothing on them is unsound.
func TestEveryPage(t *testing.T) {
	h, office := garden(t, words.English())
	pages := pagesOf(t, h, office)
	t.Run("is read", func(t *testing.T) { areAllRead(t, pages) })
	t.Run("comes from the catalogue", func(t *testing.T) { comesFromTheCatalogue(t, office, pages) })
	t.Run("is sound", func(t *testing.T) { areSound(t, h, pages) })
}

// areAllRead holds the addresses against the patterns of the server.
func areAllRead(t *testing.T, pages []string) {
	patterns, routes := asked(t)
	read := map[string]bool{}
	for _, path := range pages {
		r, err := http.NewRequest(http.MethodGet, path, nil)
		if err != nil {
			t.Fatal(err)
		}
		_, pattern := routes.ServeMux.Handler(r)
		read[pattern] = true
	}
	for _, p := range patterns {
		if why, left := notPages[p]; read[p] == left {
			t.Errorf("%s: read %v, left out because %q; add it to pagesOf or to notPages", p, read[p], why)
		}
	}
	list := strings.Join(patterns, "\n") + "\n"
	if *update {
		if err := os.WriteFile(pagesFile, []byte(list), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if kept, err := os.ReadFile(pagesFile); err != nil || string(kept) != list {
		t.Errorf("%v: %s does not list the pages; run the test with -update", err, pagesFile)
	}
}

// pagesOf are the addresses of all pages, with a line or two of each kind. The holding
// gets a row in each table that has a form and no row.
func pagesOf(t *testing.T, h http.Handler, office *desk.Office) []string {
	t.Helper()
	worksOut(t, office)
	pages := []string{"/", "/vegetable/carrot", "/vegetable/leek/mend?on=2028-02-28", "/vegetable/courgette/trim",
		"/planting/bee-27a", "/planting/rhu-21", "/planting/spi-26", "/planting/let-27e/beside", "/planting/pot-27m/beside", "/planting/kal-26/pick",
		"/planting/kal-26/lost", "/planting/tom-26/failing", "/planting/par-26/move",
		"/plantings", "/plantings?by=bed&show=all&q=bean", "/plantings?q=unicorn",
		"/beds", "/beds/h1", "/beds/s1", "/beds/h10", "/beds/h9/next?from=2027-03-01&until=2027-08-20&area=2", "/beds/h9/next?hand=yes", "/beds/h9/next?from=soon", "/beds/h3/next?from=2028-06-30",
		"/ground", "/ground?site=share&bed=t3&try=pot-27m%3Abed%3Ds5", "/ground/free", "/ground/free?from=soon",
		"/ground/light", "/ground/light?site=share&month=7", "/ground/light?month=13",
		"/ground/draw?site=home", "/ground/draw?pick=beds/h3", "/ground/draw?site=share&pick=features/thorn&zoom=2", "/features/pear/remove?back=/ground/draw",
		"/wants", "/larder", "/larder/give", "/larder/already", "/stores", "/stores/rack", "/stores/sand/remove", "/history", "/credits", "/no-such-page",
		"/crops", "/crops?by=family", "/crops?name=bean", "/crops?name=zuchinni", "/crop/carrot", "/crop/runner-bean?use=table&site=share", "/crop/rhubarb",
		"/crops/new?crop=carrot&use=table&parameter=days_seed&unit=d", "/covers/new?bed=h1", "/covers/h8-fleece/edit", "/sites/home/edit", "/gear", "/onhand",
		"/plans", "/plans/next", "/plans/compare", "/plans/compare?a=nothing", "/draft",
		"/week", "/week?days=28&hours=2&people=2&costs=yes", "/week?days=99", "/week/sowings", "/own_jobs",
		"/water", "/water/use", "/water/butt", "/water/butt?roof=-1", "/water/short?site=share&left=100&days=10", "/water/short?left=-1", "/water/feed", "/water_sources",
		"/moisture_readings", "/water/away?from=2027-01-10&to=2027-01-24", "/water/away?from=2027-01-24&to=2027-01-10", "/water/away/note?from=2027-01-10&to=2027-01-24",
		"/frost", "/frost?minimum=-16", "/frost?minimum=99", "/risk", "/risk/hutton", "/risk/downcast", "/risk/carrot-fly", "/risk/nothing", "/risk/sighting?problem=carrot-fly&bed=h4", "/risk/hours",
		"/weather", "/weather?site=share", "/weather/files", "/weather/files/found/none"}
	return append(append(pages, holeOf(t, h)), rowPages(t, h, office)...)
}

// worksOut waits for what takes a while before it is looked at.
func worksOut(t *testing.T, office *desk.Office) {
	t.Helper()
	if _, err := office.TableView(nil); err != nil {
		t.Fatal(err)
	}
	if _, err := office.AdviseView(desk.AdviseQuery{Bed: "h9", From: cal.Of(2027, 3, 1), Until: cal.Of(2027, 8, 20), AreaM2: 2}, nil); err != nil {
		t.Fatal(err)
	}
	if _, err := office.RefillView(desk.AdviseQuery{Bed: "h9", From: cal.None, Until: cal.None}, nil); err != nil {
		t.Fatal(err)
	}
	if _, err := office.KeepOrClearView("spi-26", nil); err != nil {
		t.Fatal(err)
	}
}

// holeOf tells a loss and is where that leads: to the hole it leaves at the table.
func holeOf(t *testing.T, h http.Handler) string {
	t.Helper()
	w := post(t, h, formTo(t, open(t, h, "/planting/lee-26/lost"), "/planting/lee-26/lost"), "share", "0.25")
	if at := w.Header().Get("Location"); strings.HasPrefix(at, "/planting/lee-26/hole") {
		return at
	}
	t.Fatalf("a loss leads to %q", w.Header().Get("Location"))
	return ""
}

// firstRows are what is typed into the forms of tables in which the demo has nothing.
var firstRows = []struct {
	table string
	typed []string
}{
	{"gaps_left", []string{"vegetable", "leek", "from", "2027-05-01", "to", "2027-05-20"}},
	{"purchases", []string{"vegetable", "leek", "from", "2027-05-21", "to", "2027-06-20", "kg_per_week", "1"}},
	{"visits", []string{"from", "2027-07-01", "to", "2027-07-10", "eaters", "2"}},
	{"groups", []string{"name", "Larkmeer greens"}},
	{"members", []string{"vegetable", "kale", "preference", "2"}},
	{"weather_readings", []string{"date", "2027-01-03", "tmin_c", "1", "tmax_c", "7", "site", "home"}},
	{"forecasts", []string{"told", "2027-01-04", "date", "2027-01-05", "tmin_c", "-1", "tmax_c", "4", "site", "home"}},
	{"addresses", []string{"site", "home", "url", "https://weather.example/larkmeer", "layout", "csv"}},
	{"sensors", []string{"name", "Larkmeer thermometer", "site", "home", "topic", "larkmeer/air", "quantity", "temperature", "unit", "C"}},
	{"own_jobs", []string{"name", "Larkmeer gate", "date", "2027-01-09", "minutes", "20"}},
}

// rowPages are the forms of all tables: for a new row, and for the first there is.
func rowPages(t *testing.T, h http.Handler, office *desk.Office) []string {
	t.Helper()
	for _, f := range firstRows {
		if form := formTo(t, open(t, h, "/"+f.table+"/new"), "/"+f.table+"/new"); len(mustRows(t, office, f.table)) == 0 {
			typed := f.typed
			if f.table == "members" {
				typed = append(typed, "group", mustRows(t, office, "groups")[0]["id"])
			}
			follow(t, h, post(t, h, form, typed...))
		}
	}
	var out []string
	patterns, _ := asked(t)
	for _, p := range patterns {
		table, what, found := strings.Cut(strings.TrimPrefix(p, "GET /"), "/")
		switch {
		case found && what == "new":
			out = append(out, "/"+table+"/new")
		case found && (what == "{id}/edit" || what == "{id}/remove"):
			out = append(out, "/"+table+"/"+mustRows(t, office, table)[0]["id"]+strings.TrimPrefix(what, "{id}"))
		}
	}
	return out
}
