// Package journal holds the one form of writing: an entry that says what rows of
// which tables were, and what they are from now on. Everything stored is a
// projection of the entries, and undoing is an entry like any other.
package journal

import (
	"garner/internal/words"
)

// Row is a row of a table as it is written in the files: a cell for each column,
// in the order of the table's columns. A nil row is a row that is not there.
type Row []string

// Change is what an entry does to one row.
type Change struct {
	Table  string  `json:"table"` // a table of the holding's files, e.g. plantings
	ID     string  `json:"id"`    // the row's id
	Before Row     `json:"before,omitempty"`
	After  Row     `json:"after,omitempty"`
	Place  float64 `json:"place"` // where the row stands in its table, rising
}

// Entry is one act of a person: one or more changes that hold together.
type Entry struct {
	ID      string       `json:"id"`  // made by the client
	Key     string       `json:"key"` // idempotency key: an entry with a known key is not made twice
	Who     string       `json:"who"`
	Device  string       `json:"device"`
	At      string       `json:"at"` // RFC 3339, given from outside
	What    words.Phrase `json:"what"`
	Changes []Change     `json:"changes"`
	Undoes  string       `json:"undoes,omitempty"` // id of the entry this one takes back
}

// Inverse returns the entry that takes this one back. The caller gives it id,
// key, who, device and time.
func (e *Entry) Inverse() Entry {
	inverse := Entry{Undoes: e.ID, What: words.P("journal.undone", words.Args{"what": e.What})}
	for i := len(e.Changes) - 1; i >= 0; i-- {
		c := e.Changes[i]
		c.Before, c.After = c.After, c.Before
		inverse.Changes = append(inverse.Changes, c)
	}
	return inverse
}
