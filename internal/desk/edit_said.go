package desk

import (
	"slices"
	"strconv"

	"garner/internal/exchange"
	"garner/internal/journal"
	"garner/internal/plan"
	"garner/internal/words"
)

// said puts one change of a row into words.
func (n naming) said(c journal.Change) words.Phrase {
	columns := exchange.Columns(c.Table)
	before, after := cellsOf(columns, c.Before), cellsOf(columns, c.After)
	switch {
	case c.After == nil:
		return words.P("desk.edit_removed", words.Args{"what": n.row(c.Table, c.Before)})
	case c.Table == "plantings" && c.Before == nil:
		return words.P("desk.edit_planting_added", words.Args{"what": n.row(c.Table, c.After), "date": dateIn(after["date"])})
	case c.Table == "covers" && c.Before == nil:
		return words.P("desk.edit_cover_added", words.Args{"what": n.row(c.Table, c.After), "date": dateIn(after["on"])})
	case c.Table == "gaps_left" && c.Before == nil:
		return words.P("desk.edit_left", words.Args{"vegetable": n.wanted(after), "first": dateIn(after["from"]), "last": dateIn(after["to"])})
	case c.Table == "purchases" && c.Before == nil:
		return words.P("desk.edit_purchase", words.Args{"vegetable": n.wanted(after), "weight": numberIn(after["kg_per_week"]), "first": dateIn(after["from"]), "last": dateIn(after["to"])})
	case c.Before == nil:
		return words.P("desk.edit_added", words.Args{"what": n.row(c.Table, c.After)})
	case c.Table == "plantings":
		return n.saidPlanting(changedColumns(columns, c), c, after)
	case c.Table == "holding":
		return n.saidHolding(changedColumns(columns, c), c, after)
	case c.Table == "beds" || c.Table == "features":
		return n.saidDrawn(changedColumns(columns, c), c, before, after)
	case c.Table == "wants" && len(changedColumns(columns, c)) == 1 && before["portions_per_eater"] != after["portions_per_eater"]:
		return words.P("desk.edit_want_portions", words.Args{"vegetable": n.wanted(after), "n": numberIn(after["portions_per_eater"])})
	case c.Table == "wants" && len(changedColumns(columns, c)) == 1 && before["kg_per_week"] != after["kg_per_week"]:
		return words.P("desk.edit_want_weight", words.Args{"vegetable": n.wanted(after), "weight": numberIn(after["kg_per_week"])})
	case c.Table == "wants" && len(changedColumns(columns, c)) == 1 && before["buy_kg_per_week"] != after["buy_kg_per_week"]:
		return words.P("desk.edit_bought", words.Args{"vegetable": n.wanted(after), "weight": numberIn(after["buy_kg_per_week"])})
	}
	return words.P("desk.edit_changed", words.Args{"what": n.row(c.Table, c.After)})
}

// saidHolding tells a change of what is told of the household as a whole.
func (n naming) saidHolding(changed []string, c journal.Change, after map[string]string) words.Phrase {
	if len(changed) == 1 && changed[0] == "plan" {
		return words.P("desk.edit_in_force", words.Args{"plan": n.name("plans", after["plan"])})
	}
	if len(changed) == 1 && changed[0] == "kitchen_h_per_week" {
		if after["kitchen_h_per_week"] == "" {
			return words.P("desk.edit_kitchen_free", nil)
		}
		return words.P("desk.edit_kitchen", words.Args{"n": numberIn(after["kitchen_h_per_week"])})
	}
	if said, ok := saidFeed(changed, after); ok {
		return said
	}
	if len(changed) == 1 && changed[0] == "can_l" {
		if after["can_l"] == "" {
			return words.P("desk.edit_can_usual", nil)
		}
		return words.P("desk.edit_can", words.Args{"n": numberIn(after["can_l"])})
	}
	return words.P("desk.edit_changed", words.Args{"what": n.row(c.Table, c.After)})
}

// saidPlanting tells a change of a planting; what it was called before is what
// people know it by.
func (n naming) saidPlanting(changed []string, c journal.Change, after map[string]string) words.Phrase {
	args := words.Args{"what": n.row(c.Table, c.Before)}
	key := "desk.edit_changed"
	if len(changed) == 1 {
		switch changed[0] {
		case "date":
			key, args["date"] = "desk.edit_moved_date", dateIn(after["date"])
		case "bed":
			key, args["bed"] = "desk.edit_moved_bed", n.name("beds", after["bed"])
		case "area_m2":
			key, args["area"] = "desk.edit_area", numberIn(after["area_m2"])
		case "store":
			if after["store"] != "" {
				key, args["store"] = "desk.edit_store", n.name("stores", after["store"])
			}
		}
	}
	return words.P(key, args)
}

// changedColumns are the columns in which a change makes a difference.
func changedColumns(columns []string, c journal.Change) []string {
	var out []string
	for i, name := range columns {
		if cellAt(c.Before, i) != cellAt(c.After, i) {
			out = append(out, name)
		}
	}
	return out
}

// saidTried puts tried changes that are kept into words.
func (n naming) saidTried(changes []journal.Change, try []plan.Change) words.Phrase {
	if len(changes) == 1 && changes[0].Table != "changes" {
		return n.said(changes[0])
	}
	var named []words.Phrase
	for _, id := range touchedBy(try) {
		rows := n.rows["plantings"]
		if at := slices.IndexFunc(rows, func(r KeptRow) bool { return r.ID == id }); at >= 0 {
			named = append(named, n.row("plantings", rows[at].Row))
		}
	}
	if len(named) == 0 || len(named) > mostNamed {
		return words.P("desk.edit_tried", words.Args{"n": len(try)})
	}
	return words.P("desk.edit_changed", words.Args{"what": named})
}

// numberIn reads a number as it is written in the files.
func numberIn(cell string) float64 {
	v, _ := strconv.ParseFloat(cell, 64) // checked when it was written
	return v
}

// saidFeed tells a change of the household's feed, where nothing else was changed.
func saidFeed(changed []string, after map[string]string) (words.Phrase, bool) {
	if len(changed) == 0 || slices.ContainsFunc(changed, func(c string) bool { return c != "feed_ml_l" && c != "feed_g_m2" }) {
		return words.Phrase{}, false
	}
	if len(changed) == 2 {
		return words.P("desk.edit_feeds", nil), true
	}
	cell, some, none := after[changed[0]], "desk.edit_feed", "desk.edit_feed_none"
	if changed[0] == "feed_g_m2" {
		some, none = "desk.edit_feed_dry", "desk.edit_feed_dry_none"
	}
	if cell == "" {
		return words.P(none, nil), true
	}
	return words.P(some, words.Args{"n": numberIn(cell)}), true
}
