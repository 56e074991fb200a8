package words_test

import (
	"testing"

	"garner/internal/crop"
	"garner/internal/words"
)

// Every number of the crop book has a name that people use, and none is named
// that is not in the book.
func TestEveryParameterHasAName(t *testing.T) {
	book, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	c := words.English()
	known := map[string]bool{}
	for _, p := range book.Parameters() {
		known["words.parameter_"+p.Name] = true
		if !c.Has("words.parameter_" + p.Name) {
			t.Errorf("%s has no name", p.Name)
		}
	}
	for _, key := range c.Keys() {
		if len(key) > 16 && key[:16] == "words.parameter_" && !known[key] {
			t.Errorf("%s names no number of the book", key)
		}
	}
}
