package store

import (
	"bytes"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"garner/internal/desk"
	"garner/internal/exchange"
	"garner/internal/journal"
	"garner/internal/words"
)

// inFolder opens a new data directory.
func inFolder(t testing.TB) *Data {
	t.Helper()
	d, err := Folder(filepath.Join(t.TempDir(), "data"))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { d.Close() })
	return d
}

// begun keeps the small holding written by hand with which package exchange is
// tested.
func begun(t testing.TB, d *Data) (*Store, *desk.Office) {
	t.Helper()
	s, err := d.Create("hand")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.Close() })
	o := desk.NewOffice(s)
	report, err := o.Import(desk.Author{Entry: "first", Who: "Ada", Device: "test", At: "2027-03-01T08:00:00Z"}, os.DirFS("../exchange/testdata/hand"))
	if err != nil || !report.OK() {
		t.Fatal(err, report.Faults)
	}
	return s, o
}

// export is all files of a holding as one text.
func export(t testing.TB, o *desk.Office) []byte {
	t.Helper()
	files, err := o.Export()
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	for _, name := range slices.Sorted(maps.Keys(files)) {
		fmt.Fprintf(&out, "== %s\n%s", name, files[name])
	}
	return out.Bytes()
}

// bedRow is a row of beds.csv.
func bedRow(id, name string) journal.Row {
	row := make(journal.Row, len(exchange.Columns("beds")))
	copy(row, []string{id, "home", name, "bed", "6", "1.2", "1", "fair", "0"})
	return row
}

// bedEntry is an entry that writes a bed.
func bedEntry(n int, before, after journal.Row) journal.Entry {
	return journal.Entry{ID: fmt.Sprintf("e%d", n), Key: fmt.Sprintf("k%d", n), Who: "Ada", What: words.P("desk.edit_nothing", nil),
		Changes: []journal.Change{{Table: "beds", ID: "new", Before: before, After: after, Place: 100}}}
}
