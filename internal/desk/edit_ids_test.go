package desk

import (
	"strings"
	"testing"

	"garner/internal/exchange"
)

// A new row of any table has an id that begins with a word, also when nothing else
// of it is told, and never one that is taken.
func TestNewIDsBeginWithAWord(t *testing.T) {
	for _, table := range exchange.Tables() {
		taken := map[string]bool{}
		for range 3 {
			id := idFor(table, map[string]string{"vegetable": "leek"}, taken)
			if strings.HasPrefix(id, "-") || slug(id) != id || taken[id] {
				t.Errorf("a new row of %s is called %q", table, id)
			}
			taken[id] = true
		}
	}
}
