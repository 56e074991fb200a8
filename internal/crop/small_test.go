package crop

import (
	"io/fs"
	"maps"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
)

// smallBook returns the files of a book that holds carrot and radish, and more
// roots when they are named, alone.
func smallBook(t testing.TB, more ...string) fstest.MapFS {
	t.Helper()
	files := fstest.MapFS{}
	keep := func(name string, rows func(string) bool) {
		text, err := fs.ReadFile(data, "data/"+name)
		if err != nil {
			t.Fatal(err)
		}
		lines := strings.SplitAfter(string(text), "\n")
		kept := lines[:1:1]
		for _, line := range lines[1:] {
			if rows(line) {
				kept = append(kept, line)
			}
		}
		files[name] = &fstest.MapFile{Data: []byte(strings.Join(kept, ""))}
	}
	all := func(string) bool { return true }
	crops := append([]string{"carrot", "radish"}, more...)
	ours := func(line string) bool {
		return slices.ContainsFunc(crops, func(id string) bool { return strings.HasPrefix(line, id+",") })
	}
	for _, name := range []string{"parameters.csv", "cautions.csv", "families.csv", "defaults.csv", "sources/common.csv", "sources/raising.csv", "sources/roots.csv"} {
		keep(name, all)
	}
	for _, id := range crops {
		keep("facts/"+id+".csv", all)
	}
	for _, name := range []string{"crops/roots.csv", "uses/roots.csv", "storage/roots.csv", "preparing/ways.csv"} {
		keep(name, ours)
	}
	keep("names/roots.csv", func(line string) bool {
		return slices.ContainsFunc(crops, func(id string) bool { return strings.Contains(line, ","+id+",") })
	})
	return files
}

// with returns the files with the first occurrence of one text in a file put in
// place of another, and the row in which it stands.
func with(t *testing.T, files fstest.MapFS, name, old, new string) (fstest.MapFS, int) {
	t.Helper()
	text := string(files[name].Data)
	at := strings.Index(text, old)
	if at < 0 {
		t.Fatalf("%s holds no %q", name, old)
	}
	changed := maps.Clone(files)
	changed[name] = &fstest.MapFile{Data: []byte(text[:at] + new + text[at+len(old):])}
	return changed, 1 + strings.Count(text[:at], "\n") + strings.Count(old[:len(old)-len(strings.TrimLeft(old, "\n"))], "\n")
}
