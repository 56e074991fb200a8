package web

import (
	"net/http"
	"runtime"
	"strconv"
	"testing"
	"time"

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

// BenchmarkWeekPageCold times the first page of all that a server shows, with nothing at
// hand but the holding as it was read: each time another office, whose keeper has no
// results. What the page leaves to be worked out behind it is waited for off the clock,
// so that it does not slow the next.
func BenchmarkWeekPageCold(b *testing.B) {
	h, err := desk.Sample("")
	if err != nil {
		b.Fatal(err)
	}
	best := time.Hour
	for b.Loop() {
		b.StopTimer()
		office := desk.NewOffice(&shelf{h: h, results: &results{kept: map[num.Digest][]byte{}}})
		s, err := New(Options{Offices: func(string) (*desk.Office, error) { return office, nil }, Words: words.English(), Who: "test"})
		if err != nil {
			b.Fatal(err)
		}
		runtime.GC()
		b.StartTimer()
		began := time.Now()
		if code, _ := get(b, s, "/week"); code != http.StatusOK {
			b.Fatal(code)
		}
		best = min(best, time.Since(began))
		b.StopTimer()
		if _, err := office.TableView(nil); err != nil {
			b.Fatal(err)
		}
		b.StartTimer()
	}
	b.ReportMetric(float64(best.Microseconds())/1000, "ms-at-best") // other programs on the machine slow the rest
}
