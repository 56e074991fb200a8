package store

import (
	"flag"
	"fmt"
	"path/filepath"
	"testing"
)

var update = flag.Bool("update", false, "keep a database of the newest schema in testdata")

// A copy of the database of every schema version ever landed is kept and can be
// opened, brought up to date and written to.
func TestEverySchemaVersionOpens(t *testing.T) {
	newest := holdingKind.newest()
	if name := kept(newest); *update && !exists(name) {
		s, _ := begun(t, inFolder(t))
		if _, err := s.Append(bedEntry(1, nil, bedRow("new", "New")), 0); err != nil {
			t.Fatal(err)
		}
		if _, err := s.Append(bedEntry(2, bedRow("new", "New"), nil), 0); err != nil {
			t.Fatal(err)
		}
		if err := s.Close(); err != nil {
			t.Fatal(err)
		}
		put(t, name, get(t, s.db.path))
	}
	for version := 1; version <= newest; version++ {
		opensAndWrites(t, kept(version))
	}
}

func kept(version int) string { return fmt.Sprintf("testdata/schema-%d.db", version) }

func opensAndWrites(t *testing.T, name string) {
	t.Helper()
	path := filepath.Join(t.TempDir(), "old.db")
	put(t, path, get(t, name))
	db, err := open(path, holdingKind)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	s := newStore("old", db)
	defer s.Close()
	h, _, err := s.Holding()
	if err != nil || len(h.Plantings) == 0 || len(h.Weather) == 0 {
		t.Errorf("%s: %v", name, err)
	}
	checkReplay(t, s)
	if _, err := s.Append(bedEntry(77, nil, bedRow("new", "New")), 0); err != nil {
		t.Errorf("%s: %v", name, err)
	}
}

// A step of the schema that fails leaves the version before it.
func TestAFailedStepLeavesTheVersionBefore(t *testing.T) {
	path := filepath.Join(t.TempDir(), "x.db")
	put(t, path, nil)
	db, err := connect(path, kind{application: 1, folder: "schema/server"})
	if err != nil {
		t.Fatal(err)
	}
	defer db.close()
	// The first step of a holding works, the tables of the list being others; made
	// twice it fails at its first table.
	if _, err := db.write.Exec("CREATE TABLE changes (x); PRAGMA user_version = 0"); err != nil {
		t.Fatal(err)
	}
	if err := migrate(db.write, holdingKind); err == nil {
		t.Fatal("a step over what was there went through")
	}
	var version, tables int
	if err := db.write.QueryRow("PRAGMA user_version").Scan(&version); err != nil || version != 0 {
		t.Errorf("version %d, %v", version, err)
	}
	if err := db.write.QueryRow("SELECT count(*) FROM sqlite_schema WHERE name = 'entries'").Scan(&tables); err != nil || tables != 0 {
		t.Errorf("half a step was made: %d, %v", tables, err)
	}
}
