package desk

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/fault"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/risk"
	"garner/internal/rotation"
	"garner/internal/words"
)

// BedView is a bed's ground and covers, for its page: what comes back too soon,
// what the soil was given and wants, and what the covers do.
type BedView struct {
	Today    cal.Date
	Bed      place.Bed
	Version  int64 // of the entry that last touched the bed's row
	Silent   bool  // its rotation is not told
	Clashes  []BedSaying
	Waits    []words.Phrase // what stood here lately and must wait
	Diseases []BedDisease
	Soil     BedSoil
	Covers   []BedCover
	Bare     []BedSaying // what nothing lies over, and what can reach it
}

// BedSaying is a sentence about a planting.
type BedSaying struct {
	ID, Name string
	Date     cal.Date
	Phrase   words.Phrase
}

// BedDisease is a disease or pest recorded on the bed.
type BedDisease struct {
	Name   string
	Called words.Phrase // its name where it has no other; empty: Name
	Seen   cal.Date
	Note   string
}

// Problem is a disease that can be recorded, for a list of choices.
type Problem struct{ ID, Name string }

// Problems are the diseases and pests that stay in the ground, by name.
func Problems() []Problem {
	var out []Problem
	for _, p := range rotation.Problems() {
		out = append(out, Problem{p.ID, p.Name})
	}
	return out
}

// bedWork is what the parts of a bed's view are made of.
type bedWork struct {
	a         *asked
	n         *namer
	bed       place.Bed
	south     bool
	plantings []plan.Planting // of the plan in force, all beds, by date
	own       []plan.Planting // of the bed
	odds      map[string]plantingOdds
	cleared   map[string]bool
	history   *rotation.History
}

// BedView returns a bed's ground and covers. It never waits for a cold run: what
// is not computed yet is left out.
func (o *Office) BedView(id string) (*BedView, error) {
	a, err := o.ask(nil)
	if err != nil {
		return nil, err
	}
	w := bedWork{a: a, n: newNamer(a), cleared: clearedBy(a.holding.Records, a.setting.Today)}
	if err := w.find(id); err != nil {
		return nil, err
	}
	w.odds, _ = o.groundOdds(a, w.n)
	w.history, err = rotation.NewHistory(rotation.Ground{Book: a.setting.Book, Sites: a.holding.Sites, Beds: a.holding.Beds,
		Plantings: w.plantings, Records: a.holding.Records, Over: w.over})
	if err != nil {
		return nil, err
	}
	v := &BedView{Today: a.setting.Today, Bed: w.bed, Silent: w.bed.Rotation == rotation.Silent}
	if _, version, err := o.keeper.Row("beds", id); err == nil {
		v.Version = version
	}
	w.rotate(v)
	ground, err := o.spaceAtHand(a)
	if err != nil {
		return nil, err
	}
	if v.Soil, err = w.soil(ground); err != nil {
		return nil, err
	}
	return v, o.bedCovers(v, &w)
}

// find fills in the bed and its plantings.
func (w *bedWork) find(id string) error {
	h := w.a.holding
	at := slices.IndexFunc(h.Beds, func(b place.Bed) bool { return b.ID == id })
	if at < 0 {
		return fault.New(fault.NotFound, "desk.row_unknown", words.Args{"kind": kindName("beds"), "id": id})
	}
	w.bed = h.Beds[at]
	for _, s := range h.Sites {
		if s.ID == w.bed.Site {
			w.south = s.Location.LatitudeDeg < 0
		}
	}
	w.plantings, _ = plan.Resolve(h.Plans, h.Plantings, h.Changes, h.Plan)
	slices.SortStableFunc(w.plantings, func(a, b plan.Planting) int { return int(a.Date - b.Date) })
	for _, p := range w.plantings {
		if p.Bed == id {
			w.own = append(w.own, p)
		}
	}
	return nil
}

// over is when a planting is forecast to be over.
func (w *bedWork) over(planting string) cal.Date {
	if its, ok := w.odds[planting]; ok {
		return its.Over.P50
	}
	return cal.None
}

// past tells whether a planting is over or cleared.
func (w *bedWork) past(p *plan.Planting) bool {
	return stateOf(p, w.a.setting.Today, w.cleared[p.ID], w.over(p.ID)) == Past
}

// waitsFrom is how far ahead [d] a crop is asked after that stood here lately.
const waitsFrom = 90

// rotate tells what comes back too soon, what must wait and what was seen.
func (w *bedWork) rotate(v *BedView) {
	told := map[string]bool{} // families
	for i := range w.own {
		p := &w.own[i]
		if w.past(p) {
			continue
		}
		clash := w.history.Check(w.bed.ID, rotation.Candidate{Crop: p.Crop, Use: p.Use, Date: p.Date, Planting: p.ID})
		if clash != nil {
			v.Clashes = append(v.Clashes, BedSaying{p.ID, w.n.use(p.Crop, p.Use), p.Date, clash.Phrase})
			told[w.family(p.Crop)] = true
		}
	}
	for i := range w.own {
		p := &w.own[i]
		family := w.family(p.Crop)
		if p.Date > v.Today || told[family] {
			continue
		}
		clash := w.history.Check(w.bed.ID, rotation.Candidate{Crop: p.Crop, Use: p.Use, Date: v.Today + waitsFrom, Planting: perennial(w.a.setting.Book, p)})
		if clash != nil {
			v.Waits = append(v.Waits, clash.Phrase)
			told[family] = true
		}
	}
	w.diseases(v)
}

// perennial is the id of a planting that stays year after year, which does not
// come back to itself; empty of others.
func perennial(b *crop.Book, p *plan.Planting) string {
	if c, ok := b.Crop(p.Crop); ok {
		if u, err := c.Use(p.Use); err == nil && u.Pattern == crop.Perennial {
			return p.ID
		}
	}
	return ""
}

func (w *bedWork) family(id string) string {
	if c, ok := w.a.setting.Book.Crop(id); ok {
		return c.Family
	}
	return id
}

func (w *bedWork) diseases(v *BedView) {
	in := map[string]bool{}
	for _, p := range w.own {
		in[p.ID] = true
	}
	for _, r := range w.a.holding.Records {
		if r.Problem == "" || r.Bed != w.bed.ID && (r.Bed != "" || !in[r.Planting]) {
			continue
		}
		d := BedDisease{Name: r.Problem, Seen: r.Date, Note: r.Note}
		if p, _, ok := rotation.Find(r.Problem); ok {
			d.Name = p.Name
		} else if risk.Known(r.Problem) {
			d.Called = risk.ProblemName(r.Problem)
		}
		v.Diseases = append(v.Diseases, d)
	}
	slices.SortStableFunc(v.Diseases, func(a, b BedDisease) int { return int(b.Seen - a.Seen) })
}
