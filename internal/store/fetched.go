package store

import (
	"database/sql"
	"errors"

	"garner/internal/desk"
)

// Fetched returns what was fetched from an address, nil when nothing ever was.
func (s *Store) Fetched(address string) (*desk.FetchedForecast, error) {
	f := desk.FetchedForecast{Address: address}
	var why string
	err := s.db.read.QueryRow("SELECT url, body, tag, modified, got_at, tried_at, failures, why FROM fetched WHERE address = ?", address).
		Scan(&f.URL, &f.Body, &f.Tag, &f.Modified, &f.GotAt, &f.TriedAt, &f.Failures, &why)
	if errors.Is(err, sql.ErrNoRows) {
		return nil, nil
	}
	if err != nil {
		return nil, unusable(s.db.path, err)
	}
	if why != "" {
		p, err := unpackPhrase(why)
		if err != nil {
			return nil, unusable(s.db.path, err)
		}
		f.Why = &p
	}
	return &f, nil
}

// KeepFetched keeps what was fetched from an address in place of what was there.
func (s *Store) KeepFetched(f desk.FetchedForecast) error {
	why := ""
	if f.Why != nil {
		why = packPhrase(*f.Why)
	}
	_, err := s.db.write.Exec(`INSERT INTO fetched (address, url, body, tag, modified, got_at, tried_at, failures, why) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)
		ON CONFLICT (address) DO UPDATE SET url = excluded.url, body = excluded.body, tag = excluded.tag, modified = excluded.modified,
		got_at = excluded.got_at, tried_at = excluded.tried_at, failures = excluded.failures, why = excluded.why`,
		f.Address, f.URL, f.Body, f.Tag, f.Modified, f.GotAt, f.TriedAt, f.Failures, why)
	return unusable(s.db.path, err)
}
