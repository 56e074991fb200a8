package words

import (
	"strings"

	"golang.org/x/text/language"
)

// Pseudo returns a catalogue in an invented language for tests: English with
// accents on every vowel, longer by about a third and in brackets. A text on a
// page without brackets did not come from the catalogue; a text that is cut off
// has no room to be translated.
func Pseudo() *Catalogue {
	from := English()
	c := &Catalogue{tag: language.English, texts: make(map[string]text, len(from.texts))}
	for key, t := range from.texts {
		forms := make(map[string]template, len(t.forms))
		for category, form := range t.forms {
			forms[category] = pseudoTemplate(form)
		}
		c.texts[key] = text{by: t.by, forms: forms}
	}
	c.format = Formatter{catalogue: c, Space: " "}
	return c
}

var accents = strings.NewReplacer(
	"a", "á", "e", "é", "i", "í", "o", "ó", "u", "ú", "y", "ý",
	"A", "Á", "E", "É", "I", "Í", "O", "Ó", "U", "Ú", "Y", "Ý",
)

func pseudoTemplate(form template) template {
	length := 0
	out := template{{plain: "⟦"}}
	for _, p := range form {
		length += len(p.plain)
		p.plain = accents.Replace(p.plain)
		out = append(out, p)
	}
	return append(out, part{plain: strings.Repeat("~", length/3) + "⟧"})
}
