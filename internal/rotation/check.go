package rotation

import (
	"math"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/record"
	"garner/internal/words"
)

// Ground is what is known of beds and what stood in them.
type Ground struct {
	Book      *crop.Book
	Sites     []place.Site
	Beds      []place.Bed
	Plantings []plan.Planting // of the plan in force, drafts resolved
	Records   []record.Record

	// Over tells when a planting is forecast to be over; None: not known. It may
	// be nil.
	Over func(planting string) cal.Date
}

// History is what stood in each bed. It does not change and may be read from
// many places at once.
type History struct {
	book  *crop.Book
	facts *facts
	beds  map[string]place.Bed
	south map[string]bool // by site
	stood map[string][]stood
	seen  map[string][]seen
}

// Candidate is a crop that may go into the ground.
type Candidate struct {
	Crop     string
	Use      string // empty: its commonest
	Date     cal.Date
	Planting string // its own id, when it is a planting of the plan
}

// Source is where the years of a clash come from.
type Source struct {
	Key   string // of a source of the crop book
	Mark  string // seen, memory, fitted, borrowed, judgement, own
	Where string
}

// Clash is a crop that comes back too soon.
type Clash struct {
	Years   int      // asked for between the two; 99: never
	Last    int      // growing year of what stood, or of the disease
	Next    cal.Date // first day it may stand here again; None: never
	Early   float64  // years before Next, more than 0; Years when never
	Problem string   // id of the disease behind it; empty: none is named
	Prior   string   // planting that stood here; empty for a recorded disease
	Seen    bool     // the disease was recorded on this bed
	Gentle  bool     // the bed keeps its crops: told as a caution
	Source  Source
	Phrase  words.Phrase // one sentence or two with the reason
}

// NewHistory gathers what stood in each bed. The error is of the package's own
// data.
func NewHistory(g Ground) (*History, error) {
	f, err := known()
	if err != nil {
		return nil, err
	}
	h := &History{book: g.Book, facts: f, beds: map[string]place.Bed{}, south: map[string]bool{}, stood: stoodIn(&g)}
	h.seen = seenIn(&g, h.stood)
	for _, b := range g.Beds {
		h.beds[b.ID] = b
	}
	for _, s := range g.Sites {
		h.south[s.ID] = s.Location.LatitudeDeg < 0
	}
	return h, nil
}

// Check tells whether a crop would come back too soon to a bed, nil when it
// would not. A recorded disease comes before kin that stood there; of several
// the one that asks for the longest wait is told. A bed whose rotation is silent
// tells of recorded diseases only, gently.
func (h *History) Check(bed string, c Candidate) *Clash {
	its, ok := h.book.Crop(c.Crop)
	if !ok {
		return nil
	}
	b, south := h.beds[bed], h.south[h.beds[bed].Site]
	silent := b.Rotation == Silent
	if clash := h.disease(bed, its, c, south, silent); clash != nil {
		return clash
	}
	if silent {
		return nil
	}
	return h.kin(bed, its, c, south)
}

// Silent is the rotation of a bed that keeps its crops.
const Silent = "silent"

// kin finds the crop of the family, or host of another family, that stood too
// lately.
func (h *History) kin(bed string, its *crop.Crop, c Candidate, south bool) *Clash {
	var worst *Clash
	for i := range h.stood[bed] {
		s := &h.stood[bed][i]
		if s.planting == c.Planting || s.from > c.Date {
			continue
		}
		last := s.last(c.Date, south)
		if last == season(c.Date, south) {
			continue
		}
		found := h.between(its, c.Use, s.crop)
		if found == nil {
			continue
		}
		found.Prior, found.Last = s.planting, last
		if found.wait(c.Date, south) && (worst == nil || found.Early > worst.Early) {
			found.Phrase = h.tellKin(found, its, s, c.Date, south)
			worst = found
		}
	}
	return worst
}

// between returns the years a crop asks for after another one, nil when it asks
// for none.
func (h *History) between(its *crop.Crop, use string, prior *crop.Crop) *Clash {
	if its.Family == prior.Family {
		u, err := its.Use(use)
		if err != nil || u.RotationYears < 1 {
			return nil
		}
		f := u.Fact("rotation_years")
		years := int(math.Round(u.RotationYears))
		return &Clash{Years: years, Problem: h.behind(its, years), Source: Source{f.Source, f.Mark, f.Where}}
	}
	for i := range h.facts.intervals {
		n := &h.facts.intervals[i]
		if n.Kind == rest && among(n.Crops, its) && among(n.Across, prior) {
			return &Clash{Years: n.YearsLow, Problem: n.Problem, Source: Source{n.Source, n.Mark, n.Where}}
		}
	}
	return nil
}

// behind names the problem whose recommended interval a crop's years are, empty
// when none is published.
func (h *History) behind(its *crop.Crop, years int) string {
	for i := range h.facts.intervals {
		n := &h.facts.intervals[i]
		if n.Kind == rest && among(n.Crops, its) && years >= n.YearsLow && years <= max(n.YearsLow, n.YearsHigh) {
			return n.Problem
		}
	}
	return ""
}

// wait fills in how long a crop must still wait from a day; false when it need
// not.
func (c *Clash) wait(day cal.Date, south bool) bool {
	if c.Years >= never {
		c.Next, c.Early = cal.None, never
		return true
	}
	c.Next = begins(c.Last+c.Years, south)
	c.Early = float64(c.Next-day) / daysAYear
	return c.Next > day
}

const daysAYear = 365.25
