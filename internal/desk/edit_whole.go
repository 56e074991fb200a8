package desk

import (
	"crypto/sha256"
	"encoding/hex"
	"io"
	"io/fs"
	"maps"
	"slices"

	"garner/internal/exchange"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/journal"
	"garner/internal/words"
)

// Begin writes a whole holding where there is none yet, as one entry. The error
// is a fault.List when the holding is not sound.
func (o *Office) Begin(by Author, h *holding.Holding) error {
	what := words.P("desk.edit_began", words.Args{"holding": h.Name})
	_, err := o.replace(by, h, what, func(stands map[string][]KeptRow) error {
		if len(stands["holding"]) > 0 {
			return fault.New(fault.Conflict, "desk.begun_already", nil)
		}
		return nil
	})
	return err
}

// Replace puts a whole holding in place of the one that stands, if any, as one
// entry. Rows that stay the same are left alone.
func (o *Office) Replace(by Author, h *holding.Holding) (*KeptEntry, error) {
	what := words.P("desk.edit_imported", words.Args{"holding": h.Name})
	return o.replace(by, h, what, func(map[string][]KeptRow) error { return nil })
}

// Import replaces the holding by the files of a folder. With faults nothing is
// changed.
func (o *Office) Import(by Author, files fs.FS) (exchange.Report, error) {
	b, err := book()
	if err != nil {
		return exchange.Report{}, err
	}
	h, report := exchange.CheckFolder(files, b)
	if !report.OK() {
		return report, nil
	}
	_, err = o.Replace(by, h)
	return report, err
}

// ImportZip is Import for a zip of the given size [bytes].
func (o *Office) ImportZip(by Author, zip io.ReaderAt, size int64) (exchange.Report, error) {
	b, err := book()
	if err != nil {
		return exchange.Report{}, err
	}
	h, report := exchange.CheckZip(zip, size, b)
	if !report.OK() {
		return report, nil
	}
	_, err = o.Replace(by, h)
	return report, err
}

// Export returns the files of the holding by name.
func (o *Office) Export() (map[string][]byte, error) {
	h, _, err := o.keeper.Holding()
	if err != nil {
		return nil, err
	}
	return exchange.Write(h)
}

// ExportZip writes the files of the holding as a zip.
func (o *Office) ExportZip(w io.Writer) error {
	h, _, err := o.keeper.Holding()
	if err != nil {
		return err
	}
	return exchange.WriteZip(w, h)
}

// replace puts a whole holding in place of what stands, when it may.
func (o *Office) replace(by Author, h *holding.Holding, what words.Phrase, may func(map[string][]KeptRow) error) (*KeptEntry, error) {
	b, err := book()
	if err != nil {
		return nil, err
	}
	if faults := exchange.Check(h, b); len(faults) > 0 {
		return nil, faults
	}
	return o.writeWith(by, func() (journal.Entry, [][]byte, error) {
		stands, err := o.keeper.Would(nil)
		if err != nil {
			return journal.Entry{}, nil, err
		}
		changes, files, err := replacing(stands.Rows, h)
		if err != nil {
			return journal.Entry{}, nil, err
		}
		return journal.Entry{What: what, Changes: changes}, files, may(stands.Rows)
	})
}

// replacing is what makes the rows that stand into those of a holding, with the
// content of its weather files.
func replacing(stands map[string][]KeptRow, h *holding.Holding) ([]journal.Change, [][]byte, error) {
	rows, contents, err := wholeOf(h)
	if err != nil {
		return nil, nil, err
	}
	var changes []journal.Change
	for _, table := range append(exchange.Tables(), FilesTable) {
		changes = append(changes, becoming(table, stands[table], rows[table])...)
	}
	return changes, contents, nil
}

// wholeOf returns all rows of a holding by table, the weather files among them,
// and what is in the files.
func wholeOf(h *holding.Holding) (rows map[string][][]string, contents [][]byte, err error) {
	files, err := exchange.WeatherFiles(h)
	if err != nil {
		return nil, nil, err
	}
	rows = exchange.Rows(h)
	for _, name := range slices.Sorted(maps.Keys(files)) {
		sum := sha256.Sum256(files[name])
		rows[FilesTable] = append(rows[FilesTable], []string{name, hex.EncodeToString(sum[:])})
		contents = append(contents, files[name])
	}
	return rows, contents, nil
}
