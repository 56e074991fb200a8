package protect

import (
	"io/fs"
	"strings"
	"testing"

	"garner/internal/crop"
	"garner/internal/table"
)

// Every row of the data has a source of the crop book and a mark, and names
// crops and families of it.
func TestDataHaveSources(t *testing.T) {
	book, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	families := map[string]bool{}
	for _, f := range book.Families() {
		families[f.Botanical] = true
	}
	files, err := fs.Glob(data, "data/*.csv")
	if err != nil || len(files) != 3 {
		t.Fatalf("%v %v", files, err)
	}
	for _, name := range files {
		c, err := table.OpenCells(data, name, "source", "mark")
		if err != nil {
			t.Fatal(err)
		}
		for r := range c.Rows {
			if _, ok := book.Source(c.Text(r, "source")); !ok {
				t.Errorf("%s row %d: no source %q", name, r+2, c.Text(r, "source"))
			}
			if m := c.Text(r, "mark"); m != "seen" && m != "memory" && m != "judgement" {
				t.Errorf("%s row %d: mark %q", name, r+2, m)
			}
			for _, column := range []string{"crop", "hosts"} {
				if c.Column(column) < 0 {
					continue
				}
				for _, id := range strings.Split(c.Text(r, column), ";") {
					if _, ok := book.Crop(id); !ok && !families[id] {
						t.Errorf("%s row %d: no crop or family %q", name, r+2, id)
					}
				}
			}
		}
	}
	if f, err := known(); err != nil || len(f.pests) == 0 || len(f.laid) == 0 {
		t.Errorf("%v", err)
	}
}
