package web

import (
	"net/url"

	"garner/internal/words"
)

// tryField is what stands in a field, and what is wrong with it.
type tryField struct {
	Value string
	Wrong *words.Phrase
}

// filler fills fields with what was typed and what is wrong with it.
func filler(query url.Values, wrong map[string]words.Phrase) func(f *tryField, name string) {
	return func(f *tryField, name string) {
		if query.Has(name) {
			f.Value = query.Get(name)
		}
		if p, ok := wrong[name]; ok {
			f.Wrong = &p
		}
	}
}
