package web

import (
	"net/http"
	"strconv"
	"testing"

	"garner/internal/desk"
	"garner/internal/num"
	"garner/internal/words"
)

// BenchmarkWeekPage times the week when nothing has changed since it was last shown.
func BenchmarkWeekPage(b *testing.B) {
	s, _ := demo()
	get(b, s, "/week")
	for b.Loop() {
		if code, _ := get(b, s, "/week", "Accept-Encoding", "gzip"); code != http.StatusOK {
			b.Fatal(code)
		}
	}
}

// BenchmarkWeekPageOtherDays times a week that was not yet asked for, the table at hand.
func BenchmarkWeekPageOtherDays(b *testing.B) {
	s, _ := demo()
	get(b, s, "/week")
	for n := 0; b.Loop(); n++ {
		if code, _ := get(b, s, "/week?days="+strconv.Itoa(8+n%200), "Accept-Encoding", "gzip"); code != http.StatusOK {
			b.Fatal(code)
		}
	}
}

// BenchmarkWeekPageCold times the first week of a server whose store knows the table's
// results, as after a restart.
func BenchmarkWeekPageCold(b *testing.B) {
	h, err := desk.Sample("")
	if err != nil {
		b.Fatal(err)
	}
	kept := &shelf{h: h, results: &results{kept: map[num.Digest][]byte{}}}
	for b.Loop() {
		office := desk.NewOffice(kept)
		s, err := New(Options{Offices: func(string) (*desk.Office, error) { return office, nil }, Words: words.English(), Who: "test"})
		if err != nil {
			b.Fatal(err)
		}
		if code, _ := get(b, s, "/week"); code != http.StatusOK {
			b.Fatal(code)
		}
	}
}
