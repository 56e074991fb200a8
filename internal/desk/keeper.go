package desk

import (
	"errors"

	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/journal"
	"garner/internal/num"
)

// Keeper keeps one holding between runs. Package store satisfies it.
type Keeper interface {
	// Holding returns the holding as it is now and its version, which moves with
	// every entry. What is returned is not changed by later entries. Before the
	// first entry there is none: a fault of kind NotFound.
	Holding() (*holding.Holding, int64, error)
	// Row returns a row as it stands and the version of the entry that last
	// touched it; nil when there is none.
	Row(table, id string) (journal.Row, int64, error)
	// Rows returns a table's rows in their order.
	Rows(table string) ([]KeptRow, error)
	// Would returns what changes would make of the holding, with the content of the
	// weather files they bring. Nothing is written.
	Would(changes []journal.Change, files ...[]byte) (*Draft, error)
	// Append makes an entry in one transaction, with the content of the weather
	// files it names. A known idempotency key changes nothing. A change whose
	// Before is not what stands is refused with a *Conflict, an entry over another
	// version than the one given with ErrMoved (0: over any), and nothing is
	// written.
	Append(e journal.Entry, over int64, files ...[]byte) (version int64, err error)
	// Entry returns an entry by its id, and Made one by its idempotency key; nil
	// when there is none.
	Entry(id string) (*KeptEntry, error)
	Made(key string) (*KeptEntry, error)
	// Entries returns the newest entries first, from before a version on (0: the
	// newest), at most n.
	Entries(before int64, n int) ([]KeptEntry, error)
	// Result returns what was computed under a digest, and Keep keeps it.
	Result(d num.Digest) ([]byte, bool, error)
	Keep(d num.Digest, result []byte) error
	Close() error
}

// FilesTable is the table of an entry's changes that stands for the weather
// files: a row is a file's name and the SHA-256 of its content in hexadecimal.
const FilesTable = "files"

// ErrMoved says that another entry was made since the version that was seen.
var ErrMoved = errors.New("the holding has moved on")

// Draft is the holding as it would be after changes.
type Draft struct {
	Version int64                // of the holding it was built upon
	Rows    map[string][]KeptRow // by table
	Holding *holding.Holding     // nil with faults
	Faults  fault.List           // what the form of the tables does not allow
}

// KeptRow is a row with its place in the table and the version of the entry
// that last touched it.
type KeptRow struct {
	ID      string
	Row     journal.Row
	Place   float64
	Version int64
}

// KeptEntry is an entry with its version and the entry that took it back.
type KeptEntry struct {
	journal.Entry
	Version  int64
	UndoneBy string
}

// Conflict says that a row is no longer what the writer saw.
type Conflict struct {
	Table, ID    string
	Yours, Stood journal.Row // what you would write, and what stands now
}

// Error names the row; pages show both versions.
func (c *Conflict) Error() string { return "conflict on " + c.Table + " " + c.ID }
