package carry

import (
	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/record"
	"garner/internal/rotation"
)

// Setting is what is carried forward, and what is known of it.
type Setting struct {
	Book      *crop.Book
	Sites     []place.Site
	Beds      []place.Bed
	Covers    []place.CoverSpell
	Plantings []plan.Planting // of the plan, drafts resolved
	Records   []record.Record
	Today     cal.Date
	Draft     string          // id of the plan the carried sowings belong to
	Taken     map[string]bool // ids of plantings that are not free, beside those of the plan

	// Over tells when a planting is forecast to be gone; None: not known. It may be
	// nil.
	Over func(planting string) cal.Date

	Leave map[string]bool   // plantings of this year that are left out
	Into  map[string]string // beds that are told, by planting of this year
}

// Carried is a sowing of next year with the one it was made from.
type Carried struct {
	plan.Planting
	From    string // planting of this year
	FromBed string
	LaterD  int // days later than planned it was planted this year, which are kept; below 0: earlier
}

// Result is next year.
type Result struct {
	Year     int // growing year that was carried
	Named    string
	Next     string    // the growing year it was carried to
	Sowings  []Carried // in order of time
	Covers   []place.CoverSpell
	Planned  []string // plantings of this year that next year has already
	Left     []string // left out, as told
	Troubles []Trouble
}

// Kind is what is the matter with a sowing.
type Kind string

// The kinds of trouble.
const (
	TooSoon Kind = "too soon" // its kin stood there too lately
	NoRoom  Kind = "no room"
	Lost    Kind = "lost" // all of it was lost this year
	Failed  Kind = "failed"
	Covered Kind = "covered" // its cover finds another there
)

// Trouble is what clashes or went wrong.
type Trouble struct {
	Kind     Kind
	Planting string // of this year; empty for a cover
	Carried  string // of next year; for a cover the spell it was made from
	Bed      string
	Share    float64         // lost, 0-1
	Clash    *rotation.Clash // when it comes too soon
	Others   []string        // beds where it would have room and not come too soon, the nearest in size first
}
