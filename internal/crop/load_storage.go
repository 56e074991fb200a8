package crop

import (
	"slices"

	"garner/internal/fault"
	"garner/internal/words"
)

// storageMethods are the ways a crop keeps. The list is closed and documented.
var storageMethods = []string{"damp sand", "clamp", "cool shed", "hung", "nets", "cured", "fridge", "cellar", "frozen", "dried", "bottled", "fermented", "ripened indoors", "in the ground"}

// storageRange is what the columns of storage may hold.
var storageRange = []struct {
	column   string
	min, max float64
}{
	{"best_c", -30, 30}, {"life_days", 1, 1500}, {"q10", 1, 8}, {"floor_c", -50, 20}, {"loss_share", 0, 0.9}, {"loss_month", 0, 0.9},
}

func (l *loader) loadStorage() {
	ofUse := map[*Use]int{} // how many rows of the use's own it has
	tables := l.folder("storage", "crop", "use", "method", "best_c", "life_days", "q10", "floor_c", "loss_share", "loss_month", "source", "where", "mark", "note")
	for _, own := range []bool{true, false} {
		for _, t := range tables {
			for r := range t.rows {
				if (r.get("use") != "") == own {
					l.loadStorageRow(r, ofUse, own)
				}
			}
		}
	}
}

// loadStorageRow gives a way of storing to the uses it speaks of. A use that
// has a row of its own for the method keeps that one.
func (l *loader) loadStorageRow(r row, ofUse map[*Use]int, own bool) {
	c := l.cropOf(r)
	before := len(l.faults)
	s, ok := l.storageOf(r)
	if c == nil || !ok {
		return
	}
	for _, u := range l.usesOf(r, c) {
		at := slices.IndexFunc(u.Storage, func(o Storage) bool { return o.Method == s.Method })
		if at >= 0 && (own || at >= ofUse[u]) && len(l.faults) == before {
			l.refuse(r.at("method"), fault.Invalid, "crop.storage_twice", words.Args{"crop": c.Name, "method": s.Method})
		}
		if at >= 0 {
			continue
		}
		u.Storage = append(u.Storage, s)
		if own {
			ofUse[u]++
		}
	}
}

func (l *loader) storageOf(r row) (Storage, bool) {
	before := len(l.faults)
	l.oneOf(r, "method", storageMethods)
	l.provenance(r)
	values := make([]float64, len(storageRange))
	for i, limit := range storageRange {
		value, fine := l.value(r, limit.column)
		if fine && !(value >= limit.min && value <= limit.max) {
			l.refuse(r.at(limit.column), fault.OutOfRange, "crop.storage_out_of_range",
				words.Args{"column": limit.column, "given": value, "min": limit.min, "max": limit.max})
		}
		values[i] = value
	}
	return Storage{
		Method: r.get("method"), BestC: values[0], LifeDays: values[1], Q10: values[2],
		FloorC: values[3], LossShare: values[4], LossMonth: values[5],
		Source: r.get("source"), Where: r.get("where"), Mark: r.get("mark"), Note: r.get("note"),
	}, len(l.faults) == before
}
