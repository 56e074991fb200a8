package calendar_test

import (
	"bytes"
	"io"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"github.com/emersion/go-ical"
	"pgregory.net/rapid"

	"garner/internal/cal"
	"garner/internal/calendar"
)

// decode reads a file with a parser that is not ours.
func decode(t interface{ Fatal(...any) }, raw []byte) []ical.Event {
	c, err := ical.NewDecoder(bytes.NewReader(raw)).Decode()
	if err != nil {
		t.Fatal(err)
	}
	return c.Events()
}

func written(t interface{ Fatal(...any) }, c *calendar.Calendar) []byte {
	var out bytes.Buffer
	if err := calendar.Write(&out, c); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// An independent parser reads back what was written, whatever stands in the texts, and
// no line is longer than 75 octets or cut within a character.
func TestAnotherParserReadsIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOfN(rapid.RuneFrom([]rune("aé‘’²;,\\:\"\n 木🌱")), 0, 200, -1)
		e := calendar.Event{UID: rapid.StringMatching(`[a-z:@-]{1,90}`).Draw(t, "uid"), Day: cal.Of(2027, 1, 1) + cal.Date(rapid.IntRange(0, 900).Draw(t, "day")),
			Title: text.Draw(t, "title"), Text: text.Draw(t, "text"), Place: text.Draw(t, "place")}
		raw := written(t, &calendar.Calendar{Name: "Jobs", Stamp: cal.Of(2027, 1, 4), Events: []calendar.Event{e, e}})
		if !utf8.Valid(raw) {
			t.Fatal("no UTF-8")
		}
		for _, line := range strings.SplitAfter(string(raw), "\r\n") {
			if body := strings.TrimSuffix(line, "\r\n"); len(body) > 75 || strings.ContainsAny(body, "\r\n") || !utf8.ValidString(body) {
				t.Fatalf("the line %q", line)
			}
		}
		events := decode(t, raw)
		if len(events) != 2 {
			t.Fatalf("%d events", len(events))
		}
		for name, want := range map[string]string{ical.PropUID: e.UID, ical.PropSummary: e.Title, ical.PropDescription: e.Text, ical.PropLocation: e.Place} {
			got := ""
			if p := events[0].Props.Get(name); p != nil {
				var err error
				if got, err = p.Text(); err != nil {
					t.Fatal(err)
				}
			}
			if got != want {
				t.Fatalf("%s is %q, want %q", name, got, want)
			}
		}
		on, err := events[0].DateTimeStart(time.UTC)
		if err != nil || on.Format("2006-01-02") != e.Day.String() {
			t.Fatalf("on %v, want %s: %v", on, e.Day, err)
		}
		if end, err := events[0].DateTimeEnd(time.UTC); err != nil || end.Sub(on) != 24*time.Hour {
			t.Fatalf("until %v: %v", end, err)
		}
	})
}

// By hand, after RFC 5545 sections 3.1 and 3.3.11.
func TestByHand(t *testing.T) {
	raw := string(written(t, &calendar.Calendar{Name: "A; b", Stamp: cal.Of(2027, 1, 4), Events: []calendar.Event{
		{UID: "x@y", Day: cal.Of(2027, 12, 31), Title: "Sow, thin; hoe", Text: "one\ntwo\a"}}}))
	for _, want := range []string{"BEGIN:VCALENDAR\r\nVERSION:2.0\r\n", "NAME:A\\; b\r\n", "DTSTAMP:20270104T000000Z\r\n", "DTSTART;VALUE=DATE:20271231\r\n",
		"DTEND;VALUE=DATE:20280101\r\n", "SUMMARY:Sow\\, thin\\; hoe\r\n", "DESCRIPTION:one\\ntwo\r\n", "END:VEVENT\r\nEND:VCALENDAR\r\n"} {
		if !strings.Contains(raw, want) {
			t.Errorf("no %q in\n%s", want, raw)
		}
	}
}

// full is a disk that is full.
type full struct{}

func (full) Write([]byte) (int, error) { return 0, io.ErrShortWrite }

func TestAWriterThatFails(t *testing.T) {
	if err := calendar.Write(full{}, &calendar.Calendar{Name: "x"}); err == nil {
		t.Error("nothing was said")
	}
}
