package printed

import (
	"embed"
	"io/fs"

	"garner/internal/fault"
	"garner/internal/words"
)

// published are the planting dates of ten regions that were read in their
// source, with the places' normals (data/README.md).
//
//go:embed data
var published embed.FS

// Published reads the planting dates that come with the program.
func Published() (*PlantingDates, error) {
	files, err := fs.Sub(published, "data")
	if err != nil {
		return nil, &fault.Error{Kind: fault.Internal, Phrase: words.P("table.file", words.Args{"file": "data"}), Err: err}
	}
	return Read(files)
}
