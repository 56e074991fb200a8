package desk

import (
	"cmp"
	"slices"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/words"
)

// GroundYearView is the year in the beds of one site, from this week on.
type GroundYearView struct {
	Site     place.Site
	Sites    []place.Site // all there are
	Drawn    bool         // the site has a plan; else its beds lie in rows to scale
	Features []place.Feature
	Today    cal.Date
	From     cal.Date // Monday
	Weeks    int
	Beds     []*BedYear // in walking order
	Figures  GroundFigures
	Tried    []plan.Change
	Before   *GroundYearView // with a change tried: how it stood
}

// BedYear is one bed's year: what holds which share of it, and when.
type BedYear struct {
	place.Bed
	Held   []HeldGround // in order of time
	Free   []FreeStretch
	Wrong  []WrongGround
	Covers []CoverTime // that lie over it within the year
}

// BedPiece is a piece of a bed: where it begins along the bed, and how much of its
// ground it is, both as shares of the bed, 0-1.
type BedPiece struct{ At, Share float64 }

// CoverTime is a cover over a bed. Off is None where it stays.
type CoverTime struct {
	Kind    string
	On, Off cal.Date
}

// HeldGround is a planting in a bed's year. Leaf and Picked run from the view's
// Monday, Step days each.
type HeldGround struct {
	PlantingLine
	Crop, Short string        // its id and its shortest name in the crop book
	Relation    plan.Relation // under, between: on the ground of another
	To          string        // that other one
	Share       float64       // of the bed, 0-1
	HoldsM2     float64       // ground it holds: AreaM2 without what was lost
	Pieces      []BedPiece    // where it lies
	From        cal.Date      // the first day it holds its ground
	Clear       Odds          // the first day it holds it no more
	Stays       bool          // it is there when the year ends
}

// Leans tells whether it is meant to stand on another planting's ground.
func (h *HeldGround) Leans() bool {
	return h.Relation == plan.Under || h.Relation == plan.Between
}

// HoldsOn tells whether it stands in the ground on a day of the middle year.
func (h *HeldGround) HoldsOn(day cal.Date) bool {
	return h.From <= day && (h.Stays || day < h.Clear.P50)
}

// FreeStretch is ground that nothing holds for a time in the middle year. Until is
// None where nothing is meant to follow.
type FreeStretch struct {
	BedPiece
	From, Until cal.Date
	Lost        []string // the shortest names of what was lost there last
}

// WrongGround is a time in which plantings of a bed do not fit.
type WrongGround struct {
	Wrong       string // in which way, as in package space
	Planting    string // id of the one to move
	With        []string
	From, Until cal.Date
	OverM2      float64
	Odds        float64  // share of futures in which it comes to that, 0-1
	Mend        cal.Date // day from which it finds room; None: not in this table
}

// groundWeeks is how long a year in the beds is: about fourteen months.
const groundWeeks = 61

// GroundYearView returns the year in the beds of a site, as the plan stands or
// with changes tried. An empty site is the first one.
func (o *Office) GroundYearView(site string, try []plan.Change) (*GroundYearView, error) {
	v, err := o.groundYear(site, try)
	if err != nil || len(try) == 0 {
		return v, err
	}
	v.Tried = try
	v.Before, err = o.groundYear(site, nil)
	return v, err
}

func (o *Office) groundYear(site string, try []plan.Change) (*GroundYearView, error) {
	a, err := o.ask(try)
	if err != nil {
		return nil, err
	}
	v := &GroundYearView{Sites: a.holding.Sites, Today: a.setting.Today}
	if v.Site, err = siteOf(a.holding, site); err != nil {
		return nil, err
	}
	t, err := o.table(a)
	if err != nil {
		return nil, err
	}
	v.From, v.Weeks = t.From, min(groundWeeks, t.Weeks)
	v.Drawn = v.Site.PlanWidthM > 0 && v.Site.PlanDepthM > 0
	for _, f := range a.holding.Features {
		if f.Site == v.Site.ID && v.Drawn {
			v.Features = append(v.Features, f)
		}
	}
	if v.Beds, err = o.bedYears(a, t, v); err != nil {
		return nil, err
	}
	if !v.Drawn {
		v.layInRows()
	}
	v.Figures = o.groundFigures(a, t)
	return v, nil
}

func siteOf(h *holding.Holding, id string) (place.Site, error) {
	for _, s := range h.Sites {
		if s.ID == id || id == "" {
			return s, nil
		}
	}
	return place.Site{}, fault.New(fault.NotFound, "desk.row_unknown", words.Args{"kind": words.P("desk.kind_sites", nil), "id": id})
}

// bedYears gathers the years of a site's beds. Only beds that something has
// changed in are looked at anew.
func (o *Office) bedYears(a *asked, t *outlook.Table, v *GroundYearView) ([]*BedYear, error) {
	ground, err := o.spaceOf(a, t)
	if err != nil {
		return nil, err
	}
	o.computing.Lock()
	defer o.computing.Unlock()
	w := o.bedWorking(a, t, ground, v.Weeks)
	var out []*BedYear
	for _, b := range a.holding.Beds {
		if b.Site != v.Site.ID {
			continue
		}
		y := *w.year(b)
		y.Bed, y.Covers = b, coversWithin(a.holding, b.ID, v.From, w.until)
		out = append(out, &y)
	}
	slices.SortStableFunc(out, func(x, y *BedYear) int { return cmp.Compare(x.Order, y.Order) })
	return out, nil
}

func coversWithin(h *holding.Holding, bed string, from, until cal.Date) []CoverTime {
	var out []CoverTime
	for _, c := range h.Covers {
		if c.Bed == bed && c.Kind != cover.Open && c.On < until && (!c.Off.IsSet() || c.Off > from) {
			out = append(out, CoverTime{string(c.Kind), c.On, c.Off})
		}
	}
	slices.SortStableFunc(out, func(x, y CoverTime) int { return cmp.Compare(x.On, y.On) })
	return out
}
