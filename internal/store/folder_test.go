package store

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"

	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/journal"
)

func ids(t *testing.T, d *Data) map[string]string {
	t.Helper()
	list, err := d.Holdings()
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]string{}
	for _, i := range list {
		out[i.ID] = i.Name
	}
	return out
}

func TestHoldingsAreListedByName(t *testing.T) {
	d := inFolder(t)
	s, o := begun(t, d)
	if diff := cmp.Diff(map[string]string{"hand": "Elm Row, back gardens"}, ids(t, d)); diff != "" {
		t.Error(diff)
	}
	row, err := o.Row("holding", "elm")
	if err != nil {
		rows, _ := o.Rows("holding")
		row = &rows[0]
	}
	if _, err := o.Save(desk.Author{Entry: "rename"}, "holding", row.ID, map[string]string{"name": "Elm Row"}, row.Version); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(map[string]string{"hand": "Elm Row"}, ids(t, d)); diff != "" {
		t.Error(diff)
	}
	if _, err := d.Create("hand"); fault.KindOf(err) != fault.Conflict {
		t.Errorf("made twice: %v", err)
	}
	if _, err := d.Open("hnad"); fault.KindOf(err) != fault.NotFound {
		t.Errorf("opened what is not there: %v", err)
	}
	_ = s
}

// The list can be lost: holdings in the folder are found again. What is no
// holding is passed over.
func TestALostListIsMadeAgain(t *testing.T) {
	d := inFolder(t)
	s, _ := begun(t, d)
	s.Close()
	d.Close()
	for _, suffix := range []string{"", "-wal", "-shm"} {
		os.Remove(filepath.Join(d.dir, serverFile+suffix))
	}
	put(t, d.path("letter.db"), []byte("no database"))
	put(t, d.path("copy.db"), get(t, s.db.path))
	again, err := Folder(d.dir)
	if err != nil {
		t.Fatal(err)
	}
	defer again.Close()
	if diff := cmp.Diff(map[string]string{"hand": "Elm Row, back gardens"}, ids(t, again)); diff != "" {
		t.Error(diff)
	}
}

// Ids are any word; files are named so that every system can bear them.
func TestIdsOfManyKinds(t *testing.T) {
	d := inFolder(t)
	for _, id := range []string{"con", "..", "Grüner", "gRÜNER", "a:b", "x?y#z%20", "-", "'; DROP TABLE holdings; --x"[0:1]} {
		s, err := d.Create(id)
		if err != nil {
			t.Errorf("%q: %v", id, err)
			continue
		}
		if _, err := s.Append(journal.Entry{ID: "e"}, 0); err != nil {
			t.Errorf("%q: %v", id, err)
		}
		if filepath.Dir(s.db.path) != filepath.Join(d.dir, holdingsDir) {
			t.Errorf("%q lies at %s", id, s.db.path)
		}
		s.Close()
	}
	for _, id := range []string{"", "two words", "a/b", `a\b`, "a,b"} {
		if _, err := d.Create(id); fault.KindOf(err) != fault.Invalid {
			t.Errorf("%q: %v", id, err)
		}
	}
}

// A directory whose name has signs that mean something in an address works like
// any other.
func TestPathsWithSigns(t *testing.T) {
	d, err := Folder(filepath.Join(t.TempDir(), "50% here? #1 & more"))
	if err != nil {
		t.Fatal(err)
	}
	defer d.Close()
	s, o := begun(t, d)
	if _, err := o.Holding(); err != nil {
		t.Error(err)
	}
	if !exists(s.db.path) {
		t.Error("the database lies elsewhere")
	}
}

func TestSettingsAreKept(t *testing.T) {
	d := inFolder(t)
	for _, want := range []string{"", "hand", "other"} {
		if want != "" {
			if err := d.Set("holding", want); err != nil {
				t.Fatal(err)
			}
		}
		if got, err := d.Setting("holding"); got != want || err != nil {
			t.Errorf("%q, %v", got, err)
		}
	}
}

// A holding made and never told anything is not a conflict: the next first run
// takes it up.
func TestAnEmptyHoldingIsTakenUp(t *testing.T) {
	d := inFolder(t)
	for range 2 {
		s, err := d.Create("new")
		if err != nil {
			t.Fatal(err)
		}
		if _, _, err := s.Holding(); fault.KindOf(err) != fault.NotFound {
			t.Error(err)
		}
		s.Close()
	}
}
