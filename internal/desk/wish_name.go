package desk

import (
	"slices"

	"garner/internal/plan"
	"garner/internal/words"
)

// wish names a wish by what it asks.
func (n naming) wish(cells map[string]string) words.Phrase {
	switch plan.WishKind(cells["kind"]) {
	case plan.Pin:
		return words.P("desk.name_wish_pin", words.Args{"planting": n.planting(cells["planting"])})
	case plan.Hours:
		return words.P("desk.name_wish_hours", words.Args{"hours": numberIn(cells["hours"])})
	}
	if cells["bed"] == "" {
		return words.P("desk.name_wish_forbid_all", words.Args{"crop": cropName(cells["crop"])})
	}
	return words.P("desk.name_wish_forbid", words.Args{"crop": cropName(cells["crop"]), "bed": n.name("beds", cells["bed"])})
}

// planting names a planting by its row; one that a draft adds by its id.
func (n naming) planting(id string) any {
	rows := n.rows["plantings"]
	if at := slices.IndexFunc(rows, func(r KeptRow) bool { return r.ID == id }); at >= 0 {
		return n.row("plantings", rows[at].Row)
	}
	return id
}
