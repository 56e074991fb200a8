package desk

import (
	"math"
	"strings"

	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/near"
	"garner/internal/outlook"
	"garner/internal/space"
	"garner/internal/words"
)

// FreeOptions say which free ground is wanted.
type FreeOptions struct {
	From     cal.Date              // None: the holding's today; what is past cannot be sown
	Until    cal.Date              // day after the last on which it must come free; None: as far as the table goes
	Bed      string                // id or name of one bed; empty: all
	Progress func(done, total int) // may be nil
}

// FreeResult is what comes free, in order of time, and what does not fit.
type FreeResult struct {
	Today cal.Date     `json:"today"`
	From  cal.Date     `json:"from"`
	Until cal.Date     `json:"until"`
	Free  []FreePiece  `json:"free"`
	Wrong []WrongPiece `json:"overlaps"`
}

// areaSteps is how finely an area is told: to a ten-thousandth of a square metre.
const areaSteps = 1e4

// FreePiece is ground of a bed that is free from a day, in the middle year, until
// it is held again.
type FreePiece struct {
	Bed       string     `json:"bed"`
	From      cal.Date   `json:"from"`
	Until     cal.Date   `json:"until"` // first day it is held again, or the day after the table
	AreaM2    float64    `json:"area_m2"`
	FromEarly cal.Date   `json:"from_early"` // in the early year of ten
	FromLate  *cal.Date  `json:"from_late"`  // in the late year of ten; nil: not in this table
	Odds      float64    `json:"odds"`       // of being free by From
	At        float64    `json:"at"`         // where it begins along the bed, 0-1
	Space     *FreeSpace `json:"-"`
}

// WrongPiece is a time in which plantings do not fit.
type WrongPiece struct {
	Bed       string       `json:"bed"`
	What      string       `json:"what"`
	From      cal.Date     `json:"from"`
	Until     cal.Date     `json:"until"`
	OverM2    float64      `json:"over_m2"`
	Odds      float64      `json:"odds"`
	Plantings []string     `json:"plantings"`
	Overlap   *OverlapView `json:"-"`
}

// The longest table that is computed for a period far ahead, in weeks, and how much
// longer than the period a table is, so that the end of what is free shows.
const (
	mostFreeWeeks  = 156
	weeksAfterFree = 26
)

// FreeGround finds what ground of a holding comes free in a period.
func FreeGround(h *holding.Holding, o FreeOptions) (*FreeResult, error) {
	bed, err := namedBed(h, o.Bed)
	if err != nil {
		return nil, err
	}
	s, err := settingOf(h, OutlookOptions{Seed: pageSeed, Progress: o.Progress})
	if err != nil {
		return nil, err
	}
	if told(o.Until) && o.Until <= s.Today {
		return nil, fault.New(fault.OutOfRange, "desk.free_past", words.Args{"until": o.Until, "today": s.Today})
	}
	for _, d := range []cal.Date{o.From, o.Until} {
		if told(d) {
			s.Weeks = max(s.Weeks, int(d-s.From)/7+weeksAfterFree)
		}
	}
	if s.Weeks > mostFreeWeeks+weeksAfterFree {
		return nil, fault.New(fault.OutOfRange, "desk.free_too_far", words.Args{"weeks": mostFreeWeeks})
	}
	t, err := outlook.Compute(s, memory())
	if err != nil {
		return nil, err
	}
	g, err := space.Of(t, h, s.Book, s.Today)
	if err != nil {
		return nil, err
	}
	v, err := spaceView(&asked{holding: h, setting: s}, g, SpaceQuery{Bed: bed, From: o.From, Until: o.Until})
	if err != nil {
		return nil, err
	}
	return freeResult(v), nil
}

func freeResult(v *SpaceView) *FreeResult {
	r := &FreeResult{Today: v.Today, From: v.From, Until: v.Until, Free: []FreePiece{}, Wrong: []WrongPiece{}}
	for i := range v.Free {
		f := &v.Free[i]
		p := FreePiece{Bed: f.Bed, From: f.From.P50, Until: f.Until, AreaM2: math.Round(f.AreaM2*areaSteps) / areaSteps, FromEarly: f.From.P10, Odds: f.Odds, At: f.At, Space: f}
		if late := f.From.P90; late.IsSet() {
			p.FromLate = &late
		}
		r.Free = append(r.Free, p)
	}
	for i := range v.Wrong {
		o := &v.Wrong[i]
		r.Wrong = append(r.Wrong, WrongPiece{Bed: o.Bed, What: string(o.Wrong), From: o.From, Until: o.Until, OverM2: o.OverM2,
			Odds: o.Odds, Plantings: o.Plantings, Overlap: o})
	}
	return r
}

// namedBed finds a bed by its id or name; nothing gives none.
func namedBed(h *holding.Holding, name string) (string, error) {
	if name == "" {
		return "", nil
	}
	var names []string
	for _, b := range h.Beds {
		if strings.EqualFold(b.ID, name) || strings.EqualFold(b.Name, name) {
			return b.ID, nil
		}
		names = append(names, b.ID, b.Name)
	}
	if meant := near.Names(name, names, 1); len(meant) > 0 {
		return "", fault.New(fault.NotFound, "desk.bed_unknown_meant", words.Args{"given": name, "meant": meant[0]})
	}
	return "", fault.New(fault.NotFound, "desk.bed_unknown", words.Args{"given": name})
}
