package words

import (
	"fmt"
	"strings"

	"golang.org/x/text/feature/plural"

	"garner/internal/cal"
)

// Text puts a phrase into words. Values that are phrases or lists are put into
// words themselves. A key that is not there gives the key with its values, which
// is poor but never silent; a test keeps it from happening.
func (c *Catalogue) Text(p Phrase) string {
	t, ok := c.texts[p.Key]
	if !ok {
		return c.bare(p)
	}
	form, ok := t.forms[c.category(t.by, p.Args)]
	if !ok {
		form = t.forms["other"]
	}
	var b strings.Builder
	for _, part := range form {
		if part.arg == "" {
			b.WriteString(part.plain)
			continue
		}
		value, given := p.Args[part.arg]
		if !given {
			b.WriteString("{" + part.arg + "}")
			continue
		}
		b.WriteString(c.value(value, part.style))
	}
	return b.String()
}

// bare writes a phrase without a text.
func (c *Catalogue) bare(p Phrase) string {
	if len(p.Args) == 0 {
		return p.Key
	}
	return fmt.Sprintf("%s %v", p.Key, map[string]any(p.Args))
}

// category returns the plural category of the value a text counts by. The
// category follows the digits as they are written: 1 is not 1.0 in every
// language.
func (c *Catalogue) category(by string, args Args) string {
	if by == "" {
		return "other"
	}
	x, ok := number(args[by])
	if !ok {
		return "other"
	}
	i, v, w, f, t := operands(c.format.Plain(x))
	switch plural.Cardinal.MatchPlural(c.tag, i, v, w, f, t) {
	case plural.Zero:
		return "zero"
	case plural.One:
		return "one"
	case plural.Two:
		return "two"
	case plural.Few:
		return "few"
	case plural.Many:
		return "many"
	}
	return "other"
}

// operands reads the plural operands of Unicode TR35 from written digits: the
// whole part, the number of decimals with and without trailing zeros, and the
// decimals with and without them.
func operands(digits string) (i, v, w, f, t int) {
	whole, decimals, _ := strings.Cut(strings.TrimPrefix(digits, "-"), ".")
	trimmed := strings.TrimRight(decimals, "0")
	return atoi(whole), len(decimals), len(trimmed), atoi(decimals), atoi(trimmed)
}

// atoi reads digits and skips the marks between thousands; only the last nine
// digits count for plurals.
func atoi(s string) int {
	n := 0
	for _, r := range s {
		if r >= '0' && r <= '9' {
			n = (n*10 + int(r-'0')) % 1_000_000_000
		}
	}
	return n
}

// value writes one value of a phrase.
func (c *Catalogue) value(v any, style string) string {
	switch v := v.(type) {
	case Phrase:
		return c.Text(v)
	case *Phrase:
		return c.Text(*v)
	case []Phrase:
		return c.list(len(v), func(i int) string { return c.Text(v[i]) })
	case []string:
		return c.list(len(v), func(i int) string { return v[i] })
	case []any:
		return c.list(len(v), func(i int) string { return c.value(v[i], style) })
	case cal.Date:
		return c.format.date(v, style)
	case cal.MonthDay:
		return c.format.MonthDay(v)
	case error:
		return v.Error()
	case fmt.Stringer:
		return v.String()
	}
	if x, ok := number(v); ok {
		return c.format.styled(x, style)
	}
	return fmt.Sprint(v)
}

// list joins items in words: "a", "a and b", "a, b and c".
func (c *Catalogue) list(n int, item func(int) string) string {
	switch n {
	case 0:
		return c.Text(P("words.nothing", nil))
	case 1:
		return item(0)
	}
	head := item(0)
	for i := 1; i < n-1; i++ {
		head = c.Text(P("words.list_more", Args{"head": head, "next": item(i)}))
	}
	return c.Text(P("words.list_last", Args{"head": head, "last": item(n - 1)}))
}

// List joins texts in words.
func (c *Catalogue) List(items ...string) string {
	return c.list(len(items), func(i int) string { return items[i] })
}
