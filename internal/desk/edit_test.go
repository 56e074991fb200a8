package desk_test

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/exchange"
	"garner/internal/fault"
	"garner/internal/plan"
	"garner/internal/store"
	"garner/internal/words"
)

// by is an author with an entry of its own.
func by(entry string) desk.Author {
	return desk.Author{Who: "Ada", Device: "test", Entry: entry, At: "2027-03-01T08:00:00Z"}
}

// office keeps the small holding written by hand.
func office(t testing.TB) *desk.Office {
	t.Helper()
	o := empty(t)
	report, err := o.Import(by("first"), os.DirFS("../exchange/testdata/hand"))
	if err != nil || !report.OK() {
		t.Fatal(err, report.Faults)
	}
	return o
}

func empty(t testing.TB) *desk.Office {
	t.Helper()
	d, err := store.Folder(filepath.Join(t.TempDir(), "data"))
	if err != nil {
		t.Fatal(err)
	}
	s, err := d.Create("hand")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.Close(); d.Close() })
	return desk.NewOffice(s)
}

// export is all files of the holding as one text.
func export(t testing.TB, o *desk.Office) string {
	t.Helper()
	files, err := o.Export()
	if err != nil {
		t.Fatal(err)
	}
	var out strings.Builder
	for _, name := range slices.Sorted(maps.Keys(files)) {
		fmt.Fprintf(&out, "== %s\n%s", name, files[name])
	}
	return out.String()
}

func said(e *desk.KeptEntry) string { return words.English().Text(e.What) }

func row(t *testing.T, o *desk.Office, table, id string) *desk.RowView {
	t.Helper()
	r, err := o.Row(table, id)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestSaveAddsAndChanges(t *testing.T) {
	o := office(t)
	e, err := o.Save(by("a"), "plantings", "", map[string]string{
		"plan": "main", "bed": "h1", "crop": "leek", "method": "plant", "date": "2027-06-20", "area_m2": "1,5"}, 0)
	if err != nil {
		t.Fatal(err)
	}
	if got := said(e); got != "added leeks in Long bed, 20 June 2027" {
		t.Error(got)
	}
	added := row(t, o, "plantings", "lee-27a")
	if added.Cells["area_m2"] != "1.5" || added.Version != e.Version {
		t.Errorf("%+v", added)
	}
	for n, c := range []struct {
		cells map[string]string
		want  string
	}{
		{map[string]string{"date": "2027-06-27"}, "moved leeks in Long bed to 27 June 2027"},
		{map[string]string{"bed": "f1"}, "moved leeks in Long bed to First row"},
		{map[string]string{"area_m2": "2.5"}, "gave leeks in First row 2.5 m²"},
		{map[string]string{"area_m2": "2", "date": "2027-07-01"}, "changed leeks in First row"},
	} {
		e, err := o.Save(by(fmt.Sprint("b", n)), "plantings", "lee-27a", c.cells, row(t, o, "plantings", "lee-27a").Version)
		if err != nil {
			t.Fatal(err)
		}
		if got := said(e); got != c.want {
			t.Errorf("said %q, want %q", got, c.want)
		}
	}
	if e, err := o.Save(by("c"), "plantings", "lee-27a", map[string]string{"date": "2027-07-01"}, row(t, o, "plantings", "lee-27a").Version); err != nil || e.ID != "" {
		t.Errorf("saving the same again made an entry: %v, %v", e, err)
	}
}

// Whoever writes over what another has written is shown both.
func TestTheSecondTabIsShownBoth(t *testing.T) {
	o := office(t)
	seen := row(t, o, "beds", "h1")
	if _, err := o.Save(by("a"), "beds", "h1", map[string]string{"name": "Mine"}, seen.Version); err != nil {
		t.Fatal(err)
	}
	before := export(t, o)
	_, err := o.Save(by("b"), "beds", "h1", map[string]string{"name": "Yours"}, seen.Version)
	var c *desk.Conflict
	if !errors.As(err, &c) || o.Cells("beds", c.Stood)["name"] != "Mine" || o.Cells("beds", c.Yours)["name"] != "Yours" {
		t.Fatalf("%v, %+v", err, c)
	}
	if _, err := o.Remove(by("c"), "beds", "f1", seen.Version+7, false); !errors.As(err, &c) {
		t.Error(err)
	}
	if export(t, o) != before {
		t.Error("something was written")
	}
	// The same form sent twice is one entry, whatever came between.
	again, err := o.Save(by("a"), "beds", "h1", map[string]string{"name": "Mine"}, seen.Version)
	if err != nil || again.ID != "a" || export(t, o) != before {
		t.Errorf("%v, %v", again, err)
	}
}

// Nonsense in a field is told beside that field, and nothing is written.
func TestNonsenseIsToldBesideItsField(t *testing.T) {
	o := office(t)
	before := export(t, o)
	sound := map[string]string{"plan": "main", "bed": "h1", "crop": "leek", "date": "2027-06-20", "area_m2": "1.5"}
	columns, err := o.Columns("plantings")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range columns {
		if c.Name == "id" {
			continue
		}
		cells := maps.Clone(sound)
		cells[c.Name] = "no such thing \x00\ufffd=;"
		_, err := o.Save(by("x"+c.Name), "plantings", "", cells, 0)
		list, ok := err.(fault.List)
		if !ok {
			t.Errorf("%s: %v", c.Name, err)
			continue
		}
		if !slices.ContainsFunc(list, func(e *fault.Error) bool { return e.At.Column == c.Name || c.Name == "to" && e.At.Column == "relation" }) {
			t.Errorf("%s: %v", c.Name, err)
		}
	}
	for _, c := range columns {
		if !c.Required || c.Name == "id" {
			continue
		}
		cells := maps.Clone(sound)
		cells[c.Name] = " "
		_, err := o.Save(by("y"+c.Name), "plantings", "", cells, 0)
		if list, ok := err.(fault.List); !ok || list[0].At.Column != c.Name {
			t.Errorf("%s left blank: %v", c.Name, err)
		}
	}
	cells := maps.Clone(sound)
	cells["area_m2"] = "700"
	_, err = o.Save(by("z"), "plantings", "", cells, 0)
	if list, ok := err.(fault.List); !ok || len(list) != 1 || list[0].Phrase.Key != "exchange.area_too_large" || list[0].At.Column != "area_m2" {
		t.Errorf("more than the bed: %v", err)
	}
	if export(t, o) != before {
		t.Error("something was written")
	}
}

// A change that makes another row wrong names that row.
func TestAChangeMayNotBreakOthers(t *testing.T) {
	o := office(t)
	bed := row(t, o, "beds", "h1")
	_, err := o.Save(by("a"), "beds", "h1", map[string]string{"length_m": "0.1"}, bed.Version)
	list, ok := err.(fault.List)
	if !ok || list[0].Phrase.Key != "desk.edit_elsewhere" || list[0].At != (fault.Place{}) {
		t.Fatalf("%v", err)
	}
	if text := words.English().Text(list[0].Phrase); !strings.Contains(text, "in Long bed") {
		t.Error(text)
	}
}

func TestRemoveNamesWhatPointsAtIt(t *testing.T) {
	o := office(t)
	before := export(t, o)
	bed := row(t, o, "beds", "h1")
	_, err := o.Remove(by("a"), "beds", "h1", bed.Version, false)
	e, ok := err.(*fault.Error)
	if !ok || e.Phrase.Key != "desk.remove_pointed_at" || !strings.Contains(words.English().Text(e.Phrase), "in Long bed") {
		t.Fatalf("%v", err)
	}
	gone, err := o.Remove(by("b"), "beds", "h1", bed.Version, true)
	if err != nil {
		t.Fatal(err)
	}
	if got := said(gone); got != "took out bed Long bed" {
		t.Error(got)
	}
	plantings, err := o.Rows("plantings")
	if err != nil || slices.ContainsFunc(plantings, func(r desk.RowView) bool { return r.Cells["bed"] == "h1" }) {
		t.Errorf("plantings stand on a bed that is gone: %v", err)
	}
	back, err := o.Undo(by("c"), "b")
	if err != nil {
		t.Fatal(err)
	}
	if got := said(back); got != "took back: took out bed Long bed" {
		t.Error(got)
	}
	if export(t, o) != before {
		t.Error("the undone removal left something")
	}
	if _, err := o.Undo(by("d"), "b"); fault.KindOf(err) != fault.Conflict {
		t.Errorf("taken back twice: %v", err)
	}
	again, err := o.Undo(by("e"), "c")
	if err != nil || said(again) != "made again: took out bed Long bed" {
		t.Errorf("%v, %v", again, err)
	}
	entries, err := o.Entries(3)
	if err != nil || entries[0].ID != "e" || entries[1].UndoneBy != "e" || entries[2].UndoneBy != "" {
		t.Errorf("%+v, %v", entries, err)
	}
}

// Every table's rows can be taken out with what leans on them, and the result is
// sound.
func TestRemovingWithWhatFollowsIsSound(t *testing.T) {
	o := office(t)
	start := export(t, o)
	for _, table := range []string{"sites", "beds", "covers", "crops", "varieties", "plans", "plantings", "changes", "wants", "stores", "batches", "records", "weather"} {
		rows, err := o.Rows(table)
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range rows {
			name := table + "/" + r.ID
			now := row(t, o, table, r.ID)
			if _, err := o.Remove(by(name), table, r.ID, now.Version, true); err != nil {
				t.Errorf("%s: %v", name, err)
				continue
			}
			if _, err := o.Undo(by("undo "+name), name); err != nil {
				t.Errorf("%s taken back: %v", name, err)
			}
		}
	}
	if export(t, o) != start {
		t.Error("something was left")
	}
}

// Taking back what others have built upon is refused.
func TestUndoMindsWhatCameAfter(t *testing.T) {
	o := office(t)
	bed := map[string]string{"site": "home", "name": "New", "length_m": "5", "width_m": "1"}
	if _, err := o.Save(by("bed"), "beds", "", bed, 0); err != nil {
		t.Fatal(err)
	}
	id := "bed-1"
	if _, err := o.Save(by("leek"), "plantings", "", map[string]string{"plan": "main", "bed": id, "crop": "leek", "date": "2027-06-20", "area_m2": "2"}, 0); err != nil {
		t.Fatal(err)
	}
	if _, err := o.Undo(by("u1"), "bed"); err == nil {
		t.Error("the bed went from under the leeks")
	} else if list, ok := err.(fault.List); !ok || list[0].Phrase.Key != "desk.edit_elsewhere" {
		t.Errorf("%v", err)
	}
	if _, err := o.Save(by("name"), "beds", id, map[string]string{"name": "Newer"}, row(t, o, "beds", id).Version); err != nil {
		t.Fatal(err)
	}
	var c *desk.Conflict
	if _, err := o.Undo(by("u2"), "bed"); !errors.As(err, &c) || c.ID != id {
		t.Errorf("%v", err)
	}
	if _, err := o.Undo(by("u3"), "nothing"); fault.KindOf(err) != fault.NotFound {
		t.Errorf("%v", err)
	}
}

// What was tried and is kept gives the holding that was tried.
func TestKeptTriesAreWhatWasTried(t *testing.T) {
	o := office(t)
	h, err := o.Holding()
	if err != nil {
		t.Fatal(err)
	}
	standing, _ := plan.Resolve(h.Plans, h.Plantings, h.Changes, h.Plan)
	try := []plan.Change{
		{Action: "set", Planting: standing[0].ID, Field: "area_m2", Value: "0.5"},
		{Action: "add", Planting: "tried-1", Value: "bed=f1;crop=leek;date=2027-06-20;area_m2=1"},
		{Action: "set", Planting: "tried-1", Field: "area_m2", Value: "2"},
	}
	tried, _, err := o.Tried(try)
	if err != nil {
		t.Fatal(err)
	}
	want, faults := plan.Resolve(tried.Plans, tried.Plantings, tried.Changes, tried.Plan)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	for _, inForce := range []string{h.Plan, draftOf(t, o)} {
		start := export(t, o)
		if err := o.KeepTry(by("keep "+inForce), try); err != nil {
			t.Fatal(err)
		}
		now, err := o.Holding()
		if err != nil {
			t.Fatal(err)
		}
		got, faults := plan.Resolve(now.Plans, now.Plantings, now.Changes, now.Plan)
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		for _, w := range want {
			i := slices.IndexFunc(got, func(p plan.Planting) bool { return p.ID == w.ID })
			if i < 0 {
				if inForce == h.Plan {
					t.Errorf("%s is not there", w.ID)
				}
				continue
			}
			if w.ID == standing[0].ID || w.ID == "tried-1" {
				w.Plan, got[i].Plan = "", ""
				if got[i] != w {
					t.Errorf("%s: %+v, tried %+v", w.ID, got[i], w)
				}
			}
		}
		if _, err := o.Undo(by("undo "+inForce), "keep "+inForce); err != nil {
			t.Fatal(err)
		}
		if export(t, o) != start {
			t.Error("something was left")
		}
		takeDraft(t, o)
	}
	bad := []plan.Change{{Action: "set", Planting: standing[0].ID, Field: "area_m2", Value: "much"}}
	if err := o.KeepTry(by("bad"), bad); fault.KindOf(err) != fault.Invalid {
		t.Errorf("%v", err)
	}
}

// Over a draft the day by which a planting is cleared is a step of the draft.
func TestClearingOverADraftLeavesThePlanBelow(t *testing.T) {
	o := office(t)
	takeDraft(t, o)
	clearBy := func(inForce string) cal.Date {
		h, err := o.Holding()
		if err != nil {
			t.Fatal(err)
		}
		all, faults := plan.Resolve(h.Plans, h.Plantings, h.Changes, inForce)
		at := slices.IndexFunc(all, func(p plan.Planting) bool { return p.ID == "p3" })
		if len(faults) > 0 || at < 0 {
			t.Fatal(all, faults)
		}
		return all[at].ClearBy
	}
	day := cal.Of(2027, 9, 20)
	row, err := o.Row("plantings", "p3")
	if err != nil {
		t.Fatal(err)
	}
	if _, err := o.ClearBy(by("clear"), "p3", day, row.Version); err != nil {
		t.Fatal(err)
	}
	if got := clearBy(draftOf(t, o)); got != day {
		t.Errorf("cleared by %s in the draft, want %s", got, day)
	}
	if got := clearBy("main"); got.IsSet() {
		t.Errorf("the plan below is cleared by %s", got)
	}
}

// draftOf names a draft of the holding.
func draftOf(t *testing.T, o *desk.Office) string {
	t.Helper()
	h, err := o.Holding()
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range h.Plans {
		if p.Base != "" {
			return p.ID
		}
	}
	t.Fatal("no draft")
	return ""
}

// takeDraft puts the draft in force.
func takeDraft(t *testing.T, o *desk.Office) {
	t.Helper()
	rows, err := o.Rows("holding")
	if err != nil {
		t.Fatal(err)
	}
	draft := draftOf(t, o)
	if rows[0].Cells["plan"] == draft {
		return
	}
	if _, err := o.Save(by("draft in force"), "holding", rows[0].ID, map[string]string{"plan": draft}, rows[0].Version); err != nil {
		t.Fatal(err)
	}
}

// A faulty import changes nothing; a sound one is taken whole and can be taken
// back, also when it only puts rows in another order.
func TestImportIsAllOrNothing(t *testing.T) {
	o := office(t)
	start := export(t, o)
	dir := t.TempDir()
	if err := os.CopyFS(dir, os.DirFS("../exchange/testdata/hand")); err != nil {
		t.Fatal(err)
	}
	beds := filepath.Join(dir, "beds.csv")
	text, err := os.ReadFile(beds)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(beds, append(text, "b9,nowhere,Bad,bed,-1,1,1,fair,9\n"...), 0o644); err != nil {
		t.Fatal(err)
	}
	report, err := o.Import(by("bad"), os.DirFS(dir))
	if err != nil || report.OK() || export(t, o) != start {
		t.Fatalf("%v, %v", err, report.Faults)
	}
	lines := bytes.SplitAfter(text, []byte("\n"))
	lines[1], lines[2] = lines[2], lines[1]
	lines = slices.Insert(lines, 2, []byte("m1,home,Between,bed,3,1,1,fair,3\n"))
	if err := os.WriteFile(beds, bytes.Join(lines, nil), 0o644); err != nil {
		t.Fatal(err)
	}
	if report, err = o.Import(by("good"), os.DirFS(dir)); err != nil || !report.OK() {
		t.Fatalf("%v, %v", err, report.Faults)
	}
	files, err := o.Export()
	if err != nil {
		t.Fatal(err)
	}
	for i, line := range lines { // the files are older than the columns of the plan
		if text := bytes.TrimSuffix(line, []byte("\n")); i > 0 && len(text) < len(line) {
			cells, err := csv.NewReader(bytes.NewReader(text)).Read()
			if err != nil {
				t.Fatal(err)
			}
			lines[i] = append(append(bytes.Clone(text), bytes.Repeat([]byte(","), len(exchange.Columns("beds"))-len(cells))...), '\n')
		}
	}
	lines[0] = []byte(strings.Join(exchange.Columns("beds"), ",") + "\n")
	if want := bytes.Join(lines, nil); !bytes.Equal(files["beds.csv"], want) {
		t.Errorf("%s, want %s", files["beds.csv"], want)
	}
	if _, err := o.Undo(by("undo"), "good"); err != nil {
		t.Fatal(err)
	}
	if export(t, o) != start {
		t.Error("the import left something")
	}
}

func TestAHoldingBeginsOnce(t *testing.T) {
	o := empty(t)
	h, err := desk.Sample("south")
	if err != nil {
		t.Fatal(err)
	}
	if _, err := o.Holding(); fault.KindOf(err) != fault.NotFound {
		t.Errorf("before the first: %v", err)
	}
	if err := o.Begin(by("a"), h); err != nil {
		t.Fatal(err)
	}
	if err := o.Begin(by("a"), h); err != nil {
		t.Errorf("the same form sent twice: %v", err)
	}
	if err := o.Begin(by("b"), h); fault.KindOf(err) != fault.Conflict {
		t.Errorf("begun twice: %v", err)
	}
	if _, err := o.Undo(by("c"), "a"); err != nil {
		t.Fatal(err)
	}
	if _, err := o.Holding(); fault.KindOf(err) != fault.NotFound {
		t.Errorf("after the beginning was taken back: %v", err)
	}
}

// Many at once lose nothing and wait for each other.
func TestManyEditAtOnce(t *testing.T) {
	o := office(t)
	const people, each = 6, 5
	var done sync.WaitGroup
	for p := range people {
		done.Go(func() {
			for n := range each {
				if _, err := o.Save(by(fmt.Sprint(p, "-", n)), "stores", "", map[string]string{
					"name": "Shed", "method": "clamp", "winter_c": "3", "summer_c": "14", "capacity_kg": "10"}, 0); err != nil {
					t.Error(err)
				}
			}
		})
	}
	done.Wait()
	entries, err := o.Entries(100)
	if err != nil || len(entries) != people*each+1 {
		t.Errorf("%d entries, %v", len(entries), err)
	}
}

// A short name that is given is kept, and told when it is taken.
func TestAShortNameMayBeGiven(t *testing.T) {
	o := office(t)
	cells := map[string]string{"id": "h1", "site": "home", "name": "New", "length_m": "5", "width_m": "1"}
	_, err := o.Save(by("a"), "beds", "", cells, 0)
	if list, ok := err.(fault.List); !ok || list[0].Phrase.Key != "desk.id_taken" || list[0].At.Column != "id" {
		t.Errorf("%v", err)
	}
	cells["id"] = "by-the-gate"
	if _, err := o.Save(by("b"), "beds", "", cells, 0); err != nil {
		t.Fatal(err)
	}
	row(t, o, "beds", "by-the-gate")
}

// Every column and every value of a closed list has its words.
func TestColumnsHaveWords(t *testing.T) {
	o := office(t)
	for _, table := range []string{"holding", "sites", "beds", "covers", "crops", "varieties", "plans", "plantings", "changes", "wants", "stores", "batches", "records", "weather"} {
		columns, err := o.Columns(table)
		if err != nil {
			t.Fatal(err)
		}
		if !words.English().Has("desk.kind_" + table) {
			t.Errorf("%s has no name", table)
		}
		for _, c := range columns {
			if !words.English().Has(c.Label.Key) {
				t.Errorf("%s has no words", c.Label.Key)
			}
			for _, v := range c.Values {
				if !words.English().Has(v.Meaning.Key) {
					t.Errorf("%s has no words", v.Meaning.Key)
				}
			}
		}
	}
}
