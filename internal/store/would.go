package store

import (
	"slices"

	"garner/internal/desk"
	"garner/internal/journal"
)

// Would returns what changes would make of the holding, with the content of the
// weather files they bring. Nothing is written.
func (s *Store) Would(changes []journal.Change, files ...[]byte) (*desk.Draft, error) {
	now, err := s.standing()
	if err != nil {
		return nil, err
	}
	then := &standing{version: now.version, rows: map[string][]desk.KeptRow{}}
	brought := map[string][]byte{}
	for _, content := range files {
		brought[hashOf(content)] = content
	}
	for table, rows := range now.rows {
		then.rows[table] = slices.Clone(rows)
	}
	for _, c := range changes {
		then.change(c)
	}
	h, report := s.build(then, func(hash string) ([]byte, error) {
		if content, ok := brought[hash]; ok {
			return content, nil
		}
		return s.File(hash)
	})
	return &desk.Draft{Version: now.version, Rows: then.rows, Holding: h, Faults: report.Faults}, nil
}

// change makes one change to rows that are nobody else's.
func (s *standing) change(c journal.Change) {
	rows := slices.DeleteFunc(s.rows[c.Table], func(r desk.KeptRow) bool { return r.ID == c.ID })
	if c.After != nil {
		at, _ := slices.BinarySearchFunc(rows, c, func(r desk.KeptRow, c journal.Change) int {
			if r.Place < c.Place || r.Place == c.Place && r.ID < c.ID {
				return -1
			}
			return 1
		})
		rows = slices.Insert(rows, at, desk.KeptRow{ID: c.ID, Row: c.After, Place: c.Place, Version: s.version})
	}
	s.rows[c.Table] = rows
}
