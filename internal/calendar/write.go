package calendar

import (
	"bufio"
	"io"
	"strings"
	"unicode"
	"unicode/utf8"

	"garner/internal/cal"
)

// Event is a day with something to be done.
type Event struct {
	UID   string // the same for as long as it is about the same thing
	Day   cal.Date
	Title string
	Text  string // what else there is to say, line by line
	Place string
}

// Calendar is what a file holds.
type Calendar struct {
	Name   string
	Stamp  cal.Date // day of the computation
	Events []Event
}

// product names the program that wrote a file, as RFC 5545 wants it.
const product = "-//garner//jobs//EN"

// Write writes a calendar. The error is the writer's.
func Write(to io.Writer, c *Calendar) error {
	w := &writer{Writer: bufio.NewWriter(to)}
	w.line("BEGIN", "VCALENDAR")
	w.line("VERSION", "2.0")
	w.line("PRODID", product)
	w.line("CALSCALE", "GREGORIAN")
	w.line("METHOD", "PUBLISH")
	w.text("NAME", c.Name)         // RFC 7986
	w.text("X-WR-CALNAME", c.Name) // what phones read
	for i := range c.Events {
		w.event(&c.Events[i], c.Stamp)
	}
	w.line("END", "VCALENDAR")
	if w.err != nil {
		return w.err
	}
	return w.Flush()
}

// writer keeps the first error.
type writer struct {
	*bufio.Writer
	err error
}

func (w *writer) event(e *Event, stamp cal.Date) {
	w.line("BEGIN", "VEVENT")
	w.text("UID", e.UID)
	w.line("DTSTAMP", day(stamp)+"T000000Z")
	w.line("DTSTART;VALUE=DATE", day(e.Day))
	w.line("DTEND;VALUE=DATE", day(e.Day+1))
	w.text("SUMMARY", e.Title)
	if e.Text != "" {
		w.text("DESCRIPTION", e.Text)
	}
	if e.Place != "" {
		w.text("LOCATION", e.Place)
	}
	w.line("TRANSP", "TRANSPARENT")
	w.line("END", "VEVENT")
}

// day writes a date as RFC 5545 has it, 20270315.
func day(d cal.Date) string { return strings.ReplaceAll(d.String(), "-", "") }

// text writes a property whose value is a text.
func (w *writer) text(name, value string) { w.line(name, escaped(value)) }

var escapes = strings.NewReplacer(`\`, `\\`, ";", `\;`, ",", `\,`, "\r\n", `\n`, "\n", `\n`, "\r", `\n`)

// escaped is a text as RFC 5545 section 3.3.11 has it, without control characters and
// without bytes that are no UTF-8.
func escaped(text string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) {
			return -1
		}
		return r
	}, escapes.Replace(strings.ToValidUTF8(text, "")))
}

// octets is the longest line without its end (RFC 5545 section 3.1).
const octets = 75

// line writes a content line, folded: what goes on begins with a space.
func (w *writer) line(name, value string) {
	rest := name + ":" + value
	for limit := octets; len(rest) > limit && w.err == nil; limit = octets - 1 {
		cut := limit
		for !utf8.RuneStart(rest[cut]) {
			cut--
		}
		w.put(rest[:cut], "\r\n ")
		rest = rest[cut:]
	}
	w.put(rest, "\r\n")
}

func (w *writer) put(texts ...string) {
	for _, text := range texts {
		if w.err == nil {
			_, w.err = w.WriteString(text)
		}
	}
}
