package plan

import (
	"strconv"
	"strings"

	"garner/internal/cal"
)

// IDs are the ids of plantings that are in use.
type IDs map[string]bool

// Taken are the ids of a household's plantings, with those that its drafts add.
func Taken(plantings []Planting, changes []Change) IDs {
	taken := IDs{}
	for i := range plantings {
		taken[plantings[i].ID] = true
	}
	for i := range changes {
		taken[changes[i].Planting] = true
	}
	return taken
}

// Free is the id that a new planting gets: the first three letters of the crop's id,
// the year, and the first letters that are free, a to z and then aa and on, such as
// let-27c for the third lettuce of 2027. Without a crop it begins with new, and
// without a date it has no year.
//
// A planting's luck hangs on its id, so that whatever weighs one that is not there
// yet weighs it under the id it will have.
func (t IDs) Free(crop string, date cal.Date) string {
	letters := []rune(strings.ReplaceAll(crop, "-", ""))
	stem := string(letters[:min(3, len(letters))])
	if stem == "" {
		stem = "new"
	}
	if date.IsSet() {
		stem += "-" + strconv.Itoa(date.Year()%100 + 100)[1:]
	}
	for n := 1; ; n++ {
		id := ""
		for k := n; k > 0; k = (k - 1) / 26 {
			id = string(rune('a'+(k-1)%26)) + id
		}
		if id = stem + id; !t[id] {
			return id
		}
	}
}
