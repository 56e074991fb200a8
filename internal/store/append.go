package store

import (
	"crypto/sha256"
	"database/sql"
	"encoding/hex"
	"errors"
	"fmt"

	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/journal"
	"garner/internal/words"
)

// Append makes an entry in one transaction and returns its version; see
// desk.Keeper.
func (s *Store) Append(e journal.Entry, over int64, files ...[]byte) (int64, error) {
	if e.ID == "" {
		return 0, ours(errors.New("an entry without an id"))
	}
	if e.Key == "" {
		e.Key = e.ID
	}
	version, err := s.append(e, over, files)
	if err != nil {
		return 0, s.refused(err)
	}
	s.tellName(e)
	return version, nil
}

// refused leaves what the desk must know of as it is.
func (s *Store) refused(err error) error {
	var conflict *desk.Conflict
	if errors.Is(err, desk.ErrMoved) || errors.As(err, &conflict) {
		return err
	}
	return unusable(s.db.path, err)
}

func (s *Store) append(e journal.Entry, over int64, files [][]byte) (int64, error) {
	tx, err := s.db.write.Begin()
	if err != nil {
		return 0, err
	}
	defer tx.Rollback()
	known, err := keyed(tx, e.Key)
	if known > 0 || err != nil {
		return known, err
	}
	stood, err := latest(tx)
	if err != nil {
		return 0, err
	}
	if over != 0 && stood != over {
		return 0, desk.ErrMoved
	}
	w := writing{tx, stood + 1}
	if err := w.entry(e); err != nil {
		return 0, err
	}
	for _, content := range files {
		if err := w.file(content); err != nil {
			return 0, err
		}
	}
	for n, c := range e.Changes {
		if err := w.change(n, c); err != nil {
			return 0, err
		}
	}
	return w.version, tx.Commit()
}

// keyed returns the version of the entry with an idempotency key, 0 when there
// is none.
func keyed(db asker, key string) (version int64, err error) {
	err = db.QueryRow("SELECT version FROM entries WHERE key = ?", key).Scan(&version)
	if errors.Is(err, sql.ErrNoRows) {
		return 0, nil
	}
	return version, err
}

// writing is an entry under way.
type writing struct {
	tx      *sql.Tx
	version int64
}

func (w writing) entry(e journal.Entry) error {
	var twice int
	if err := w.tx.QueryRow("SELECT count(*) FROM entries WHERE id = ?", e.ID).Scan(&twice); err != nil {
		return err
	}
	if twice > 0 {
		return fault.New(fault.Conflict, "store.entry_twice", nil)
	}
	var undoes any
	if e.Undoes != "" {
		undoes = e.Undoes
	}
	_, err := w.tx.Exec("INSERT INTO entries (version, id, key, who, device, at, what, undoes) VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
		w.version, e.ID, e.Key, e.Who, e.Device, e.At, packPhrase(e.What), undoes)
	return err
}

func (w writing) change(n int, c journal.Change) error {
	columns := columnsOf(c.Table)
	if columns == nil || c.ID == "" {
		return ours(fmt.Errorf("a change of %q %q", c.Table, c.ID))
	}
	stood, err := w.standing(columns, c)
	if err != nil {
		return err
	}
	if !same(stood, c.Before) {
		return &desk.Conflict{Table: c.Table, ID: c.ID, Yours: c.After, Stood: stood}
	}
	if _, err := w.tx.Exec("INSERT INTO changes (version, n, tab, id, before, after, place) VALUES (?, ?, ?, ?, ?, ?, ?)",
		w.version, n, c.Table, c.ID, pack(columns, c.Before), pack(columns, c.After), c.Place); err != nil {
		return err
	}
	return w.project(columns, c)
}

// standing returns the row a change is about, as it stands.
func (w writing) standing(columns []string, c journal.Change) (journal.Row, error) {
	var cells string
	err := w.tx.QueryRow("SELECT cells FROM rows WHERE tab = ? AND id = ?", c.Table, c.ID).Scan(&cells)
	if errors.Is(err, sql.ErrNoRows) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	return unpack(columns, cells)
}

// project writes what a change comes to.
func (w writing) project(columns []string, c journal.Change) error {
	if c.After == nil {
		_, err := w.tx.Exec("DELETE FROM rows WHERE tab = ? AND id = ?", c.Table, c.ID)
		return err
	}
	if c.Table == desk.FilesTable {
		if err := w.hasFile(c.After); err != nil {
			return err
		}
	}
	_, err := w.tx.Exec(`INSERT INTO rows (tab, id, place, cells, version) VALUES (?, ?, ?, ?, ?)
		ON CONFLICT (tab, id) DO UPDATE SET place = excluded.place, cells = excluded.cells, version = excluded.version`,
		c.Table, c.ID, c.Place, pack(columns, c.After), w.version)
	return err
}

// hasFile refuses a file of which the content was never given.
func (w writing) hasFile(row journal.Row) error {
	var n int
	if err := w.tx.QueryRow("SELECT count(*) FROM files WHERE hash = ?", row[1]).Scan(&n); err != nil {
		return err
	}
	if n == 0 {
		return ours(fmt.Errorf("no content of file %s", row[0]))
	}
	return nil
}

func (w writing) file(content []byte) error {
	_, err := w.tx.Exec("INSERT INTO files (hash, content) VALUES (?, ?) ON CONFLICT DO NOTHING", hashOf(content), content)
	return err
}

func hashOf(content []byte) string {
	sum := sha256.Sum256(content)
	return hex.EncodeToString(sum[:])
}

// File returns the content of a file by its hash.
func (s *Store) File(hash string) ([]byte, error) {
	var content []byte
	err := s.db.read.QueryRow("SELECT content FROM files WHERE hash = ?", hash).Scan(&content)
	if errors.Is(err, sql.ErrNoRows) {
		return nil, fault.New(fault.NotFound, "store.file_missing", words.Args{"hash": hash})
	}
	return content, unusable(s.db.path, err)
}

// tellName passes on the name by which an entry lets the holding go.
func (s *Store) tellName(e journal.Entry) {
	for _, c := range e.Changes {
		if c.Table == "holding" && len(c.After) > 1 && s.renamed != nil {
			s.renamed(c.After[1])
		}
	}
}
