package advise

import (
	"strconv"
	"strings"

	"garner/internal/cal"
	"garner/internal/holding"
)

// idsTaken are the ids of plantings that are in use.
type idsTaken map[string]bool

func takenBy(h *holding.Holding) idsTaken {
	taken := idsTaken{}
	for i := range h.Plantings {
		taken[h.Plantings[i].ID] = true
	}
	for i := range h.Changes {
		taken[h.Changes[i].Planting] = true
	}
	return taken
}

// of makes a candidate's id as a new row gets it: the crop's first three letters,
// the year, and the first letter that is free. A planting's luck hangs on its id,
// so a candidate is weighed under the one it will have.
func (t idsTaken) of(crop string, date cal.Date) string {
	letters := []rune(strings.ReplaceAll(crop, "-", ""))
	stem := string(letters[:min(3, len(letters))]) + "-" + strconv.Itoa(date.Year()%100 + 100)[1:]
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
