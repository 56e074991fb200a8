package store

import (
	"database/sql"
	"errors"
	"io/fs"
	"net/url"
	"os"
	"path/filepath"
	"strings"

	_ "modernc.org/sqlite" // the driver named sqlite

	"garner/internal/fault"
	"garner/internal/words"
)

// database is an open database file. All writing goes through one connection,
// so that within the process writers wait in line; readers have their own.
type database struct {
	path        string
	write, read *sql.DB
}

// open opens a database that exists, after looking at it without touching it.
func open(path string, k kind) (*database, error) {
	if err := inspect(path, k); err != nil {
		return nil, err
	}
	return connect(path, k)
}

// create makes a database where none is.
func create(path string, k kind) (*database, error) {
	f, err := os.OpenFile(path, os.O_CREATE|os.O_EXCL|os.O_RDWR, 0o600)
	if err != nil {
		return nil, unusable(path, err)
	}
	if err := f.Close(); err != nil {
		return nil, unusable(path, err)
	}
	d, err := connect(path, k)
	if err != nil {
		_ = os.Remove(path) // nothing is in it
	}
	return d, err
}

// connect opens the connections and brings the schema up to date.
func connect(path string, k kind) (*database, error) {
	d := &database{path: path}
	var err error
	if d.write, err = sql.Open("sqlite", address(path, "rw", "_txlock=immediate", "_pragma=journal_mode(WAL)",
		"_pragma=synchronous(FULL)", "_pragma=foreign_keys(1)", "_pragma=busy_timeout(5000)")); err != nil {
		return nil, unusable(path, err)
	}
	d.write.SetMaxOpenConns(1)
	if d.read, err = sql.Open("sqlite", address(path, "rw", "_pragma=query_only(1)", "_pragma=busy_timeout(5000)")); err != nil {
		d.close()
		return nil, unusable(path, err)
	}
	if err := migrate(d.write, k); err != nil {
		d.close()
		return nil, unusable(path, err)
	}
	return d, nil
}

// close lets go of the file; the last to close folds the log into it.
func (d *database) close() error {
	var errs []error
	if d.read != nil {
		errs = append(errs, d.read.Close())
	}
	return errors.Join(append(errs, d.write.Close())...)
}

// address is a path as SQLite takes it, with its settings.
func address(path, mode string, settings ...string) string {
	path = filepath.ToSlash(path)
	if !strings.HasPrefix(path, "/") {
		path = "/" + path // a drive letter
	}
	u := url.URL{Scheme: "file", Path: path}
	return u.String() + "?" + strings.Join(append([]string{"mode=" + mode}, settings...), "&")
}

// inspect looks at a database without writing to it: whether it is one of ours,
// whole, and of a version we know.
func inspect(path string, k kind) error {
	if err := checkHeader(path); err != nil {
		return err
	}
	db, err := sql.Open("sqlite", address(path, "ro", "_pragma=query_only(1)", "_pragma=busy_timeout(5000)"))
	if err != nil {
		return unusable(path, err)
	}
	defer db.Close()
	var application, version int
	if err := errors.Join(db.QueryRow("PRAGMA application_id").Scan(&application), db.QueryRow("PRAGMA user_version").Scan(&version)); err != nil {
		return unusable(path, err)
	}
	if application != k.application {
		return fault.New(fault.Storage, "store.not_ours", words.Args{"path": path})
	}
	if newest := k.newest(); version > newest {
		return fault.New(fault.Storage, "store.newer", words.Args{"path": path, "version": version, "known": newest})
	}
	var found string
	if err := db.QueryRow("PRAGMA quick_check(1)").Scan(&found); err != nil {
		return unusable(path, err)
	}
	if found != "ok" {
		return damaged(path, errors.New(found))
	}
	return nil
}

// magic begins every SQLite file ("Database File Format", 1.3).
const magic = "SQLite format 3\x00"

// checkHeader refuses what is no database before SQLite sees it.
func checkHeader(path string) error {
	f, err := os.Open(path)
	if err != nil {
		return unusable(path, err)
	}
	defer f.Close()
	head := make([]byte, len(magic))
	if _, err := f.Read(head); err != nil || string(head) != magic {
		return damaged(path, err)
	}
	return nil
}

// exists tells whether there is a file.
func exists(path string) bool {
	_, err := os.Stat(path)
	return !errors.Is(err, fs.ErrNotExist)
}
