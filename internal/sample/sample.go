// Package sample holds the demo holdings: an invented household of four in the
// north and a small one in the south, as the files that any holding is.
package sample

import (
	"embed"
	"io/fs"

	"garner/internal/fault"
	"garner/internal/words"
)

//go:embed all:data
var data embed.FS

// Files returns the files of a demo holding: "" or "main", or "south".
func Files(name string) (fs.FS, error) {
	if name == "" {
		name = "main"
	}
	files, err := fs.Sub(data, "data/"+name)
	if err != nil {
		return nil, fault.New(fault.NotFound, "sample.unknown", words.Args{"name": name})
	}
	if _, err := fs.Stat(files, "holding.csv"); err != nil {
		return nil, fault.New(fault.NotFound, "sample.unknown", words.Args{"name": name})
	}
	return files, nil
}
