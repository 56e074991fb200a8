package soilcare

import (
	"cmp"
	"slices"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/record"
	"garner/internal/words"
)

// Ground is what is known of a bed and its crops.
type Ground struct {
	Book      *crop.Book
	Bed       place.Bed
	South     bool            // it lies south of the equator
	Plantings []plan.Planting // of the plan in force; those of other beds are left out of account
	Records   []record.Record
	Today     cal.Date
}

// Care is what is known of a bed's soil and what is due.
type Care struct {
	Last     []Given // the latest of each kind: compost, manure, lime, mulch
	Compost  Amount  // a year's dressing of the bed
	Due      []Due
	Cautions []words.Phrase
}

// Due is work that is due on a bed's soil.
type Due struct {
	What   record.What
	Until  cal.Date // last day of it; None: any time
	Litres float64  // 0: not told in a volume
	Kg     float64
	Phrase words.Phrase
}

// Look tells how a bed's soil was looked after and what is due. The error is of
// the package's own data.
func Look(g Ground) (*Care, error) {
	f, err := known()
	if err != nil {
		return nil, err
	}
	given := f.given(g.Records, g.Bed.ID, g.Today)
	care := &Care{Compost: f.compost(g.Bed.AreaM2())}
	for _, what := range dressings {
		if l := last(given, what); l != nil {
			care.Last = append(care.Last, *l)
		}
	}
	ahead := g.ahead()
	care.dress(f, &g, given)
	care.lime(f, &g, given, ahead)
	care.manure(f, &g, given)
	return care, nil
}

// coming is a planting still to come with its crop.
type coming struct {
	crop *crop.Crop
	date cal.Date
}

// ahead are the bed's plantings after today, the first first.
func (g *Ground) ahead() []coming {
	var out []coming
	for _, p := range g.Plantings {
		if c, ok := g.Book.Crop(p.Crop); ok && p.Bed == g.Bed.ID && p.Date > g.Today {
			out = append(out, coming{c, p.Date})
		}
	}
	slices.SortStableFunc(out, func(a, b coming) int { return cmp.Compare(a.date, b.date) })
	return out
}

// soilless tells whether a bed is filled, not dug.
func (g *Ground) soilless() bool { return g.Bed.Kind == "container" || g.Bed.Kind == "bench" }
