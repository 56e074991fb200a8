package web

import (
	"net/http"
	"strings"
	"testing"

	"garner/internal/words"
)

// What cannot be drawn is told at the thing with how to mend it; what was typed
// is still there, and nothing is written.
func TestWhatCannotBeDrawnIsTold(t *testing.T) {
	h, office := garden(t, words.English())
	before, err := office.Export()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		key, says string
		typed     []string
	}{
		{"beds/h3", "Move it in", []string{"x_m", "18.5"}},
		{"beds/h3", "cross each other", []string{"shape", "outline", "outline", "0 0; 6 1.2; 6 0; 0 1.2"}},
		{"beds/h3", "hold no ground", []string{"shape", "outline", "outline", "0 0; 3 0; 6 0"}},
		{"beds/h3", "cannot be read", []string{"shape", "outline", "outline", "round the corner"}},
		{"beds/h3", "0.05", []string{"width_m", "0"}},
		{"beds/h3", "two smaller lengths", []string{"do", "cut", "cut_length", "7", "cut_width", "0.5", "cut_corner", "upper_left"}},
		{"features/pear", "not below its top", []string{"base_m", "6"}},
		{"features/wall", "", []string{"length_m", "long"}},
	} {
		w := post(t, h, chosenForm(t, h, c.key), c.typed...)
		page := read(t, w.Body.String())
		if w.Code != http.StatusUnprocessableEntity {
			t.Errorf("%v: %d", c.typed, w.Code)
			continue
		}
		panel := page.one(t, "section", "data-chosen", c.key)
		if told := panel.words(); !strings.Contains(told, c.says) || len(panel.all(func(e *element) bool { return strings.HasPrefix(e.attrs["class"], "err") })) == 0 {
			t.Errorf("%v: not told %q in %.400q", c.typed, c.says, told)
		}
		filled := panel.one(t, "form", "data-sent", "").filled()
		for i := 0; i+1 < len(c.typed); i += 2 {
			if name := c.typed[i]; name != "do" && filled[name] != c.typed[i+1] {
				t.Errorf("%v: %s is %q again", c.typed, name, filled[name])
			}
		}
	}
	after, err := office.Export()
	if err != nil {
		t.Fatal(err)
	}
	for name := range before {
		if string(before[name]) != string(after[name]) {
			t.Errorf("%s was changed", name)
		}
	}
}

// Beds over each other are kept, and told of on the page.
func TestOverlapsAreKeptAndTold(t *testing.T) {
	h, office := garden(t, words.English())
	if page := open(t, h, "/ground/draw?site=home"); len(page.all(func(e *element) bool { return strings.Contains(e.attrs["class"], "draw-odd") })) > 0 {
		t.Error("the demo's own plan is odd")
	}
	page := follow(t, h, post(t, h, chosenForm(t, h, "beds/h3"), "y_m", "10"))
	if drawnBed(t, office, "h3").At.YM != 10 {
		t.Error("it was not kept")
	}
	if told := page.one(t, "section", "class", "part draw-odd").words(); !strings.Contains(told, "lie over each other") || !strings.Contains(told, "Home 4") {
		t.Errorf("told: %s", told)
	}
	page = follow(t, h, post(t, h, chosenForm(t, h, "features/pear"), "x_m", "11", "y_m", "6"))
	if told := page.one(t, "section", "class", "part draw-odd").words(); !strings.Contains(told, "Pear stands in Strawberry bed") {
		t.Errorf("told: %s", told)
	}
}

// Two hands at one bed: the second is told, and keeps what it typed over it when
// it says so again.
func TestTwoHandsAtOneDrawing(t *testing.T) {
	h, office := garden(t, words.English())
	first, second := chosenForm(t, h, "beds/h3"), chosenForm(t, h, "beds/h3")
	follow(t, h, post(t, h, first, "x_m", "4.7"))
	w := post(t, h, second, "y_m", "11.5")
	page := read(t, w.Body.String())
	if w.Code != http.StatusUnprocessableEntity || !strings.Contains(page.words(), "changed elsewhere meanwhile") {
		t.Fatalf("%d: %.300s", w.Code, page.words())
	}
	again := page.one(t, "section", "data-chosen", "beds/h3").one(t, "form", "data-sent", "")
	follow(t, h, post(t, h, again))
	if at := drawnBed(t, office, "h3").At; at.YM != 11.5 {
		t.Errorf("it lies at %v", at)
	}
}

// A kind of thing there is not is refused, and nothing is added.
func TestAddingWhatThereIsNot(t *testing.T) {
	h, office := garden(t, words.English())
	form := open(t, h, "/ground/draw?site=home").one(t, "section", "class", "part draw-add").one(t, "form")
	before, err := office.Rows("beds")
	if err != nil {
		t.Fatal(err)
	}
	if w := post(t, h, form, "what", "castle"); w.Code != http.StatusUnprocessableEntity {
		t.Errorf("%d", w.Code)
	}
	if after, err := office.Rows("beds"); err != nil || len(after) != len(before) {
		t.Errorf("%d beds, were %d, %v", len(after), len(before), err)
	}
}
