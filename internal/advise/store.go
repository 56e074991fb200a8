package advise

import (
	"garner/internal/crop"
)

// store is where the crops of a use go.
type store struct {
	id  string
	row crop.Storage
}

// usualStores tells for each use where the household takes what it lifts or does
// not eat in time: where a planting of the use goes, else one of its vegetable;
// what is lifted at its end and goes nowhere yet, where it keeps longest.
func (a *Adviser) usualStores() map[string]store {
	out := map[string]store{}
	byVegetable := map[string]string{}
	byUse := map[string]string{}
	for _, p := range a.scales.Plantings() {
		c, ok := a.book.Crop(p.Crop)
		if !ok || p.Store == "" {
			continue
		}
		if u, err := c.Use(p.Use); err == nil {
			byUse[key(u)] = p.Store
			byVegetable[u.Vegetable] = p.Store
		}
	}
	for _, c := range a.book.Crops() {
		for _, u := range c.Uses {
			for _, id := range []string{byUse[key(u)], byVegetable[u.Vegetable]} {
				if row, ok := a.keeps(u, id); ok && out[key(u)].id == "" {
					out[key(u)] = store{id, row}
				}
			}
			if out[key(u)].id == "" && u.LiftAtEnd > 0 {
				out[key(u)] = a.longest(u)
			}
		}
	}
	return out
}

func key(u *crop.Use) string { return u.Crop + "/" + u.Name }

// keeps finds the book's row for a use in one of the holding's stores.
func (a *Adviser) keeps(u *crop.Use, id string) (crop.Storage, bool) {
	for _, s := range a.holding.Stores {
		for _, row := range u.Storage {
			if s.ID == id && row.Method == s.Method {
				return row, true
			}
		}
	}
	return crop.Storage{}, false
}

// longest is the household's store in which a use keeps longest.
func (a *Adviser) longest(u *crop.Use) (best store) {
	for _, s := range a.holding.Stores {
		if row, ok := a.keeps(u, s.ID); ok && row.LifeDays > best.row.LifeDays {
			best = store{s.ID, row}
		}
	}
	return best
}
