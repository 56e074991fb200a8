package gazetteer

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// names are the words of a place's name and of its country, brought to the form
// in which they are compared.
type names struct {
	name, country string
	words         []string // of the name
}

func namesOf(name, country string) names {
	n := names{name: fold(name), country: fold(country)}
	n.words = strings.Fields(n.name)
	return n
}

// spelled writes letters that have no plain letter beneath their mark, and those
// of German, as the stations' list does.
var spelled = strings.NewReplacer("ß", "ss", "æ", "ae", "œ", "oe", "ø", "o", "đ", "d", "ð", "d", "ł", "l", "þ", "th", "ı", "i")

// german writes the marked vowels of German in two letters.
var german = strings.NewReplacer("ä", "ae", "ö", "oe", "ü", "ue", "å", "aa", "ø", "oe")

// fold brings a text to small letters without marks, and single spaces for all
// that is neither letter nor digit.
func fold(s string) string {
	s = strings.ToLower(s)
	if !plain(s) {
		s = spelled.Replace(s)
		s = norm.NFD.String(s)
	}
	var b strings.Builder
	b.Grow(len(s))
	gap := false
	for _, r := range s {
		switch {
		case unicode.Is(unicode.Mn, r) || r == '\'' || r == '’':
		case unicode.IsLetter(r) || unicode.IsDigit(r):
			if gap && b.Len() > 0 {
				b.WriteByte(' ')
			}
			gap = false
			b.WriteRune(r)
		default:
			gap = true
		}
	}
	return b.String()
}

func plain(s string) bool {
	for i := 0; i < len(s); i++ {
		if s[i] >= 0x80 {
			return false
		}
	}
	return true
}

// foldings are the ways a query may be meant: as written, and with German vowels
// in two letters.
func foldings(query string) []string {
	first := fold(query)
	second := fold(german.Replace(norm.NFC.String(strings.ToLower(query))))
	if second == first {
		return []string{first}
	}
	return []string{first, second}
}
