package store

import (
	"database/sql"
	"os"
	"path/filepath"
	"slices"
)

// adopt lists holdings that lie in the folder and are not in the list, as after
// the list was lost or a holding was put there from another machine. Files that
// cannot be read, or are of a holding that is listed, are passed over.
func (d *Data) adopt() error {
	known, err := d.Holdings()
	if err != nil {
		return err
	}
	files, err := filepath.Glob(d.path("*" + holdingSuffix))
	if err != nil {
		return d.failed(err)
	}
	for _, path := range files {
		if slices.ContainsFunc(known, func(i Info) bool { return i.File == path }) {
			continue
		}
		found, ok := introduce(path)
		if !ok || slices.ContainsFunc(known, func(i Info) bool { return i.ID == found.ID }) {
			continue
		}
		if err := d.list(found.ID, filepath.Base(path), found.Name); err != nil {
			return err
		}
		known = append(known, found)
	}
	return nil
}

// introduce asks a database for its id and name.
func introduce(path string) (Info, bool) {
	if info, err := os.Stat(path); err != nil || !info.Mode().IsRegular() || inspect(path, holdingKind) != nil {
		return Info{}, false
	}
	db, err := sql.Open("sqlite", address(path, "ro", "_pragma=query_only(1)"))
	if err != nil {
		return Info{}, false
	}
	defer db.Close()
	found := Info{File: path}
	if err := db.QueryRow("SELECT value FROM facts WHERE name = 'id'").Scan(&found.ID); err != nil {
		return Info{}, false
	}
	// A holding without entries has no name yet.
	_ = db.QueryRow("SELECT ifnull(cells ->> 'name', '') FROM rows WHERE tab = 'holding'").Scan(&found.Name)
	return found, true
}
