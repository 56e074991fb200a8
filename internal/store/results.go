package store

import (
	"database/sql"
	"errors"

	"garner/internal/num"
)

// mostResults is how much is kept of what was computed [bytes]: the tables of
// the last few changes.
const mostResults = 48 << 20

// Result returns what was computed under a digest.
func (s *Store) Result(d num.Digest) ([]byte, bool, error) {
	var content []byte
	err := s.db.read.QueryRow("SELECT content FROM results WHERE digest = ?", d[:]).Scan(&content)
	if errors.Is(err, sql.ErrNoRows) {
		return nil, false, nil
	}
	if err != nil {
		return nil, false, unusable(s.db.path, err)
	}
	s.mu.Lock()
	s.used[d] = true // written down with the next result, so that reading does not write
	s.mu.Unlock()
	return content, true, nil
}

// Keep keeps what was computed under a digest, and lets go of what was longest
// unused when there is too much.
func (s *Store) Keep(d num.Digest, result []byte) error {
	return unusable(s.db.path, s.keep(d, result, mostResults))
}

func (s *Store) keep(d num.Digest, result []byte, most int64) error {
	if int64(len(result)) > most {
		return nil // it would push out all others and itself
	}
	if result == nil {
		result = []byte{} // nothing computed is not nothing kept
	}
	tx, err := s.db.write.Begin()
	if err != nil {
		return err
	}
	defer tx.Rollback()
	if err := s.noteUse(tx); err != nil {
		return err
	}
	const nextUse = "(SELECT ifnull(max(used), 0) + 1 FROM results)"
	if _, err := tx.Exec("INSERT INTO results (digest, used, content) VALUES (?, "+nextUse+", ?) ON CONFLICT (digest) DO UPDATE SET used = "+nextUse,
		d[:], result); err != nil {
		return err
	}
	// From the last used down, all that no longer fits is let go.
	if _, err := tx.Exec(`DELETE FROM results WHERE digest IN (
		SELECT digest FROM (SELECT digest, sum(length(content)) OVER (ORDER BY used DESC) AS kept FROM results) WHERE kept > ?)`, most); err != nil {
		return err
	}
	return tx.Commit()
}

// noteUse writes down which results were used since the last one was kept.
func (s *Store) noteUse(tx *sql.Tx) error {
	s.mu.Lock()
	used := s.used
	s.used = map[num.Digest]bool{}
	s.mu.Unlock()
	for d := range used {
		if _, err := tx.Exec("UPDATE results SET used = (SELECT max(used) + 1 FROM results) WHERE digest = ?", d[:]); err != nil {
			return err
		}
	}
	return nil
}
