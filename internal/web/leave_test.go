package web

import (
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"garner/internal/words"
)

var leaveButton = regexp.MustCompile(`<button class="leave[^>]* name="try" value="([^"]*)"`)

// Every gap of the table is left in one tap, said, and taken back; meanwhile
// nothing is said of it.
func TestAGapIsLeftInOneTap(t *testing.T) {
	h, _ := garden(t, words.English())
	page := ask(h, "GET", "/", "").Body.String()
	buttons := leaveButton.FindAllStringSubmatch(page, -1)
	if gaps := strings.Count(page, `<section class="row gap"`); len(buttons) != gaps || gaps == 0 {
		t.Fatalf("%d gaps, %d of them can be left", gaps, len(buttons))
	}
	if links := strings.Count(page, `/mend?on=`); links != len(buttons) {
		t.Errorf("%d gaps, %d of them lead to what would mend them", len(buttons), links)
	}
	value := buttons[0][1]
	name, _, _ := strings.Cut(value, ":")
	w := ask(h, "POST", "/try/keep", url.Values{"back": {"/"}, tryName: {value}}.Encode())
	if w.Code != http.StatusSeeOther {
		t.Fatalf("%d %s", w.Code, w.Body)
	}
	after := ask(h, "GET", w.Header().Get("Location"), "").Body.String()
	if strings.Contains(after, `value="`+value+`"`) {
		t.Error("the gap can be left again")
	}
	if !strings.Contains(after, "Left "+name+" short") || !strings.Contains(after, "/undo") {
		t.Error("the page does not say what was left, or cannot take it back")
	}
	if list := ask(h, "GET", "/wants", "").Body.String(); !strings.Contains(list, "/gaps_left/left-"+strings.ReplaceAll(name, " ", "-")) {
		t.Error("the gap is not among those left")
	}
}

// What leaving would do is shown before it is written.
func TestLeavingAGapIsTried(t *testing.T) {
	h, _ := garden(t, words.English())
	page := ask(h, "GET", "/vegetable/onion", "").Body.String()
	found := regexp.MustCompile(`<a class="leave" href="([^"]*)"`).FindStringSubmatch(page)
	if found == nil {
		t.Fatal("no gap of onions can be tried to be left")
	}
	tried := ask(h, "GET", strings.ReplaceAll(found[1], "&amp;", "&"), "")
	if tried.Code != http.StatusOK || !strings.Contains(tried.Body.String(), "Onion: left short") {
		t.Errorf("%d: what is tried is not told", tried.Code)
	}
	if wrong := ask(h, "GET", "/?try=onion:leave=soon", ""); wrong.Code == http.StatusOK {
		t.Error("a span that is none is taken")
	}
}
