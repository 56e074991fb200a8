package draft

import (
	"fmt"
	"strings"

	"garner/internal/cal"
	"garner/internal/holding"
)

// ids are those of plantings that are in use.
type ids map[string]bool

func idsIn(h *holding.Holding) ids {
	out := ids{}
	for i := range h.Plantings {
		out[h.Plantings[i].ID] = true
	}
	for i := range h.Changes {
		out[h.Changes[i].Planting] = true
	}
	return out
}

// next makes a planting's id as new rows get theirs: three letters of the crop, the
// year, and the first letters that are free, which are then taken.
func (t ids) next(crop string, date cal.Date) string {
	letters := []rune(strings.ReplaceAll(crop, "-", ""))
	stem := fmt.Sprintf("%s-%02d", string(letters[:min(3, len(letters))]), date.Year()%100)
	for n := 1; ; n++ {
		id := ""
		for k := n; k > 0; k = (k - 1) / 26 {
			id = string(rune('a'+(k-1)%26)) + id
		}
		if id = stem + id; !t[id] {
			t[id] = true
			return id
		}
	}
}
