package desk

import (
	"slices"

	"garner/internal/journal"
	"garner/internal/words"
)

// saidDrawn tells a change of a thing on a plan; what it was called before is
// what people know it by.
func (n naming) saidDrawn(changed []string, c journal.Change, before, after map[string]string) words.Phrase {
	args := words.Args{"what": n.row(c.Table, c.Before)}
	only := func(columns ...string) bool {
		return len(changed) > 0 && !slices.ContainsFunc(changed, func(name string) bool { return !slices.Contains(columns, name) })
	}
	switch {
	case only("x_m", "y_m") && before["x_m"]+before["y_m"] == "":
		return words.P("desk.edit_drawn_on", args)
	case only("x_m", "y_m") && after["x_m"]+after["y_m"] == "":
		return words.P("desk.edit_drawn_off", args)
	case only("x_m", "y_m"):
		return words.P("desk.edit_drawn_moved", args)
	case only("turn_deg"):
		return words.P("desk.edit_drawn_turned", args)
	case only("length_m", "width_m", "x_m", "y_m"):
		args["length"], args["width"] = numberIn(after["length_m"]), numberIn(after["width_m"])
		return words.P("desk.edit_drawn_sized", args)
	case only("outline", "shape", "length_m", "width_m", "x_m", "y_m"):
		return words.P("desk.edit_drawn_shaped", args)
	}
	return words.P("desk.edit_changed", words.Args{"what": n.row(c.Table, c.After)})
}
