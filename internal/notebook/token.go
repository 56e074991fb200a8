package notebook

import (
	"strconv"
	"strings"
	"unicode"
)

// token is one word, number or day of a line.
type token struct {
	text   string // small letters
	raw    string
	number float64
	kind   tokenKind
	used   bool
}

type tokenKind int

const (
	word tokenKind = iota
	number
	day // digits with a slash or hyphens between, such as 20/3 or 2027-03-20
	mark
)

// signs are written out before a line is cut.
var signs = strings.NewReplacer("½", " half ", "¼", " quarter ", "¾", " three quarters ", "×", " x ", "*", " x ",
	"’", "'", "‘", "'", "“", `"`, "”", `"`, "m²", "m2", "²", "2", "%", " percent ", "\t", " ")

// cut parts a line into tokens. Digits and letters part from each other, save in
// a word that begins with letters, such as a bed's name h12.
func cut(line string) []token {
	var out []token
	runes := []rune(line)
	for i := 0; i < len(runes); {
		r := runes[i]
		switch {
		case r == '.' && i+1 < len(runes) && unicode.IsDigit(runes[i+1]):
			n := digits(runes[i+1:])
			out = append(out, numeric("0."+string(runes[i+1:i+1+n])))
			i += 1 + n
		case unicode.IsDigit(r):
			n := digits(runes[i:])
			t := numeric(string(runes[i : i+n]))
			i += n
			if i < len(runes) && runes[i] == '.' && strings.Count(t.raw, ".") == 1 && len(t.raw) <= 5 {
				t.kind = day // 25.5.
			}
			out = append(out, t)
		case unicode.IsLetter(r):
			n := letters(runes[i:])
			if n > 1 && unicode.ToLower(r) == 'x' && unicode.IsDigit(runes[i+1]) {
				n = 1 // 6x1.2
			}
			raw := string(runes[i : i+n])
			out = append(out, token{text: strings.ToLower(raw), raw: raw})
			i += n
		case unicode.IsSpace(r) || strings.ContainsRune(",;:.()[]{}\"'-–—•/#?!+=_&~<>|\\", r):
			i++
		default:
			out = append(out, token{text: string(r), raw: string(r), kind: mark})
			i++
		}
	}
	return out
}

// digits counts the runes of a number or a day.
func digits(runes []rune) int {
	n := 0
	for n < len(runes) {
		r := runes[n]
		joins := strings.ContainsRune(".,/-", r) && n+1 < len(runes) && unicode.IsDigit(runes[n+1])
		if !unicode.IsDigit(r) && !joins {
			break
		}
		n++
	}
	return n
}

// letters counts the runes of a word: letters, then letters, digits, and
// apostrophes between.
func letters(runes []rune) int {
	n := 0
	for n < len(runes) {
		r := runes[n]
		joins := r == '\'' && n+1 < len(runes) && unicode.IsLetter(runes[n+1])
		if !unicode.IsLetter(r) && !unicode.IsDigit(r) && !joins {
			break
		}
		n++
	}
	return n
}

func numeric(raw string) token {
	t := token{text: raw, raw: raw, kind: number}
	if v, err := strconv.ParseFloat(strings.Replace(raw, ",", ".", 1), 64); err == nil {
		t.number = v
		return t
	}
	t.kind = day
	return t
}
