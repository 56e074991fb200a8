package desk_test

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"garner/internal/desk"
	"garner/internal/plan"
)

// Any number of edits, all taken back from the last to the first, leave the
// files of the holding byte for byte as they were.
func TestEditsTakenBackLeaveNothing(t *testing.T) {
	o := office(t)
	start := export(t, o)
	next, total, runs := 0, 0, 0
	rapid.Check(t, func(rt *rapid.T) {
		runs++
		var made []string
		for range rapid.IntRange(1, 12).Draw(rt, "edits") {
			next++
			name := fmt.Sprint("r", next)
			if randomEdit(rt, o, name) != nil {
				continue // it was refused
			}
			if isNewest(t, o, name) { // else it changed nothing
				made = append(made, name)
			}
		}
		total += len(made)
		for i := len(made) - 1; i >= 0; i-- {
			next++
			if _, err := o.Undo(by(fmt.Sprint("u", next)), made[i]); err != nil {
				rt.Fatalf("%s: %v", made[i], err)
			}
		}
		if export(t, o) != start {
			rt.Fatalf("something was left")
		}
	})
	if total < 2*runs { // a short test makes fewer runs
		t.Errorf("only %d edits went through in %d runs", total, runs)
	}
	t.Logf("%d edits", total)
}

func isNewest(t *testing.T, o *desk.Office, id string) bool {
	t.Helper()
	entries, err := o.Entries(1)
	if err != nil {
		t.Fatal(err)
	}
	return entries[0].ID == id
}

// randomEdit makes some edit, which may be refused.
func randomEdit(rt *rapid.T, o *desk.Office, name string) error {
	table := rapid.SampledFrom([]string{"beds", "covers", "plantings", "wants", "stores", "records"}).Draw(rt, "table")
	rows, err := o.Rows(table)
	if err != nil {
		rt.Fatal(err)
	}
	var some desk.RowView
	if len(rows) > 0 {
		some = rapid.SampledFrom(rows).Draw(rt, "row")
	}
	switch rapid.SampledFrom([]string{"new", "change", "change", "remove", "remove with", "try"}).Draw(rt, "act") {
	case "new":
		_, err = o.Save(by(name), table, "", newCells(rt, table), 0)
	case "change":
		_, err = o.Save(by(name), table, some.ID, newCells(rt, table), some.Version)
	case "remove":
		_, err = o.Remove(by(name), table, some.ID, some.Version, false)
	case "remove with":
		_, err = o.Remove(by(name), table, some.ID, some.Version, true)
	case "try":
		id := rapid.SampledFrom([]string{"p1", "p2", "p3", "p4", "p5"}).Draw(rt, "planting")
		err = o.KeepTry(by(name), []plan.Change{{Action: "set", Planting: id, Field: "area_m2", Value: amount(rt)}})
	}
	return err
}

func amount(rt *rapid.T) string {
	return fmt.Sprintf("%.2f", rapid.Float64Range(0.1, 12).Draw(rt, "amount"))
}

// newCells are cells of a table, mostly sound.
func newCells(rt *rapid.T, table string) map[string]string {
	pick := func(name string, from ...string) string { return rapid.SampledFrom(from).Draw(rt, name) }
	day := func() string {
		return fmt.Sprintf("2027-%02d-%02d", rapid.IntRange(1, 2).Draw(rt, "month"), rapid.IntRange(1, 28).Draw(rt, "day"))
	}
	switch table {
	case "beds":
		return map[string]string{"site": "home", "name": pick("name", "One", "Two, \"quoted\"", "Three"), "length_m": amount(rt), "width_m": "1.2"}
	case "covers":
		return map[string]string{"bed": pick("bed", "h1", "h2", "f1"), "kind": pick("kind", "mesh", "fleece"), "on": day(), "off": ""}
	case "plantings":
		return map[string]string{"plan": "main", "bed": pick("bed", "h1", "h2", "f1", "bed-1"), "crop": pick("crop", "leek", "carrot"), "use": "",
			"date": day(), "area_m2": amount(rt), "variety": "", "method": ""}
	case "wants":
		return map[string]string{"vegetable": pick("vegetable", "carrot", "leek"), "kg_per_week": amount(rt)}
	case "stores":
		return map[string]string{"name": pick("name", "Shed", "Cellar"), "method": pick("method", "clamp", "cellar"), "winter_c": "3", "summer_c": "14", "capacity_kg": amount(rt)}
	}
	return map[string]string{"date": day(), "what": "noted", "bed": pick("bed", "h1", "h2"), "note": rapid.StringN(0, 20, 60).Draw(rt, "note")}
}
