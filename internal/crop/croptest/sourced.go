// Package croptest holds data that stand beside the crop book to it, in the
// tests of the packages that own them.
package croptest

import (
	"io/fs"
	"slices"
	"testing"

	"garner/internal/crop"
	"garner/internal/table"
)

// marks are those of data that were neither fitted nor borrowed.
var marks = []string{"seen", "memory", "judgement"}

// Sourced checks a folder's files of data, as many as are told: every row has a
// source of the crop book and a mark, the column crop names crops of the book,
// and the lists of hosts and crops name its crops or families.
func Sourced(t *testing.T, files fs.FS, count int) {
	t.Helper()
	book, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	names, err := fs.Glob(files, "data/*.csv")
	if err != nil || len(names) != count {
		t.Fatalf("%d files of data are looked for: %v %v", count, names, err)
	}
	families := map[string]bool{}
	for _, f := range book.Families() {
		families[f.Botanical] = true
	}
	for _, name := range names {
		c, err := table.OpenCells(files, name, "source", "mark")
		if err != nil {
			t.Fatal(err)
		}
		for r := range c.Rows {
			if _, ok := book.Source(c.Text(r, "source")); !ok {
				t.Errorf("%s row %d: no source %q", name, r+2, c.Text(r, "source"))
			}
			if m := c.Text(r, "mark"); !slices.Contains(marks, m) {
				t.Errorf("%s row %d: mark %q", name, r+2, m)
			}
			for _, column := range []string{"crop", "crops", "hosts", "across"} {
				if c.Column(column) < 0 {
					continue
				}
				for _, id := range c.List(r, column) {
					if _, ok := book.Crop(id); !ok && (column == "crop" || !families[id]) {
						t.Errorf("%s row %d: no %s %q in the book", name, r+2, column, id)
					}
				}
			}
		}
	}
}
