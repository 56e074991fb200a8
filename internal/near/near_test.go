package near

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// The distances are the textbook cases: kitten to sitting is 3 (Levenshtein
// 1966 as commonly quoted), CA to ABC is 3 in the restricted form (Boytsov 2011,
// "Indexing methods for approximate dictionary searching").
func TestDistance(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{{"kitten", "sitting", 3}, {"ca", "abc", 3}, {"leek", "leke", 1}, {"", "abc", 3}, {"kale", "kale", 0}} {
		if got := distance([]rune(c.a), []rune(c.b)); got != c.want {
			t.Errorf("%s to %s: %d, want %d", c.a, c.b, got, c.want)
		}
	}
}

func TestNames(t *testing.T) {
	names := []string{"carrot", "parsnip", "runner bean", "broad bean", "leek", "kale"}
	for given, want := range map[string][]string{
		"carot":       {"carrot"},
		"Runner-Bean": {"runner bean"},
		"carrots":     {"carrot"},
		"lkee":        {"leek"},
		"xyzzyquux":   {},
		"":            nil,
	} {
		if diff := cmp.Diff(want, Names(given, names, 2)); diff != "" {
			t.Errorf("%q: %s", given, diff)
		}
	}
}

func TestDistanceIsSymmetric(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := []rune(rapid.StringN(0, 8, -1).Draw(t, "a"))
		b := []rune(rapid.StringN(0, 8, -1).Draw(t, "b"))
		if distance(a, b) != distance(b, a) {
			t.Fatalf("%q %q", string(a), string(b))
		}
	})
}
