package store

import (
	"database/sql"
	"errors"

	"garner/internal/desk"
)

var _ desk.WeatherKeeper = (*Store)(nil)

// KeepMeasured keeps figures that instruments sent, in one transaction.
func (s *Store) KeepMeasured(figures []desk.Measured, refused []desk.RefusedMessage) error {
	return unusable(s.db.path, s.keepMeasured(figures, refused))
}

func (s *Store) keepMeasured(figures []desk.Measured, refused []desk.RefusedMessage) error {
	tx, err := s.db.write.Begin()
	if err != nil {
		return err
	}
	defer tx.Rollback()
	for i := range figures {
		if err := keepFigure(tx, &figures[i]); err != nil {
			return err
		}
	}
	for i := range refused {
		r := &refused[i]
		if _, err := tx.Exec(`INSERT INTO heard (sensor, value, at, refused, why) VALUES (?, NULL, 0, 1, ?)
			ON CONFLICT (sensor) DO UPDATE SET refused = refused + 1, why = excluded.why`, r.Sensor, packPhrase(r.Why)); err != nil {
			return err
		}
	}
	return tx.Commit()
}

// keepFigure adds a figure to its hour.
func keepFigure(tx *sql.Tx, f *desk.Measured) error {
	rise, newest, err := riseOf(tx, f)
	if err != nil {
		return err
	}
	if _, err := tx.Exec(`INSERT INTO measured (sensor, hour, n, total, least, most, rise, last, last_at) VALUES (?1, ?2, 1, ?3, ?3, ?3, ?4, ?3, ?5)
		ON CONFLICT (sensor, hour) DO UPDATE SET n = n + 1, total = total + ?3, least = min(least, ?3), most = max(most, ?3), rise = rise + ?4,
		last = CASE WHEN ?5 >= last_at THEN ?3 ELSE last END, last_at = max(last_at, ?5)`,
		f.Sensor, hourOf(f.At), f.Value, rise, f.At); err != nil {
		return err
	}
	if !newest {
		return nil
	}
	_, err = tx.Exec(`INSERT INTO heard (sensor, value, at, refused, why) VALUES (?1, ?2, ?3, 0, '')
		ON CONFLICT (sensor) DO UPDATE SET value = ?2, at = ?3`, f.Sensor, f.Value, f.At)
	return err
}

// riseOf is what a figure adds to its hour's sum, and whether it is the newest.
// Of a total it is the step from the one before; one that has fallen began anew
// from nothing.
func riseOf(tx *sql.Tx, f *desk.Measured) (rise float64, newest bool, err error) {
	var before sql.NullFloat64
	var at int64
	err = tx.QueryRow("SELECT value, at FROM heard WHERE sensor = ?", f.Sensor).Scan(&before, &at)
	if err != nil && !errors.Is(err, sql.ErrNoRows) {
		return 0, false, err
	}
	newest = !before.Valid || f.At >= at
	switch {
	case f.How == desk.Parts:
		return f.Value, newest, nil
	case f.How == desk.Totals && before.Valid && newest && f.Value >= before.Float64:
		return f.Value - before.Float64, newest, nil
	case f.How == desk.Totals && before.Valid && newest:
		return f.Value, newest, nil
	}
	return 0, newest, nil
}

func hourOf(at int64) int64 {
	h := at / 3600
	if at%3600 < 0 {
		h--
	}
	return h
}

// MeasuredHours returns what an instrument sent from an hour on, in order.
func (s *Store) MeasuredHours(sensor string, from int64) ([]desk.MeasuredHour, error) {
	found, err := s.db.read.Query("SELECT hour, n, total, least, most, rise, last FROM measured WHERE sensor = ? AND hour >= ? ORDER BY hour", sensor, from)
	if err != nil {
		return nil, unusable(s.db.path, err)
	}
	defer found.Close()
	var out []desk.MeasuredHour
	for found.Next() {
		var h desk.MeasuredHour
		if err := found.Scan(&h.Hour, &h.N, &h.Total, &h.Least, &h.Most, &h.Rise, &h.Last); err != nil {
			return nil, unusable(s.db.path, err)
		}
		out = append(out, h)
	}
	return out, unusable(s.db.path, found.Err())
}

// Heard returns the state of an instrument, nil when it was never heard.
func (s *Store) Heard(sensor string) (*desk.Heard, error) {
	var h desk.Heard
	var value sql.NullFloat64
	var why string
	err := s.db.read.QueryRow("SELECT value, at, refused, why FROM heard WHERE sensor = ?", sensor).Scan(&value, &h.At, &h.Refused, &why)
	if errors.Is(err, sql.ErrNoRows) {
		return nil, nil
	}
	if err != nil {
		return nil, unusable(s.db.path, err)
	}
	h.Value = value.Float64
	if why != "" {
		p, err := unpackPhrase(why)
		if err != nil {
			return nil, unusable(s.db.path, err)
		}
		h.Why = &p
	}
	return &h, nil
}
