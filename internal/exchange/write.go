package exchange

import (
	"archive/zip"
	"bytes"
	"encoding/csv"
	"io"
	"maps"
	"slices"
	"time"

	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/words"
)

// Write returns all files of a holding by name, datapackage.json among them.
// The error is a fault.List when the holding holds what the files cannot say:
// what is written can always be read again.
func Write(h *holding.Holding) (map[string][]byte, error) {
	c := newChecker(h, newFindings())
	c.checkSchemas()
	weather := weatherTables(h, c.found)
	if faults := c.found.all(); len(faults) > 0 {
		return nil, faults
	}
	files := map[string][]byte{}
	for _, s := range sheets {
		files[s.schema().file()] = writeTable(s.schema().names(), s.cells(h))
	}
	for _, w := range weather {
		files[w.path] = w.content
	}
	descriptor, err := describe(h, weather)
	if err != nil {
		return nil, err
	}
	files[descriptorFile] = descriptor
	return files, nil
}

func writeTable(header []string, rows [][]string) []byte {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	// Writing to memory does not fail.
	_ = w.Write(header)
	_ = w.WriteAll(rows)
	return out.Bytes()
}

// zipTime is the time every file of a zip bears, so that the same holding gives
// the same zip. It is the earliest the format can say.
var zipTime = time.Date(1980, 1, 1, 0, 0, 0, 0, time.UTC)

// WriteZip writes all files of a holding as one zip, the same for the same
// holding.
func WriteZip(w io.Writer, h *holding.Holding) error {
	files, err := Write(h)
	if err != nil {
		return err
	}
	z := zip.NewWriter(w)
	for _, name := range slices.Sorted(maps.Keys(files)) {
		entry, err := z.CreateHeader(&zip.FileHeader{Name: name, Method: zip.Deflate, Modified: zipTime})
		if err != nil {
			return unwritten(err)
		}
		if _, err := entry.Write(files[name]); err != nil {
			return unwritten(err)
		}
	}
	if err := z.Close(); err != nil {
		return unwritten(err)
	}
	return nil
}

func unwritten(err error) *fault.Error {
	e := fault.New(fault.Internal, "exchange.unwritten", words.Args{})
	e.Err = err
	return e
}
