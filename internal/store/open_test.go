package store

import (
	"bytes"
	"os"
	"path/filepath"
	"runtime"
	"testing"

	"garner/internal/desk"
	"garner/internal/fault"
)

// broken are ways in which a file is no sound database of ours.
var broken = map[string]struct {
	key   string
	spoil func(t *testing.T, path string)
}{
	"no database": {"store.damaged", func(t *testing.T, path string) { put(t, path, []byte("This is a letter, not a database.\n")) }},
	"empty":       {"store.damaged", func(t *testing.T, path string) { put(t, path, nil) }},
	"truncated":   {"store.damaged", func(t *testing.T, path string) { put(t, path, get(t, path)[:3*4096+100]) }},
	"overwritten": {"store.damaged", func(t *testing.T, path string) {
		content := get(t, path)
		for i := 2 * 4096; i < len(content); i += 64 {
			content[i] ^= 0x5a
		}
		put(t, path, content)
	}},
	"newer":              {"store.newer", func(t *testing.T, path string) { pragma(t, path, "user_version = 999") }},
	"of another program": {"store.not_ours", func(t *testing.T, path string) { pragma(t, path, "application_id = 7") }},
}

func put(t *testing.T, path string, content []byte) {
	t.Helper()
	if err := os.WriteFile(path, content, 0o600); err != nil {
		t.Fatal(err)
	}
}

func get(t *testing.T, path string) []byte {
	t.Helper()
	content, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return content
}

func pragma(t *testing.T, path, what string) {
	t.Helper()
	db, err := connect(path, holdingKind)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := db.write.Exec("PRAGMA " + what); err != nil {
		t.Fatal(err)
	}
	if err := db.close(); err != nil {
		t.Fatal(err)
	}
}

func TestWhatCannotBeReadIsRefusedAndLeftAlone(t *testing.T) {
	for name, c := range broken {
		t.Run(name, func(t *testing.T) {
			d := inFolder(t)
			s, _ := begun(t, d)
			path := s.db.path
			if err := s.Close(); err != nil {
				t.Fatal(err)
			}
			c.spoil(t, path)
			before := get(t, path)
			_, err := d.Open("hand")
			e, ok := err.(*fault.Error)
			if !ok || e.Kind != fault.Storage || e.Phrase.Key != c.key {
				t.Errorf("got %v", err)
			}
			if !bytes.Equal(before, get(t, path)) {
				t.Error("the file was changed")
			}
		})
	}
}

// A newer list of holdings is refused like a newer holding.
func TestANewerListIsRefused(t *testing.T) {
	d := inFolder(t)
	d.Close()
	path := filepath.Join(d.dir, serverFile)
	db, err := connect(path, serverKind)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := db.write.Exec("PRAGMA user_version = 999"); err != nil {
		t.Fatal(err)
	}
	db.close()
	before := get(t, path)
	if _, err := Folder(d.dir); fault.KindOf(err) != fault.Storage {
		t.Error(err)
	}
	if !bytes.Equal(before, get(t, path)) {
		t.Error("the list was changed")
	}
}

// What was in the log of a process that was killed is there after the file is
// opened again, also when the file is only looked at first.
func TestTheLogIsRead(t *testing.T) {
	d := inFolder(t)
	s, o := begun(t, d)
	want := export(t, o)
	// A copy of the files as they lie, while they are open.
	copied := filepath.Join(t.TempDir(), "copy.db")
	for _, suffix := range []string{"", "-wal"} {
		put(t, copied+suffix, get(t, s.db.path+suffix))
	}
	db, err := open(copied, holdingKind)
	if err != nil {
		t.Fatal(err)
	}
	again := newStore("hand", db)
	defer again.Close()
	if !bytes.Equal(want, export(t, desk.NewOffice(again))) {
		t.Error("the log was lost")
	}
}

func TestDataDirectoryFollowsThePlatform(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("paths are written the other way")
	}
	none := func(string) string { return "" }
	set := func(name, value string) func(string) string {
		return func(asked string) string {
			if asked == name {
				return value
			}
			return ""
		}
	}
	// XDG Base Directory Specification 0.8: $HOME/.local/share when unset or not
	// absolute. Apple, "File System Programming Guide": Library/Application Support.
	for _, c := range []struct {
		system    string
		variables func(string) string
		want      string
	}{
		{"linux", none, "/home/ada/.local/share/garner"},
		{"linux", set("XDG_DATA_HOME", "/data"), "/data/garner"},
		{"linux", set("XDG_DATA_HOME", "data"), "/home/ada/.local/share/garner"},
		{"freebsd", none, "/home/ada/.local/share/garner"},
		{"darwin", set("XDG_DATA_HOME", "/data"), "/home/ada/Library/Application Support/garner"},
		{"windows", none, "/home/ada/AppData/Local/garner"},
		{"windows", set("LOCALAPPDATA", "/local"), "/local/garner"},
	} {
		if got, err := defaultDir(c.system, "/home/ada", c.variables, nil); err != nil || got != c.want {
			t.Errorf("%s: %s, %v", c.system, got, err)
		}
	}
	if _, err := defaultDir("linux", "", none, os.ErrNotExist); fault.KindOf(err) != fault.NotFound {
		t.Error(err)
	}
}
