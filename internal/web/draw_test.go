package web

import (
	"math"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"

	"garner/internal/desk"
	"garner/internal/holding"
	"garner/internal/place"
	"garner/internal/words"
)

// drawnBed is a bed as it stands.
func drawnBed(t *testing.T, office *desk.Office, id string) place.Bed {
	t.Helper()
	h, err := office.Holding()
	if err != nil {
		t.Fatal(err)
	}
	b, known := bedWith(h, id)
	if !known {
		t.Fatalf("no bed %s", id)
	}
	return b
}

// chosenForm is the form beside the drawing of what is chosen.
func chosenForm(t *testing.T, h http.Handler, key string) *element {
	t.Helper()
	page := open(t, h, "/ground/draw?pick="+url.QueryEscape(key))
	return page.one(t, "section", "data-chosen", key).one(t, "form", "data-sent", "")
}

// stepped presses a button of the form beside the drawing.
func stepped(t *testing.T, h http.Handler, key, do string) *element {
	t.Helper()
	return follow(t, h, post(t, h, chosenForm(t, h, key), "do", do))
}

func TestStepsOfADrawnBed(t *testing.T) {
	h, office := garden(t, words.English())
	was := drawnBed(t, office, "h3")
	for _, do := range []string{"right", "up", "up", "turn_left", "longer", "wider"} {
		stepped(t, h, "beds/h3", do)
	}
	got := drawnBed(t, office, "h3")
	want := was
	want.At = place.Spot{XM: 4.6, YM: 11.6, TurnDeg: 5}
	want.LengthM, want.WidthM = 6.1, 1.3
	if got != want {
		t.Errorf("the bed is %+v, want %+v", got, want)
	}
	for _, do := range []string{"left", "down", "down", "turn_right", "shorter", "narrower"} {
		stepped(t, h, "beds/h3", do)
	}
	if got, want := drawnBed(t, office, "h3"), was; got.At != want.At || got.LengthM != want.LengthM || got.WidthM != want.WidthM {
		t.Errorf("back again the bed is %+v, was %+v", got, want)
	}
	if said := stepped(t, h, "beds/h3", "right").words(); !strings.Contains(said, "Moved") {
		t.Errorf("a step to the right is told as %.400s", said)
	}
}

// Undo and Redo beside the drawing go back and forth over what was drawn.
func TestDrawingIsTakenBackAndDoneAgain(t *testing.T) {
	h, office := garden(t, words.English())
	stepped(t, h, "beds/h3", "right")
	stepped(t, h, "beds/h4", "left")
	press := func(id string) {
		t.Helper()
		page := open(t, h, "/ground/draw?site=home")
		for _, f := range page.named("form") {
			for _, b := range f.named("button") {
				if b.attrs["id"] == id {
					if _, off := b.attrs["disabled"]; off {
						t.Fatalf("%s cannot be pressed", id)
					}
					follow(t, h, post(t, h, f))
					return
				}
			}
		}
		t.Fatalf("no button %s", id)
	}
	state := func(when string, x3, x4 float64) {
		t.Helper()
		if a, b := drawnBed(t, office, "h3").At.XM, drawnBed(t, office, "h4").At.XM; a != x3 || b != x4 {
			t.Errorf("%s the beds are at %v and %v, want %v and %v", when, a, b, x3, x4)
		}
	}
	state("moved", 4.6, 4.4)
	press("draw-undo")
	state("one back", 4.6, 4.5)
	press("draw-undo")
	state("two back", 4.5, 4.5)
	press("draw-redo")
	state("one forward", 4.6, 4.5)
	press("draw-redo")
	state("two forward", 4.6, 4.4)
}

// What a script sends of a thing it moved is a few cells and no more.
func TestOnlyWhatWasSentIsWritten(t *testing.T) {
	h, office := garden(t, words.English())
	was := drawnBed(t, office, "h5")
	form := chosenForm(t, h, "beds/h5").filled()
	body := url.Values{"base": {form["base"]}, "entry": {"movedbyscript"}, "x_m": {"4.85"}}
	w := ask(h, "POST", "/ground/draw/beds/h5?site=home&pick=beds%2Fh5", body.Encode())
	if w.Code != http.StatusSeeOther || !strings.HasPrefix(w.Header().Get("Location"), "/ground/draw?") {
		t.Fatalf("%d to %s", w.Code, w.Header().Get("Location"))
	}
	want := was
	want.At.XM = 4.85
	if got := drawnBed(t, office, "h5"); got != want {
		t.Errorf("the bed is %+v, want %+v", got, want)
	}
}

// Each corner can be cut out.
func TestCorners(t *testing.T) {
	for corner, want := range map[string]string{
		"upper_right": "0 0; 6 0; 6 0.8; 4 0.8; 4 1.2; 0 1.2", "lower_left": "6 1.2; 0 1.2; 0 0.4; 2 0.4; 2 0; 6 0",
		"upper_left": "6 0; 0 0; 0 0.8; 2 0.8; 2 1.2; 6 1.2", "lower_right": "0 1.2; 6 1.2; 6 0.4; 4 0.4; 4 0; 0 0",
	} {
		turn := &drawnTurn{row: map[string]string{"length_m": "6", "width_m": "1.2"}, cells: map[string]string{}}
		if err := turn.cut(map[string]string{"cut_length": "2", "cut_width": "0,4", "cut_corner": corner}); err != nil {
			t.Fatal(err)
		}
		corners, ok := place.ParseOutline(turn.cells["outline"])
		if turn.cells["outline"] != want || !ok || place.CrossesItself(corners) || math.Abs(place.Area(corners)-6.4) > 1e-9 {
			t.Errorf("%s: %s, want %s", corner, turn.cells["outline"], want)
		}
	}
}

// A corner cut out makes an L, which is stretched with its length and becomes a
// rectangle again.
func TestAnLIsCutFromARectangle(t *testing.T) {
	h, office := garden(t, words.English())
	follow(t, h, post(t, h, chosenForm(t, h, "beds/h4"), "do", "cut", "cut_length", "2", "cut_width", "0.4", "cut_corner", "lower_left"))
	if b := drawnBed(t, office, "h4"); b.Shape != place.ByOutline || math.Abs(b.AreaM2()-6.4) > 1e-9 {
		t.Errorf("%s of %v m2, want 6.4", b.Outline, b.AreaM2())
	}
	follow(t, h, post(t, h, formTo(t, open(t, h, "/beds/h4/edit"), "/beds/h4/edit"), "length_m", "9"))
	if b := drawnBed(t, office, "h4"); math.Abs(b.AreaM2()-9.6) > 1e-9 {
		t.Errorf("half as long again it is %s of %v m2", b.Outline, b.AreaM2())
	}
	follow(t, h, post(t, h, chosenForm(t, h, "beds/h4"), "length_m", "6", "shape", "rectangle"))
	if b := drawnBed(t, office, "h4"); b.Outline != "" || math.Abs(b.AreaM2()-7.2) > 1e-9 {
		t.Errorf("as a rectangle it is %q of %v m2", b.Outline, b.AreaM2())
	}
	follow(t, h, post(t, h, chosenForm(t, h, "beds/h4"), "shape", "outline"))
	if b := drawnBed(t, office, "h4"); b.Outline != "0 0; 6 0; 6 1.2; 0 1.2" {
		t.Errorf("an outline begins as %q", b.Outline)
	}
	follow(t, h, post(t, h, chosenForm(t, h, "beds/h4"), "shape", "round"))
	if b := drawnBed(t, office, "h4"); b.Shape != place.Round || b.Outline != "" {
		t.Errorf("round it is %+v", b)
	}
}

// Each kind of thing is added with one press, inside the plan and clear of all
// beds, under the name given or one of its own.
func TestThingsAreAdded(t *testing.T) {
	h, office := garden(t, words.English())
	follow(t, h, post(t, h, open(t, h, "/ground/draw?site=share").one(t, "form", "action", "/ground/draw/sites/share?site=share"), "plan_depth_m", "40"))
	for i, n := range newThings {
		name := ""
		if i%2 == 0 {
			name = "My <" + n.name + ">"
		}
		form := open(t, h, "/ground/draw?site=share").one(t, "section", "class", "part draw-add").one(t, "form")
		page := follow(t, h, post(t, h, form, "what", n.name, "name", name))
		chosen := page.all(func(e *element) bool { return e.attrs["data-chosen"] != "" })
		if len(chosen) != 1 || !strings.HasPrefix(chosen[0].attrs["data-chosen"], n.table+"/") {
			t.Fatalf("%s is not chosen once added", n.name)
		}
		if title := chosen[0].one(t, "h2").words(); name != "" && title != name || title == "" {
			t.Errorf("%s is called %q", n.name, title)
		}
	}
	odd, err := office.OddlyDrawn()
	if err != nil || len(odd) > 0 {
		t.Errorf("the new things lie over others: %v %v", odd, err)
	}
}

// A bed is taken off the plan, waits beside it, and is put on it again.
func TestABedWaitsBesideThePlan(t *testing.T) {
	h, office := garden(t, words.English())
	page := stepped(t, h, "beds/h3", "off")
	if drawnBed(t, office, "h3").At.IsSet() {
		t.Fatal("it is still on the plan")
	}
	tray := page.one(t, "section", "class", "part draw-tray")
	if !strings.Contains(tray.words(), "Home 3") {
		t.Errorf("waiting: %s", tray.words())
	}
	if len(page.all(func(e *element) bool { return e.attrs["data-thing"] == "beds/h3" })) > 0 {
		t.Error("it is still drawn")
	}
	follow(t, h, post(t, h, tray.one(t, "form")))
	if !drawnBed(t, office, "h3").At.IsSet() {
		t.Error("it is not on the plan")
	}
	if odd, _ := office.OddlyDrawn(); len(odd) > 0 {
		t.Errorf("it lies over others: %v", odd)
	}
}

// A site without a plan asks for its size first; a plan is not made smaller than
// what is drawn on it.
func TestAPlanBegins(t *testing.T) {
	h, office := garden(t, words.English())
	row, err := office.Row("sites", "home")
	if err != nil {
		t.Fatal(err)
	}
	small := open(t, h, "/ground/draw?site=home").one(t, "form", "action", "/ground/draw/sites/home?site=home")
	w := post(t, h, small, "plan_width_m", "8")
	if told := read(t, w.Body.String()).words(); w.Code != http.StatusUnprocessableEntity || !strings.Contains(told, "make the plan larger") {
		t.Errorf("%d: %.300s", w.Code, told)
	}
	undrawn(t, office, row)
	page := open(t, h, "/ground/draw?site=home")
	if len(page.all(func(e *element) bool { return e.attrs["class"] == "site" })) > 0 {
		t.Error("a plan without a size is drawn")
	}
	first := page.one(t, "form", "action", "/ground/draw/sites/home?site=home")
	if w := post(t, h, first, "plan_width_m", "12"); w.Code != http.StatusUnprocessableEntity || !strings.Contains(w.Body.String(), "Give both") {
		t.Errorf("a width alone gets %d", w.Code)
	}
	page = follow(t, h, post(t, h, first, "plan_width_m", "12", "plan_depth_m", "30", "up_deg", "225"))
	if told := page.words(); !strings.Contains(told, "12 by 30 m") || !strings.Contains(told, "south-west") {
		t.Errorf("told: %.300s", told)
	}
	page.one(t, "svg", "class", "site")
}

// undrawn takes the size of a site's plan and all beds off it.
func undrawn(t *testing.T, office *desk.Office, row *desk.RowView) {
	t.Helper()
	h, err := office.Holding()
	if err != nil {
		t.Fatal(err)
	}
	bare := *h
	bare.Beds, bare.Sites = append([]place.Bed{}, h.Beds...), append([]place.Site{}, h.Sites...)
	for i := range bare.Beds {
		bare.Beds[i].At = place.Spot{}
	}
	for i := range bare.Sites {
		if bare.Sites[i].ID == row.ID {
			bare.Sites[i].PlanWidthM, bare.Sites[i].PlanDepthM = 0, 0
		}
	}
	replacedBy(t, office, &bare)
}

func replacedBy(t *testing.T, office *desk.Office, h *holding.Holding) {
	t.Helper()
	if _, err := office.Replace(desk.Author{Entry: "undrawnplan", At: "2027-01-04T09:00:00Z"}, h); err != nil {
		t.Fatal(err)
	}
}

// The drawing of a fragment is that of the page, and the answer to a fault is a
// fragment too.
func TestDrawingInParts(t *testing.T) {
	h, _ := garden(t, words.English())
	r := httptest.NewRequest("GET", "http://localhost/ground/draw?site=home&pick=beds/h3", nil)
	r.Header.Set(fragmentHeader, "draw")
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	if body := w.Body.String(); w.Code != http.StatusOK || strings.Contains(body, "<html") || !strings.Contains(body, `data-part="drawing"`) {
		t.Errorf("%d %.200s", w.Code, body)
	}
	for path, status := range map[string]int{"/ground/draw?site=nowhere": 404, "/ground/draw?pick=beds/none": 200, "/ground/draw?zoom=900": 200, "/ground/draw?zoom=x": 200} {
		if w := ask(h, "GET", path, ""); w.Code != status {
			t.Errorf("%s: %d, want %d", path, w.Code, status)
		}
	}
	if w := ask(h, "POST", "/ground/draw/plans/x", "base=0"); w.Code != http.StatusNotFound {
		t.Errorf("another table: %d", w.Code)
	}
}

// A bed that is turned is put where there is room for it as it lies, also where it
// would not fit unturned.
func TestATurnedBedIsPutOnThePlan(t *testing.T) {
	h, office := garden(t, words.English())
	follow(t, h, post(t, h, open(t, h, "/ground/draw?site=share").one(t, "form", "action", "/ground/draw/sites/share?site=share"), "plan_depth_m", "40"))
	stepped(t, h, "beds/s1", "off")
	page := follow(t, h, post(t, h, chosenForm(t, h, "beds/s1"), "length_m", "20", "width_m", "1", "turn_deg", "90"))
	follow(t, h, post(t, h, page.one(t, "section", "class", "part draw-tray").one(t, "form")))
	if b := drawnBed(t, office, "s1"); !b.At.IsSet() || b.At.TurnDeg != 90 {
		t.Errorf("it lies at %+v", b.At)
	}
	if odd, err := office.OddlyDrawn(); err != nil || len(odd) > 0 {
		t.Errorf("it lies over others: %v %v", odd, err)
	}
}

// Things without a name of their own are never called alike, also where one of
// before is gone.
func TestNewThingsAreNotCalledAlike(t *testing.T) {
	h, office := garden(t, words.English())
	add := func() string {
		t.Helper()
		form := open(t, h, "/ground/draw?site=home").one(t, "section", "class", "part draw-add").one(t, "form")
		page := follow(t, h, post(t, h, form, "what", "pot", "name", ""))
		return page.all(func(e *element) bool { return e.attrs["data-chosen"] != "" })[0].attrs["data-chosen"]
	}
	first := add()
	add()
	remove := "/" + first + "/remove"
	follow(t, h, post(t, h, formTo(t, open(t, h, remove), remove)))
	add()
	now, err := office.Holding()
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	for _, b := range now.Beds {
		if seen[b.Name] {
			t.Errorf("two beds are called %s", b.Name)
		}
		seen[b.Name] = true
	}
}

// A new site leads to its own drawing, and not to that of the first; what must be
// chosen and was not is asked for in words a person would use.
func TestANewSiteLeadsToItsDrawing(t *testing.T) {
	h, _ := garden(t, words.English())
	form := formTo(t, open(t, h, "/sites/new"), "/sites/new")
	page := follow(t, h, post(t, h, form, "name", "Allotment", "latitude_deg", "51.7", "longitude_deg", "-1.2", "elevation_m", "60"))
	if title := page.one(t, "h1").words(); title != "Plan of Allotment" {
		t.Errorf("it leads to %q", title)
	}
	ground := open(t, h, "/ground?site=allotment").one(t, "main") // computed with the site's weather
	if said := ground.words(); !strings.Contains(said, "There is no bed here yet") || strings.Contains(said, "Choose a bed") {
		t.Errorf("of ground without a bed: %q", said)
	}
	ground.one(t, "a", "href", "/beds/new?site=allotment")
	w := post(t, h, formTo(t, open(t, h, "/onhand/new"), "/onhand/new"), "amount", "5")
	if told := read(t, w.Body.String()).one(t, "div", "id", "f-grown-wrong").words(); w.Code != http.StatusUnprocessableEntity || told != "Choose one of the list." {
		t.Errorf("%d: %q", w.Code, told)
	}
}

// Where no plan is drawn no light is spoken of: the ground's key is of the beds
// alone, and the page of the light leads to the plan. A plan that is turned off the
// compass is told by its bearing.
func TestGroundAndLightWithoutAPlan(t *testing.T) {
	h, err := desk.Sample("south")
	if err != nil {
		t.Fatal(err)
	}
	s, _ := serverOver(h, words.English())
	if _, html := get(t, s, "/ground"); !strings.Contains(read(t, html).words(), "faces 20 degrees") {
		t.Error("a plan turned by 20 degrees is told otherwise")
	}
	h.Sites[0].PlanWidthM, h.Sites[0].PlanDepthM = 0, 0
	for i := range h.Beds {
		h.Beds[i].At = place.Spot{}
	}
	s, _ = serverOver(h, words.English())
	_, html := get(t, s, "/ground")
	if key := read(t, html).one(t, "p", "class", "plan-key").words(); strings.Contains(key, "light") {
		t.Errorf("the key speaks of light: %q", key)
	}
	_, html = get(t, s, "/ground/light")
	page := read(t, html)
	if n := len(page.all(func(e *element) bool { return strings.HasPrefix(e.attrs["href"], "/ground/draw") })); n != 1 {
		t.Errorf("%d links to the plan", n)
	}
	if said := page.one(t, "main").words(); strings.Contains(said, "January") || strings.Count(said, "not drawn") != 1 {
		t.Errorf("told: %q", said)
	}
}
