package web

import (
	"html/template"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"garner/internal/cal"
	"garner/internal/words"
)

// rich marks up a text: what stands between two asterisks on either side is the
// figure that matters.
func rich(text string) template.HTML {
	var b strings.Builder
	for i, part := range strings.Split(text, "**") {
		escaped := template.HTMLEscapeString(part)
		if i%2 == 1 {
			escaped = "<b>" + escaped + "</b>"
		}
		b.WriteString(escaped)
	}
	return template.HTML(b.String())
}

// plainText leaves the marks of a text away.
func plainText(text string) string { return strings.ReplaceAll(text, "**", "") }

// sharpened tells the dates of a phrase as sharply as they deserve.
func sharpened(p words.Phrase, today cal.Date) words.Phrase { return words.Sharpened(p, today) }

// sentence puts a phrase into words, as a sentence begins.
func (s *Server) sentence(p words.Phrase) string { return capital(s.words.Text(p)) }

// capital gives a text a capital at its beginning.
func capital(text string) string {
	mark := len(text) - len(strings.TrimLeft(text, "*"))
	r, size := utf8.DecodeRuneInString(text[mark:])
	if !unicode.IsLower(r) {
		return text
	}
	return text[:mark] + string(unicode.ToUpper(r)) + text[mark+size:]
}

// say puts a key with its values into words.
func (s *Server) say(key string, args words.Args) string { return s.words.Text(words.P(key, args)) }

// monthYear names a month in short, with its year.
func (s *Server) monthYear(d cal.Date) string {
	return s.say("web.month_year", words.Args{"month": s.words.Format().ShortMonth(d.Month()), "year": strconv.Itoa(d.Year())})
}
