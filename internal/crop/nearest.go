package crop

import (
	"cmp"
	"slices"
	"strings"
)

// longestName is as much of an unknown name as is compared with the book's
// [runes]; what is longer is no name of a crop.
const longestName = 60

// nearest returns up to most of the listed names that are within a third of
// the given name's length of it in edits, the nearest first.
func nearest(name string, list []string, most int) []string {
	given := []rune(strings.ToLower(name))
	if len(given) > longestName {
		return nil
	}
	type near struct {
		name  string
		edits int
	}
	var found []near
	for _, other := range list {
		if edits := distance(given, []rune(strings.ToLower(other))); edits <= max(1, len(given)/3) {
			found = append(found, near{other, edits})
		}
	}
	slices.SortStableFunc(found, func(a, b near) int { return cmp.Compare(a.edits, b.edits) })
	var names []string
	for _, f := range found[:min(most, len(found))] {
		names = append(names, f.name)
	}
	return names
}

// distance returns the least number of runes to add, drop or change that turns
// a into b (Levenshtein 1966).
func distance(a, b []rune) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i, ra := range a {
		corner := row[0] // the distance one up and one left
		row[0] = i + 1
		for j, rb := range b {
			change := corner
			if ra != rb {
				change++
			}
			corner = row[j+1]
			row[j+1] = min(change, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(b)]
}
