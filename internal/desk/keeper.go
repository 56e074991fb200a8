package desk

import (
	"garner/internal/holding"
	"garner/internal/journal"
	"garner/internal/num"
)

// Keeper keeps one holding between runs. Package store satisfies it.
type Keeper interface {
	// Holding returns the holding as it is now and its version, which moves with
	// every entry. What is returned is not changed by later entries.
	Holding() (*holding.Holding, int64, error)
	// Row returns a row as it stands and the version of the entry that last
	// touched it; nil when there is none.
	Row(table, id string) (journal.Row, int64, error)
	// Append makes an entry in one transaction. A known idempotency key changes
	// nothing. A change whose Before is not what stands is refused with a
	// *Conflict, and nothing is written.
	Append(e journal.Entry) (version int64, err error)
	// Entries returns the newest entries first, from before a version on (0: the
	// newest), at most n.
	Entries(before int64, n int) ([]KeptEntry, error)
	// Result returns what was computed under a digest, and Keep keeps it.
	Result(d num.Digest) ([]byte, bool, error)
	Keep(d num.Digest, result []byte) error
	Close() error
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
