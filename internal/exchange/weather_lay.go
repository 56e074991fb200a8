package exchange

import (
	"fmt"
	"slices"
	"strings"
	"sync"

	"garner/internal/climate"
	"garner/internal/holding"
)

// layFiles gives every weather source what its files tell: the days of a home
// station first, then its own record, then the other files as they were taken in.
// Of hours those that were typed or pasted come first. Of typical years the last one
// counts, before normals of its own.
func layFiles(h *holding.Holding, memory *laidMemory) {
	for i := range h.Weather {
		w := &h.Weather[i]
		var home, others []*climate.Record
		var homeHours, otherHours [][]climate.Hour
		normals := w.Normals
		for k := range h.Files {
			f := &h.Files[k]
			switch {
			case f.Weather != w.ID:
				continue
			case f.Normals != nil:
				normals = f.Normals
			}
			if strings.HasPrefix(f.Format, "archive-") {
				home, homeHours = append(home, f.Record), append(homeHours, f.Hours)
			} else {
				others, otherHours = append(others, f.Record), append(otherHours, f.Hours)
			}
		}
		if len(home)+len(others) == 0 {
			continue
		}
		own := holding.ApartFromFiles{Record: w.Record, Normals: w.Normals, Hours: w.Hours}
		w.Apart = &own
		w.Normals = normals
		w.Record = memory.lay(w.ID, slices.Concat(home, []*climate.Record{own.Record}, others))
		w.Hours = climate.LayHours(slices.Concat([][]climate.Hour{own.Hours}, homeHours, otherHours)...)
	}
}

// laidMemory remembers records laid over each other, so that the same files give
// the same record, which others know by its place in memory.
type laidMemory struct {
	mu    sync.Mutex
	known map[string]laid
}

// laid is a record with those it was laid of, which are held so that their places
// in memory are not given to others.
type laid struct {
	of  []*climate.Record
	all *climate.Record
}

// lay lays records over each other; without a memory each time anew. A single one
// stays what it is.
func (m *laidMemory) lay(id string, records []*climate.Record) *climate.Record {
	records = slices.DeleteFunc(records, func(r *climate.Record) bool { return !hasDays(r) })
	switch {
	case len(records) == 0:
		return nil
	case len(records) == 1:
		return records[0]
	case m == nil:
		return climate.Lay(id, records...)
	}
	key := id
	for _, r := range records {
		key += fmt.Sprintf(" %p", r)
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	if known, ok := m.known[key]; ok {
		return known.all
	}
	if m.known == nil || len(m.known) >= mostRemembered {
		m.known = map[string]laid{}
	}
	all := climate.Lay(id, records...)
	m.known[key] = laid{records, all}
	return all
}
