package store

import (
	"context"
	"database/sql"
	"sync"

	"garner/internal/desk"
	"garner/internal/exchange"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/journal"
	"garner/internal/num"
)

// Store keeps one holding. It may be used from many places at once, and by
// several processes.
type Store struct {
	id      string
	db      *database
	weather *exchange.WeatherMemory
	renamed func(name string) // told when the holding calls itself otherwise; may be nil

	mu   sync.Mutex
	now  *standing           // as last read
	used map[num.Digest]bool // results used since last one was kept
}

var _ desk.Keeper = (*Store)(nil)

func newStore(id string, db *database) *Store {
	return &Store{id: id, db: db, weather: exchange.NewWeatherMemory(), used: map[num.Digest]bool{}}
}

// ID is the id under which the holding is kept.
func (s *Store) ID() string { return s.id }

// Close lets go of the database.
func (s *Store) Close() error { return unusable(s.db.path, s.db.close()) }

// Holding returns the holding as it stands and its version.
func (s *Store) Holding() (*holding.Holding, int64, error) {
	now, err := s.standing()
	if err != nil {
		return nil, 0, err
	}
	h, err := s.built(now)
	return h, now.version, err
}

// built makes the holding of rows, once.
func (s *Store) built(now *standing) (*holding.Holding, error) {
	if len(now.rows["holding"]) == 0 {
		return nil, fault.New(fault.NotFound, "store.nothing_yet", nil)
	}
	now.build.Do(func() {
		var report exchange.Report
		if now.holding, report = s.build(now, s.File); !report.OK() {
			now.wrong = report.Faults
		}
	})
	return now.holding, now.wrong
}

// Row returns a row as it stands and the version that last touched it.
func (s *Store) Row(table, id string) (journal.Row, int64, error) {
	rows, err := s.Rows(table)
	if err != nil {
		return nil, 0, err
	}
	for i := range rows {
		if rows[i].ID == id {
			return rows[i].Row, rows[i].Version, nil
		}
	}
	return nil, 0, nil
}

// Rows returns a table's rows in their order.
func (s *Store) Rows(table string) ([]desk.KeptRow, error) {
	now, err := s.standing()
	if err != nil {
		return nil, err
	}
	return now.rows[table], nil
}

// standing is all rows at a version.
type standing struct {
	version int64
	rows    map[string][]desk.KeptRow

	build   sync.Once
	holding *holding.Holding
	wrong   error
}

// standing returns the rows as they stand, read anew when an entry was made
// since, by whomever.
func (s *Store) standing() (*standing, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	version, err := latest(s.db.read)
	if err != nil {
		return nil, unusable(s.db.path, err)
	}
	if s.now != nil && s.now.version == version {
		return s.now, nil
	}
	now, err := s.readAll()
	if err != nil {
		return nil, unusable(s.db.path, err)
	}
	s.now = now
	return now, nil
}

// asker is a database or a transaction.
type asker interface {
	QueryRow(query string, args ...any) *sql.Row
}

func latest(db asker) (version int64, err error) {
	err = db.QueryRow("SELECT ifnull(max(version), 0) FROM entries").Scan(&version)
	return version, err
}

// readAll reads all rows at one moment.
func (s *Store) readAll() (*standing, error) {
	tx, err := s.db.read.BeginTx(context.Background(), nil)
	if err != nil {
		return nil, err
	}
	defer tx.Rollback()
	now := &standing{rows: map[string][]desk.KeptRow{}}
	if now.version, err = latest(tx); err != nil {
		return nil, err
	}
	found, err := tx.Query("SELECT tab, id, place, cells, version FROM rows ORDER BY tab, place, id")
	if err != nil {
		return nil, err
	}
	defer found.Close()
	for found.Next() {
		var table, cells string
		var row desk.KeptRow
		if err := found.Scan(&table, &row.ID, &row.Place, &cells, &row.Version); err != nil {
			return nil, err
		}
		if row.Row, err = unpack(columnsOf(table), cells); err != nil {
			return nil, err
		}
		now.rows[table] = append(now.rows[table], row)
	}
	return now, found.Err()
}

// build makes a holding of rows and of files found by their hash.
func (s *Store) build(now *standing, file func(hash string) ([]byte, error)) (*holding.Holding, exchange.Report) {
	tables := map[string][][]string{}
	var files []exchange.File
	for table, rows := range now.rows {
		for _, r := range rows {
			if table == desk.FilesTable {
				hash := r.Row[1]
				files = append(files, exchange.File{Name: r.Row[0], Hash: hash, Open: func() ([]byte, error) { return file(hash) }})
				continue
			}
			tables[table] = append(tables[table], r.Row)
		}
	}
	return exchange.Build(tables, files, s.weather)
}
