package desk

import (
	"io"
	"math"
	"time"

	"garner/internal/cal"
	"garner/internal/draft"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/programme"
	"garner/internal/search"
	"garner/internal/words"
)

// DraftOptions say what is asked of a draft.
type DraftOptions struct {
	Seed     uint64                // of the random streams
	Seconds  float64               // of search; 0: usualSeconds, or as long as the steps take when they are told
	Steps    int                   // moves of the search; 0: until the time is up
	Pins     []string              // plantings that stay as they are, beside those of the wishes that are kept
	Forbids  []DraftCrop           // crops that do not come into a bed, beside those of the wishes that are kept
	Hours    *float64              // of garden work a week in the place of those that are kept; nil: as kept, else not limited
	Alone    bool                  // the wishes that are kept with the holding are not heeded
	Progress func(done, total int) // may be nil
	Best     func(DraftBest)       // told at times of the best so far; may be nil
	Stop     func() bool           // asked from several places at once whether the best so far is good enough; nil: never

	MPS, LP  io.Writer // take the problem as a standard file; nil: it is not written
	Solution io.Reader // what a solver wrote of the problem: judged in the place of a search; nil: it is searched for
}

// DraftCrop is a crop in a bed, each by its id or name; no bed: in any.
type DraftCrop struct{ Crop, Bed string }

// usualSeconds is how long a draft is searched for [s].
const usualSeconds = 10

// DraftView is a drafted year.
type DraftView struct {
	Holding   string
	From      cal.Date
	Weeks     int
	Futures   int
	Seed      uint64
	Objective float64
	Bound     float64        // minus infinity: none is known
	Unsown    float64        // the objective when nothing is sown
	Solver    *float64       // the objective as the solver told it; nil: there was none, or it told none
	Broken    []words.Phrase // what a solver's solution takes beyond what there is: it is not laid into beds then
	Steps     int
	Sowings   int // that could be chosen from
	Kept      int // plantings left as they are
	ShareNow  float64
	ShareThen float64 // share of the table that is home-grown, with the plan as it stands and with the draft, 0-1
	ShortNow  float64
	ShortThen float64 // what lacks at the table over the weeks, likewise, mean over the years of weather [kg]
	Rows      []DraftRow
	Wishes    []words.Phrase     // that were heeded
	Covers    []place.CoverSpell // laid over beds for what is drafted
	Notes     []words.Phrase

	present []plan.Planting    // the plan as it stands
	kept    []plan.Planting    // what the draft leaves of it
	lie     []place.CoverSpell // the covers as they lie without it
}

// DraftBest is how far the search for a draft has come.
type DraftBest struct {
	Objective float64
	Bound     float64 // minus infinity: none is known yet
}

// DraftRow is one planting of a draft.
type DraftRow struct {
	Cells   map[string]string // its row of plantings.csv
	BedName string
	Name    string
	Date    cal.Date
	AreaM2  float64
	Method  string
	Odds    float64
	Again   bool // its family stands on some of this ground twice
	Says    words.Phrase
	Under   words.Phrase // the cover it stands under for a time; no key: none
}

// DraftYear drafts a year for a holding.
func DraftYear(h *holding.Holding, o DraftOptions) (*DraftView, error) {
	s, err := settingOf(h, OutlookOptions{Seed: o.Seed, Years: draft.Futures})
	if err != nil {
		return nil, err
	}
	present, faults := plan.Resolve(h.Plans, h.Plantings, h.Changes, h.Plan)
	if len(faults) > 0 {
		return nil, faults
	}
	wishes, gone, err := o.wishes(s, present)
	if err != nil {
		return nil, err
	}
	d, err := draft.Build(draft.Setting{Setting: s, Wishes: wishes})
	if err != nil {
		return nil, err
	}
	linear := d.Problem.Linear()
	if err := o.write(d.Problem.Name, linear); err != nil {
		return nil, err
	}
	start := d.Problem.NewStanding()
	v := &DraftView{present: present, kept: d.Kept, lie: h.Covers, Holding: h.Name, From: s.From, Weeks: s.Weeks, Futures: s.Years, Seed: s.Seed,
		Unsown: start.Objective(), Sowings: len(d.Problem.Sowings), Kept: len(d.Kept), Notes: append(gone, d.Notes...)}
	for _, w := range wishes {
		v.Wishes = append(v.Wishes, w.Phrase())
	}
	found := search.Found{}
	if o.Solution != nil {
		if found, err = v.judge(d.Problem, linear, o); err != nil {
			return nil, err
		}
	} else {
		found = search.Run(start, sought(o))
	}
	v.Objective, v.Bound, v.Steps = found.Objective, found.Bound, found.Steps
	if len(v.Broken) > 0 {
		return v, nil
	}
	return v, v.lay(d, found.Units, s)
}

// lay turns a solution into plantings, with the table they make.
func (v *DraftView) lay(d *draft.Draft, units programme.Solution, s outlook.Setting) error {
	rows, err := d.Lay(units)
	if err != nil {
		return err
	}
	says, err := d.Tell(rows, units)
	if err != nil {
		return err
	}
	for i := range rows {
		v.Rows = append(v.Rows, draftRow(s.Holding, d, &rows[i], says[i]))
	}
	v.cover(s.Holding, d.Covers(rows))
	s.Years = usualYears
	if v.ShareNow, v.ShortNow, err = shareOf(s); err == nil {
		s.Holding = d.With(rows)
		v.ShareThen, v.ShortThen, err = shareOf(s)
	}
	return err
}

// cover tells which covers a draft lays.
func (v *DraftView) cover(h *holding.Holding, laid []place.CoverSpell) {
	v.Covers = laid
	for i := range laid {
		name := laid[i].Bed
		for b := range h.Beds {
			if h.Beds[b].ID == laid[i].Bed {
				name = h.Beds[b].Name
			}
		}
		v.Notes = append(v.Notes, words.P("desk.draft_cover", words.Args{"bed": name, "cover": coverName(laid[i].Kind), "on": laid[i].On, "off": laid[i].Off}))
	}
	if len(laid) > 0 {
		v.Notes = append(v.Notes, words.P("desk.draft_covers_lie", nil))
	}
}

// sought turns the options into what the search takes: the clock is the desk's.
func sought(o DraftOptions) search.Asked {
	seconds := o.Seconds
	if seconds == 0 && o.Steps == 0 {
		seconds = usualSeconds
	}
	began := time.Now()
	total := int(seconds * 1000)
	a := search.Asked{Seed: o.Seed, Steps: o.Steps}
	if seconds > 0 || o.Stop != nil {
		a.Stop = func() bool {
			over := seconds > 0 && time.Since(began) >= time.Duration(total)*time.Millisecond
			return over || o.Stop != nil && o.Stop()
		}
	}
	a.Told = func(p search.Progress) {
		if o.Progress != nil && seconds > 0 {
			o.Progress(min(total, int(time.Since(began).Milliseconds())), total)
		}
		if o.Best != nil {
			o.Best(DraftBest{p.Objective, p.Bound})
		}
	}
	return a
}

func draftRow(h *holding.Holding, d *draft.Draft, r *draft.Row, says words.Phrase) DraftRow {
	c := &d.Columns[r.Parts[0].Sowing]
	row := DraftRow{Cells: plantingCells(&r.Planting), Name: c.Use.Label, Date: r.Planting.Date, AreaM2: r.Planting.AreaM2,
		Method: string(r.Planting.Method), Odds: d.Odds(r), Again: r.Again, Says: says}
	if r.Under.Kind != "" {
		row.Under = words.P("desk.draft_under", words.Args{"cover": coverName(r.Under.Kind)})
	}
	for i := range h.Beds {
		if h.Beds[i].ID == r.Planting.Bed {
			row.BedName = h.Beds[i].Name
		}
	}
	return row
}

// shareOf is the share of the table that is home-grown, and what lacks at it [kg].
func shareOf(s outlook.Setting) (share, shortKg float64, err error) {
	t, err := outlook.Compute(s, memory())
	if err != nil {
		return math.NaN(), math.NaN(), err
	}
	sum := t.Summarise(false)
	for i := range sum.Vegetables {
		for _, kg := range sum.Vegetables[i].Short {
			shortKg += kg
		}
	}
	return sum.Year, shortKg, nil
}
