package web

import (
	"net/http"
	"testing"

	"garner/internal/cal"
)

// BenchmarkTablePage times the first page once its results are stored.
func BenchmarkTablePage(b *testing.B) {
	s, _ := demo()
	get(b, s, "/")
	for b.Loop() {
		if code, _ := get(b, s, "/", "Accept-Encoding", "gzip"); code != http.StatusOK {
			b.Fatal(code)
		}
	}
}

// BenchmarkTry times a change of date tried on a vegetable's page: a new one each
// time, as when a ring is moved.
func BenchmarkTry(b *testing.B) {
	s, _ := demo()
	get(b, s, "/vegetable/onion")
	first := cal.Of(2027, 2, 1)
	for day := first; b.Loop(); day++ {
		path := "/vegetable/onion?try=oni-27%3Adate%3D" + (first + (day-first)%120).String()
		if code, _ := get(b, s, path, fragmentHeader, "vegetable", "Accept-Encoding", "gzip"); code != http.StatusOK {
			b.Fatal(code)
		}
	}
}
