package store

import (
	"database/sql"
	"math"

	"garner/internal/desk"
	"garner/internal/journal"
)

// Entries returns the newest entries first, from before a version on (0: the
// newest), at most n.
func (s *Store) Entries(before int64, n int) ([]desk.KeptEntry, error) {
	if before <= 0 {
		before = math.MaxInt64
	}
	return s.entries("WHERE version < ? ORDER BY version DESC LIMIT ?", before, n)
}

// Entry returns an entry by its id, nil when there is none.
func (s *Store) Entry(id string) (*desk.KeptEntry, error) {
	return s.oneEntry("WHERE id = ?", id)
}

// Made returns the entry with an idempotency key, nil when there is none.
func (s *Store) Made(key string) (*desk.KeptEntry, error) {
	return s.oneEntry("WHERE key = ?", key)
}

func (s *Store) oneEntry(which string, arg string) (*desk.KeptEntry, error) {
	found, err := s.entries(which, arg)
	if err != nil || len(found) == 0 {
		return nil, err
	}
	return &found[0], nil
}

func (s *Store) entries(which string, args ...any) ([]desk.KeptEntry, error) {
	out, err := s.readEntries(which, args)
	if err != nil {
		return nil, unusable(s.db.path, err)
	}
	for i := range out {
		if out[i].Changes, err = s.changes(out[i].Version); err != nil {
			return nil, unusable(s.db.path, err)
		}
		if out[i].UndoneBy, err = s.undoneBy(out[i].ID); err != nil {
			return nil, unusable(s.db.path, err)
		}
	}
	return out, nil
}

func (s *Store) readEntries(which string, args []any) ([]desk.KeptEntry, error) {
	found, err := s.db.read.Query("SELECT version, id, key, who, device, at, what, ifnull(undoes, '') FROM entries "+which, args...)
	if err != nil {
		return nil, err
	}
	defer found.Close()
	var out []desk.KeptEntry
	for found.Next() {
		var e desk.KeptEntry
		var what string
		if err := found.Scan(&e.Version, &e.ID, &e.Key, &e.Who, &e.Device, &e.At, &what, &e.Undoes); err != nil {
			return nil, err
		}
		if e.What, err = unpackPhrase(what); err != nil {
			return nil, err
		}
		out = append(out, e)
	}
	return out, found.Err()
}

func (s *Store) changes(version int64) ([]journal.Change, error) {
	found, err := s.db.read.Query("SELECT tab, id, before, after, place FROM changes WHERE version = ? ORDER BY n", version)
	if err != nil {
		return nil, err
	}
	defer found.Close()
	var out []journal.Change
	for found.Next() {
		var c journal.Change
		var before, after sql.NullString
		if err := found.Scan(&c.Table, &c.ID, &before, &after, &c.Place); err != nil {
			return nil, err
		}
		if c.Before, err = unpackMaybe(c.Table, before); err != nil {
			return nil, err
		}
		if c.After, err = unpackMaybe(c.Table, after); err != nil {
			return nil, err
		}
		out = append(out, c)
	}
	return out, found.Err()
}

func unpackMaybe(table string, cells sql.NullString) (journal.Row, error) {
	if !cells.Valid {
		return nil, nil
	}
	return unpack(columnsOf(table), cells.String)
}

// undoneBy returns the last entry that took an entry back and was not taken back
// itself, nothing when the entry stands.
func (s *Store) undoneBy(id string) (string, error) {
	undoers, err := s.undoers(id)
	if err != nil {
		return "", err
	}
	for _, by := range undoers {
		again, err := s.undoneBy(by)
		if again == "" || err != nil {
			return by, err
		}
	}
	return "", nil
}

// undoers are the entries that took an entry back, the newest first.
func (s *Store) undoers(id string) ([]string, error) {
	found, err := s.db.read.Query("SELECT id FROM entries WHERE undoes = ? ORDER BY version DESC", id)
	if err != nil {
		return nil, err
	}
	defer found.Close()
	var out []string
	for found.Next() {
		var by string
		if err := found.Scan(&by); err != nil {
			return nil, err
		}
		out = append(out, by)
	}
	return out, found.Err()
}
