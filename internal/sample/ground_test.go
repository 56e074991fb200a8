package sample_test

import (
	"slices"
	"testing"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/holding"
	"garner/internal/plan"
)

// stands tells whether a planting holds its ground on a day, as planned: from
// its date to the day it must be cleared. Perennials stay.
func stands(p *plan.Planting, d cal.Date) bool {
	return p.Date <= d && (!p.ClearBy.IsSet() || d < p.ClearBy)
}

// alone tells whether a planting needs ground of its own.
func alone(p *plan.Planting) bool { return p.Relation != plan.Under && p.Relation != plan.Between }

// span is the first and last day on which a planting goes in.
func span(h *holding.Holding) (first, last cal.Date) {
	first, last = h.Today, h.Today
	for _, p := range h.Plantings {
		if p.ClearBy.IsSet() {
			first, last = min(first, p.Date), max(last, p.Date)
		}
	}
	return first, last
}

// On no day do the plantings of a bed hold more ground than it has.
func TestPlantingsFitTheirBeds(t *testing.T) {
	for _, name := range names {
		h, _ := open(t, name)
		first, last := span(h)
		for _, b := range h.Beds {
			for d := first; d <= last; d++ {
				held := 0.0
				for i := range h.Plantings {
					if p := &h.Plantings[i]; p.Bed == b.ID && alone(p) && stands(p, d) {
						held += p.AreaM2
					}
				}
				if held > b.AreaM2()+1e-6 {
					t.Errorf("%s: %s holds %.2f of %.2f m2 on %s", name, b.ID, held, b.AreaM2(), d)
					break
				}
			}
		}
	}
}

// A planting that follows another finds the ground free; one that grows under or
// between stands beside it for a time, on less or the same ground.
func TestPlantingsMeetTheirNeighbours(t *testing.T) {
	for _, name := range names {
		h, _ := open(t, name)
		byID := map[string]*plan.Planting{}
		for i := range h.Plantings {
			byID[h.Plantings[i].ID] = &h.Plantings[i]
		}
		for i := range h.Plantings {
			p := &h.Plantings[i]
			if p.To == "" {
				continue
			}
			o := byID[p.To]
			switch {
			case o == nil || o.Bed != p.Bed:
				t.Errorf("%s: %s has no neighbour %s in its bed", name, p.ID, p.To)
			case p.Relation == plan.After && p.Date < o.ClearBy:
				t.Errorf("%s: %s goes in on %s, before %s is cleared on %s", name, p.ID, p.Date, o.ID, o.ClearBy)
			case !alone(p) && (p.Date >= o.ClearBy || p.AreaM2 > o.AreaM2):
				t.Errorf("%s: %s does not fit under or between %s", name, p.ID, o.ID)
			}
		}
	}
}

// mainSeason is from early summer to high summer, when a bed carries the crop
// that counts for its rotation.
func mainSeason(h *holding.Holding, year int) (from, to cal.Date) {
	if h.Sites[0].Location.LatitudeDeg < 0 {
		return cal.Of(year, 12, 1), cal.Of(year+1, 2, 15)
	}
	return cal.Of(year, 6, 1), cal.Of(year, 8, 15)
}

// In open beds no family stands in the main season two years running. Perennials
// stay where they are; tunnels, frames and pots have few families to offer.
func TestFamiliesRotate(t *testing.T) {
	book := bookOf(t)
	for _, name := range names {
		h, _ := open(t, name)
		for _, b := range h.Beds {
			if b.Kind != "bed" && b.Kind != "border" {
				continue
			}
			for year := h.Today.Year() - 1; year <= h.Today.Year(); year++ {
				now, next := families(t, h, book, b.ID, year), families(t, h, book, b.ID, year+1)
				for _, f := range now {
					if slices.Contains(next, f) {
						t.Errorf("%s: %s carries %s in %d and again the year after", name, b.ID, f, year)
					}
				}
			}
		}
	}
}

// families lists the families that stand in a bed in the main season of a year.
func families(t *testing.T, h *holding.Holding, book *crop.Book, bed string, year int) []string {
	t.Helper()
	from, to := mainSeason(h, year)
	var out []string
	for i := range h.Plantings {
		p := &h.Plantings[i]
		if p.Bed != bed || !alone(p) || !p.ClearBy.IsSet() || p.Date > to || p.ClearBy <= from {
			continue
		}
		c, known := book.Crop(p.Crop)
		if !known {
			t.Fatalf("the book has no %s", p.Crop)
		}
		out = append(out, c.Family)
	}
	return out
}
