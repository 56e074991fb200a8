package web

import (
	"html"
	"regexp"
	"strings"
	"testing"
)

// element is one element of a page as the tests read it.
type element struct {
	name     string
	attrs    map[string]string
	children []*element
	text     string // of a text node
	parent   *element
}

// voids are the elements without an end (HTML Living Standard, 13.1.2).
var voids = map[string]bool{"area": true, "base": true, "br": true, "col": true, "embed": true, "hr": true, "img": true,
	"input": true, "link": true, "meta": true, "source": true, "track": true, "wbr": true}

var (
	tag       = regexp.MustCompile(`<(/?)([a-zA-Z][a-zA-Z0-9]*)((?:\s+[^\s=>/]+(?:="[^"]*")?)*)\s*(/?)>`)
	attribute = regexp.MustCompile(`([^\s=>/]+)(?:="([^"]*)")?`)
)

// read reads a page that is written as ours are: every attribute in double
// quotes, every element closed. What is not so is a fault of the page.
func read(t *testing.T, page string) *element {
	t.Helper()
	root := &element{name: "#document"}
	at, open := 0, root
	for _, m := range tag.FindAllStringSubmatchIndex(page, -1) {
		if between := page[at:m[0]]; strings.TrimSpace(between) != "" {
			if strings.Contains(between, "<") && !strings.HasPrefix(strings.TrimSpace(between), "<!doctype") {
				t.Errorf("cannot be read as markup: %.120q", between)
			}
			open.children = append(open.children, &element{text: html.UnescapeString(between), parent: open})
		}
		at = m[1]
		name := strings.ToLower(page[m[4]:m[5]])
		if page[m[2]:m[3]] == "/" {
			if open.name != name {
				t.Errorf("</%s> closes <%s> near %.80q", name, open.name, page[max(0, m[0]-80):m[0]])
			}
			if open.parent != nil {
				open = open.parent
			}
			continue
		}
		e := &element{name: name, attrs: map[string]string{}, parent: open}
		for _, a := range attribute.FindAllStringSubmatch(page[m[6]:m[7]], -1) {
			if _, twice := e.attrs[a[1]]; twice {
				t.Errorf("<%s> has %s twice", name, a[1])
			}
			e.attrs[a[1]] = html.UnescapeString(a[2])
		}
		open.children = append(open.children, e)
		if !voids[name] && page[m[8]:m[9]] == "" {
			open = e
		}
	}
	if open != root {
		t.Errorf("<%s> is not closed", open.name)
	}
	return root
}

// all returns the elements that fulfil a condition, in order.
func (e *element) all(is func(*element) bool) []*element {
	var out []*element
	for _, c := range e.children {
		if c.name != "" && is(c) {
			out = append(out, c)
		}
		out = append(out, c.all(is)...)
	}
	return out
}

func (e *element) named(name string) []*element {
	return e.all(func(x *element) bool { return x.name == name })
}

// one returns the one element of a name, with an attribute when one is given.
func (e *element) one(t *testing.T, name string, attrs ...string) *element {
	t.Helper()
	found := e.all(func(x *element) bool {
		for i := 0; i+1 < len(attrs); i += 2 {
			if v, ok := x.attrs[attrs[i]]; !ok || v != attrs[i+1] {
				return false
			}
		}
		return x.name == name
	})
	if len(found) != 1 {
		t.Fatalf("%d of <%s %v>, want one", len(found), name, attrs)
	}
	return found[0]
}

// words is all text in an element, blanks as one.
func (e *element) words() string {
	var b strings.Builder
	var gather func(*element)
	gather = func(x *element) {
		b.WriteString(x.text)
		for _, c := range x.children {
			gather(c)
			if c.name != "" && c.name != "b" && c.name != "i" && c.name != "a" && c.name != "span" {
				b.WriteString(" ")
			}
		}
	}
	gather(e)
	return strings.Join(strings.Fields(b.String()), " ")
}

// filled returns the fields of a form as a browser would send them untouched.
func (e *element) filled() map[string]string {
	out := map[string]string{}
	for _, f := range e.named("input") {
		kind := f.attrs["type"]
		_, checked := f.attrs["checked"]
		if name := f.attrs["name"]; name != "" && (kind != "radio" && kind != "checkbox" || checked) {
			out[name] = f.attrs["value"]
		}
	}
	for _, f := range e.named("textarea") {
		out[f.attrs["name"]] = strings.TrimPrefix(text(f), "\n")
	}
	for _, f := range e.named("select") {
		options := f.named("option")
		for i, o := range options {
			if _, chosen := o.attrs["selected"]; chosen || i == 0 {
				out[f.attrs["name"]] = o.attrs["value"]
			}
		}
	}
	return out
}

func text(e *element) string {
	out := e.text
	for _, c := range e.children {
		out += text(c)
	}
	return out
}
