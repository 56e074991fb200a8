package words

import (
	"fmt"
	"strings"
)

// template is a text cut at its placeholders.
type template []part

// part is either plain text or the name of a value and how it is written.
type part struct {
	plain string
	arg   string
	style string
}

// parseTemplate cuts "give {n:kg} or less". A doubled brace stands for itself.
func parseTemplate(s string) (template, error) {
	var out template
	var plain strings.Builder
	for i := 0; i < len(s); i++ {
		switch {
		case s[i] != '{' && s[i] != '}':
			plain.WriteByte(s[i])
		case i+1 < len(s) && s[i+1] == s[i]:
			plain.WriteByte(s[i])
			i++
		case s[i] == '}':
			return nil, fmt.Errorf("%q closes a brace that was not opened", s)
		default:
			length := strings.IndexByte(s[i:], '}')
			if length < 2 {
				return nil, fmt.Errorf("%q has a placeholder without a name or an end", s)
			}
			if plain.Len() > 0 {
				out = append(out, part{plain: plain.String()})
				plain.Reset()
			}
			name, style, _ := strings.Cut(s[i+1:i+length], ":")
			if style != "" && !knownStyle(style) {
				return nil, fmt.Errorf("%q: no way of writing is called %q", s, style)
			}
			out = append(out, part{arg: name, style: style})
			i += length
		}
	}
	if plain.Len() > 0 {
		out = append(out, part{plain: plain.String()})
	}
	return out, nil
}
