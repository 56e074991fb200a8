package words

import (
	"embed"
	"encoding/json"
	"fmt"
	"io/fs"
	"path"
	"sort"
	"sync"

	"golang.org/x/text/language"
)

//go:embed data
var files embed.FS

// Catalogue holds the texts of one language. It is not changed once loaded.
type Catalogue struct {
	tag    language.Tag
	texts  map[string]text
	format Formatter
}

// text is one entry: a template for each plural category, by the value named
// in by. Without plurals only "other" is there.
type text struct {
	by    string
	forms map[string]template
}

// English returns the English catalogue.
func English() *Catalogue { return english() }

var english = sync.OnceValue(func() *Catalogue {
	c, err := load(language.English, files, "data/en")
	if err != nil {
		// The files are part of the program and a test reads them all.
		panic("words: " + err.Error())
	}
	return c
})

// load reads every catalogue file of a folder. A key may stand in one file
// only.
func load(tag language.Tag, from fs.FS, folder string) (*Catalogue, error) {
	names, err := fs.Glob(from, path.Join(folder, "*.json"))
	if err != nil {
		return nil, err
	}
	sort.Strings(names)
	c := &Catalogue{tag: tag, texts: map[string]text{}}
	for _, name := range names {
		if err := c.loadFile(from, name); err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
	}
	c.format = Formatter{catalogue: c, Space: " "}
	return c, nil
}

func (c *Catalogue) loadFile(from fs.FS, name string) error {
	raw, err := fs.ReadFile(from, name)
	if err != nil {
		return err
	}
	var entries map[string]json.RawMessage
	if err := json.Unmarshal(raw, &entries); err != nil {
		return err
	}
	for key, value := range entries {
		if _, twice := c.texts[key]; twice {
			return fmt.Errorf("key %q stands in another file too", key)
		}
		t, err := readText(value)
		if err != nil {
			return fmt.Errorf("key %q: %w", key, err)
		}
		c.texts[key] = t
	}
	return nil
}

// readText reads one entry, a string or an object of plural forms.
func readText(raw json.RawMessage) (text, error) {
	var plain string
	if json.Unmarshal(raw, &plain) == nil {
		t, err := parseTemplate(plain)
		return text{forms: map[string]template{"other": t}}, err
	}
	var forms map[string]string
	if err := json.Unmarshal(raw, &forms); err != nil {
		return text{}, err
	}
	out := text{by: forms["by"], forms: map[string]template{}}
	delete(forms, "by")
	if out.by == "" || forms["other"] == "" {
		return text{}, fmt.Errorf(`a text with plurals needs "by" and "other"`)
	}
	for category, form := range forms {
		t, err := parseTemplate(form)
		if err != nil {
			return text{}, err
		}
		out.forms[category] = t
	}
	return out, nil
}

// Has tells whether the catalogue knows a key.
func (c *Catalogue) Has(key string) bool { _, ok := c.texts[key]; return ok }

// Keys returns all keys in order.
func (c *Catalogue) Keys() []string {
	keys := make([]string, 0, len(c.texts))
	for k := range c.texts {
		keys = append(keys, k)
	}
	sort.Strings(keys)
	return keys
}

// Needs returns the names of the values a key's text uses, in order.
func (c *Catalogue) Needs(key string) []string {
	seen := map[string]bool{}
	t := c.texts[key]
	if t.by != "" {
		seen[t.by] = true
	}
	for _, form := range t.forms {
		for _, part := range form {
			if part.arg != "" {
				seen[part.arg] = true
			}
		}
	}
	names := make([]string, 0, len(seen))
	for n := range seen {
		names = append(names, n)
	}
	sort.Strings(names)
	return names
}

// Format returns the catalogue's formatter of numbers, units and dates.
func (c *Catalogue) Format() Formatter { return c.format }
