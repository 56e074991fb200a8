package store

import (
	"database/sql"
	"errors"
)

// Setting returns a setting of the program on this machine, nothing when it was
// never set.
func (d *Data) Setting(name string) (value string, err error) {
	err = d.server.read.QueryRow("SELECT value FROM settings WHERE name = ?", name).Scan(&value)
	if errors.Is(err, sql.ErrNoRows) {
		return "", nil
	}
	return value, d.failed(err)
}

// Set keeps a setting.
func (d *Data) Set(name, value string) error {
	_, err := d.server.write.Exec("INSERT INTO settings (name, value) VALUES (?, ?) ON CONFLICT (name) DO UPDATE SET value = excluded.value", name, value)
	return d.failed(err)
}
