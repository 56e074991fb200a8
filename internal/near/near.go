package near

import (
	"sort"
	"strings"
)

// longest is the length [letters] beyond which names are not compared: a misspelt
// name is short, and a whole page in the wrong column has no near name.
const longest = 64

// Names returns up to n of the names that are nearest to given, nearest first;
// none when all are too far to have been meant.
func Names(given string, names []string, n int) []string {
	g := plain(given)
	if g == "" || len(g) > longest {
		return nil
	}
	type match struct {
		name  string
		edits int
	}
	var found []match
	for _, name := range names {
		p := plain(name)
		if p == "" || len(p) > longest {
			continue
		}
		edits := distance([]rune(g), []rune(p))
		if begins(g, p) {
			edits = min(edits, 1)
		}
		if edits <= 1+len([]rune(g))/4 {
			found = append(found, match{name, edits})
		}
	}
	sort.SliceStable(found, func(i, j int) bool {
		if found[i].edits != found[j].edits {
			return found[i].edits < found[j].edits
		}
		return found[i].name < found[j].name
	})
	out := make([]string, 0, n)
	for _, m := range found[:min(n, len(found))] {
		out = append(out, m.name)
	}
	return out
}

// begins tells whether one name begins the other, such as a plural.
func begins(a, b string) bool {
	return min(len(a), len(b)) >= 4 && (strings.HasPrefix(a, b) || strings.HasPrefix(b, a))
}

func plain(s string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(s), func(r rune) bool {
		return r == ' ' || r == '-' || r == '_' || r == '.'
	}), " ")
}

// distance counts the edits from a to b.
func distance(a, b []rune) int {
	before, last, row := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row[0] = i
		for j := 1; j <= len(b); j++ {
			change := 1
			if a[i-1] == b[j-1] {
				change = 0
			}
			row[j] = min(last[j]+1, row[j-1]+1, last[j-1]+change)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, last, row = last, row, before
	}
	return last[len(b)]
}
