package soilcare

import (
	"io/fs"
	"testing"

	"garner/internal/crop"
	"garner/internal/table"
)

// Every row of the data has a source of the crop book and a mark, and every crop
// is one of the book.
func TestDataHaveSources(t *testing.T) {
	book, err := crop.Load()
	if err != nil {
		t.Fatal(err)
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
			if c.Column("crop") >= 0 {
				if _, ok := book.Crop(c.Text(r, "crop")); !ok {
					t.Errorf("%s row %d: no crop %q", name, r+2, c.Text(r, "crop"))
				}
			}
		}
	}
}
