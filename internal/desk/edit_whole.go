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

// Begin writes a whole holding where there is none yet, as one entry.
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
	h, err := o.Holding()
	if err != nil {
		return nil, err
	}
	return exchange.Write(h)
}

// ExportZip writes the files of the holding as a zip.
func (o *Office) ExportZip(w io.Writer) error {
	h, err := o.Holding()
	if err != nil {
		return err
	}
	return exchange.WriteZip(w, h)
}

func (o *Office) replace(by Author, h *holding.Holding, what words.Phrase, may func(map[string][]KeptRow) error) (*KeptEntry, error) {
	b, err := book()
	if err != nil {
		return nil, err
	}
	if faults := exchange.Check(h, b); len(faults) > 0 {
		return nil, faults
	}
	rows, contents, err := wholeOf(h)
	if err != nil {
		return nil, err
	}
	return o.write(by, func() (journal.Entry, error) {
		would, err := o.keeper.Would(nil)
		if err != nil {
			return journal.Entry{}, err
		}
		e := journal.Entry{What: what}
		for _, table := range append(exchange.Tables(), FilesTable) {
			e.Changes = append(e.Changes, becoming(table, would.Rows[table], rows[table])...)
		}
		return e, may(would.Rows)
	}, contents...)
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

// becoming is what makes a table's rows into others, in their order. When rows
// that stay have changed places, all are taken out and put in anew.
func becoming(table string, stands []KeptRow, rows [][]string) []journal.Change {
	var out []journal.Change
	wanted := map[string]bool{}
	for _, r := range rows {
		wanted[r[0]] = true
	}
	at := map[string]int{}
	for i, r := range stands {
		at[r.ID] = i
		if !wanted[r.ID] {
			out = append(out, journal.Change{Table: table, ID: r.ID, Before: r.Row, Place: r.Place})
		}
	}
	places := placesFor(stands, at, rows)
	for i, row := range rows {
		c := journal.Change{Table: table, ID: row[0], After: row, Place: places[i]}
		if k, known := at[row[0]]; known {
			c.Before = stands[k].Row
			if stands[k].Place != c.Place {
				out = append(out, journal.Change{Table: table, ID: row[0], Before: c.Before, Place: stands[k].Place})
				c.Before = nil
			} else if slices.Equal(c.Before, c.After) {
				continue
			}
		}
		out = append(out, c)
	}
	return out
}

// placesFor gives rows rising places. Those that stand keep theirs when they
// are still in the same order, and there is room between them.
func placesFor(stands []KeptRow, at map[string]int, rows [][]string) []float64 {
	places := make([]float64, len(rows))
	last, waiting := 0.0, 0 // the place before, and rows since that need one
	for i, row := range rows {
		k, known := at[row[0]]
		if !known {
			waiting++
			continue
		}
		if !spread(places[i-waiting:i], last, stands[k].Place) {
			return counted(len(rows))
		}
		places[i], last, waiting = stands[k].Place, stands[k].Place, 0
	}
	for i := len(rows) - waiting; i < len(rows); i++ {
		last++
		places[i] = last
	}
	return places
}

// spread puts places between two others; false when they do not rise.
func spread(places []float64, from, to float64) bool {
	step := (to - from) / float64(len(places)+1)
	before := from
	for i := range places {
		places[i] = from + step*float64(i+1)
		if places[i] <= before {
			return false
		}
		before = places[i]
	}
	return before < to
}

// counted are the places 1, 2, 3 and on.
func counted(n int) []float64 {
	places := make([]float64, n)
	for i := range places {
		places[i] = float64(i + 1)
	}
	return places
}
