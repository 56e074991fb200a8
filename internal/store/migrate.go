package store

import (
	"database/sql"
	"embed"
	"fmt"
	"io/fs"
)

//go:embed schema
var schemas embed.FS

// kind is a sort of database: the number that marks its files and the folder of
// its schema, one numbered file for each version.
type kind struct {
	application int
	folder      string
}

// The kinds of database. The numbers are "grnH" and "grnS" in ASCII.
var (
	holdingKind = kind{0x67726e48, "schema/holding"}
	serverKind  = kind{0x67726e53, "schema/server"}
)

// newest is the version of the schema the program writes.
func (k kind) newest() int {
	files, _ := fs.ReadDir(schemas, k.folder) // embedded: cannot fail
	return len(files)
}

// migrate brings a database to the newest schema, each step in a transaction of
// its own: a step that fails leaves the version before.
func migrate(db *sql.DB, k kind) error {
	for {
		done, err := migrateOne(db, k)
		if done || err != nil {
			return err
		}
	}
}

func migrateOne(db *sql.DB, k kind) (done bool, err error) {
	tx, err := db.Begin()
	if err != nil {
		return false, err
	}
	defer tx.Rollback()
	var version int
	if err := tx.QueryRow("PRAGMA user_version").Scan(&version); err != nil {
		return false, err
	}
	if version >= k.newest() {
		return true, nil
	}
	step, err := schemas.ReadFile(fmt.Sprintf("%s/%03d.sql", k.folder, version+1))
	if err != nil {
		return false, err
	}
	if _, err := tx.Exec(string(step)); err != nil {
		return false, err
	}
	// A pragma takes no parameters.
	if _, err := tx.Exec(fmt.Sprintf("PRAGMA user_version = %d; PRAGMA application_id = %d", version+1, k.application)); err != nil {
		return false, err
	}
	return false, tx.Commit()
}
