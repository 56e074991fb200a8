package store

import (
	"database/sql"
	"errors"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"unicode"

	"garner/internal/fault"
	"garner/internal/near"
	"garner/internal/words"
)

// Data is a data directory: the database that lists the holdings, and a folder
// with a database for each.
type Data struct {
	dir    string
	server *database
}

// Info is one holding of a data directory.
type Info struct {
	ID   string
	File string // path of its database
	Name string // as the holding calls itself; nothing before the first entry
}

const (
	serverFile    = "server.db"
	holdingsDir   = "holdings"
	holdingSuffix = ".db"
)

// Exists tells whether anything is kept in a data directory.
func Exists(dir string) bool { return exists(filepath.Join(dir, serverFile)) }

// Folder opens a data directory, and makes it when there is none.
func Folder(dir string) (*Data, error) {
	dir, err := filepath.Abs(dir)
	if err != nil {
		return nil, unusable(dir, err)
	}
	if err := os.MkdirAll(filepath.Join(dir, holdingsDir), 0o700); err != nil {
		return nil, unusable(dir, err)
	}
	path := filepath.Join(dir, serverFile)
	opened := open
	if !exists(path) {
		opened = create
	}
	server, err := opened(path, serverKind)
	if err != nil {
		return nil, err
	}
	d := &Data{dir: dir, server: server}
	if err := d.adopt(); err != nil {
		d.Close()
		return nil, err
	}
	return d, nil
}

// Close lets go of the list.
func (d *Data) Close() error { return unusable(d.server.path, d.server.close()) }

// Holdings lists the holdings by id.
func (d *Data) Holdings() ([]Info, error) {
	found, err := d.server.read.Query("SELECT id, file, name FROM holdings ORDER BY id")
	if err != nil {
		return nil, d.failed(err)
	}
	defer found.Close()
	var out []Info
	for found.Next() {
		var i Info
		if err := found.Scan(&i.ID, &i.File, &i.Name); err != nil {
			return nil, d.failed(err)
		}
		i.File = d.path(i.File)
		out = append(out, i)
	}
	return out, d.failed(found.Err())
}

// Create makes a new holding without entries. One that is there but has no
// entries yet is taken as new.
func (d *Data) Create(id string) (*Store, error) {
	if id == "" || strings.ContainsAny(id, "/\\;=,") || strings.ContainsFunc(id, unicode.IsSpace) {
		return nil, fault.New(fault.Invalid, "store.bad_id", words.Args{"given": id})
	}
	file, err := d.fileOf(id)
	if err != nil {
		return nil, err
	}
	if file != "" {
		return d.reuse(id)
	}
	file = d.freeFile(id)
	db, err := create(d.path(file), holdingKind)
	if err != nil {
		return nil, err
	}
	if _, err := db.write.Exec("INSERT INTO facts (name, value) VALUES ('id', ?)", id); err != nil {
		db.close()
		return nil, unusable(db.path, err)
	}
	if err := d.list(id, file, ""); err != nil {
		db.close()
		return nil, err
	}
	return d.attach(id, db), nil
}

// reuse opens a holding that must not have entries.
func (d *Data) reuse(id string) (*Store, error) {
	s, err := d.Open(id)
	if err != nil {
		return nil, err
	}
	made, err := s.Entries(0, 1)
	if err == nil && len(made) > 0 {
		err = fault.New(fault.Conflict, "store.id_taken", words.Args{"given": id})
	}
	if err != nil {
		s.Close()
		return nil, err
	}
	return s, nil
}

// Open opens a holding.
func (d *Data) Open(id string) (*Store, error) {
	file, err := d.fileOf(id)
	if err != nil {
		return nil, err
	}
	if file == "" {
		return nil, d.unknown(id)
	}
	db, err := open(d.path(file), holdingKind)
	if err != nil {
		return nil, err
	}
	return d.attach(id, db), nil
}

func (d *Data) unknown(id string) error {
	known, err := d.Holdings()
	if err != nil {
		return err
	}
	ids := make([]string, len(known))
	for i := range known {
		ids[i] = known[i].ID
	}
	if meant := near.Names(id, ids, 1); len(meant) > 0 {
		return fault.New(fault.NotFound, "store.unknown_near", words.Args{"given": id, "near": meant[0]})
	}
	return fault.New(fault.NotFound, "store.unknown", words.Args{"given": id})
}

// attach makes a store that keeps its name in the list up to date.
func (d *Data) attach(id string, db *database) *Store {
	s := newStore(id, db)
	s.renamed = func(name string) {
		// The list is a convenience: an old name in it does no harm.
		_, _ = d.server.write.Exec("UPDATE holdings SET name = ? WHERE id = ?", name, id)
	}
	return s
}

func (d *Data) list(id, file, name string) error {
	_, err := d.server.write.Exec("INSERT INTO holdings (id, file, name) VALUES (?, ?, ?)", id, file, name)
	return d.failed(err)
}

// fileOf returns the file of a holding, nothing when it is not listed.
func (d *Data) fileOf(id string) (file string, err error) {
	err = d.server.read.QueryRow("SELECT file FROM holdings WHERE id = ?", id).Scan(&file)
	if errors.Is(err, sql.ErrNoRows) {
		return "", nil
	}
	return file, d.failed(err)
}

func (d *Data) path(file string) string { return filepath.Join(d.dir, holdingsDir, file) }

func (d *Data) failed(err error) error { return unusable(d.server.path, err) }

// freeFile is a file name for an id that every system can bear and no file has.
func (d *Data) freeFile(id string) string {
	base := strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9':
			return r
		case r >= 'A' && r <= 'Z':
			return r + 'a' - 'A'
		}
		return '-'
	}, id)
	base = "h-" + base[:min(len(base), 60)] // no reserved name begins so
	file := base + holdingSuffix
	for n := 2; exists(d.path(file)); n++ {
		file = base + "-" + strconv.Itoa(n) + holdingSuffix
	}
	return file
}
