package desk

import (
	"cmp"
	"math"
	"slices"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/jobs"
	"garner/internal/place"
	"garner/internal/plan"
)

// SowingsView is all that is to be sown or set in the year ahead, by day.
type SowingsView struct {
	Household   string
	Today, Last cal.Date
	Sowings     []SowingLine
}

// SowingLine is one sowing to come.
type SowingLine struct {
	Planting string
	Date     cal.Date
	Name     string // with its variety
	Bed      string // id
	BedName  string
	Indoors  bool     // raised first, and planted out into the bed
	Out      cal.Date // of what is raised: planted out
	How      string   // seed, set, plant
	AreaM2   float64
	RowM     float64 // metres of row in the bed
	Cells    float64 // of what is raised
	Sets     float64 // pieces
	SeedG    float64 // 0: not known, or none is sown
	SetKg    float64
	InRowM   float64 // of the stand
	BetweenM float64
	DepthM   float64 // 0: not told, or on the surface
	PerM     float64 // seeds in a metre of row; 0: not told
	Covers   []cover.Kind
	Lot      string // id of what is on hand of it; empty: nothing is
	Enough   bool
}

// aYearOfSowings is how far ahead sowings are told [d].
const aYearOfSowings = 365

// SowingsView lists what is to be sown in the year ahead.
func (o *Office) SowingsView() (*SowingsView, error) {
	a, err := o.askKnown()
	if err != nil {
		return nil, err
	}
	key := a.answer("sowings of a year").Sum()
	if known, ok := o.views.sowings.get(key); ok {
		return known, nil
	}
	w, err := o.weekWork(JobsOptions{}, false)
	if err != nil {
		return nil, err
	}
	now := a.setting.Today
	all, err := w.derive(now + aYearOfSowings)
	if err != nil {
		return nil, err
	}
	v := &SowingsView{Household: a.holding.Name, Today: now, Last: now + aYearOfSowings - 1}
	n := newNamer(a)
	for i := range all {
		if line, ok := n.sowing(&all[i]); ok {
			v.Sowings = append(v.Sowings, line)
		}
	}
	slices.SortStableFunc(v.Sowings, func(a, b SowingLine) int { return cmp.Or(cmp.Compare(a.Date, b.Date), cmp.Compare(a.Name, b.Name)) })
	o.views.sowings.keep(key, v)
	return v, nil
}

// sowing tells a job that sows or sets; false for any other.
func (n *namer) sowing(j *jobs.Job) (SowingLine, bool) {
	p, known := n.plantings[j.Planting]
	if !known || !slices.Contains([]jobs.Kind{jobs.SowIndoors, jobs.Sow, jobs.Set, jobs.SowGreen}, j.Kind) {
		return SowingLine{}, false
	}
	l := SowingLine{Planting: p.ID, Date: j.Best, Name: n.use(p.Crop, p.Use), Bed: p.Bed, BedName: n.bed(p.Bed), How: "seed", Out: cal.None,
		AreaM2: p.AreaM2, SeedG: j.Amount.SeedG}
	if v, ok := n.varieties[p.Variety]; ok {
		l.Name += " ‘" + v.Name + "’"
	}
	switch j.Kind {
	case jobs.SowIndoors:
		l.How, l.Indoors, l.Out, l.Cells = "plant", true, p.Date, j.Amount.Plants
	case jobs.Set:
		l.How, l.Sets = "set", j.Amount.Plants
	}
	if l.SeedG > 0 {
		l.SeedG = math.Max(leastSeedG, l.SeedG) // as the jobs tell it
	}
	for _, need := range j.Needs {
		l.Lot, l.Enough = need.Lot, need.Enough
		if need.Unit == "kg" {
			l.SetKg = need.Amount
		}
	}
	if _, u, err := useOf(n.a.setting.Book, p.Crop, p.Use); err == nil {
		l.stand(&p, u)
	}
	l.Covers = coversOn(n.a.holding.Covers, p.Bed, p.Date)
	return l, true
}

// stand tells the distances: those of the planting before those of the book.
func (l *SowingLine) stand(p *plan.Planting, u *crop.Use) {
	l.InRowM, l.BetweenM = cmp.Or(p.InRowM, u.InRowM), cmp.Or(p.BetweenRowM, u.BetweenRowM)
	l.DepthM = u.SowDepthM
	if l.BetweenM > 0 {
		l.RowM = p.AreaM2 / l.BetweenM
	}
	if l.How == "seed" {
		l.PerM = u.SowPerM
	}
}

// coversOn are the covers over a bed on a day, the outermost as it was laid first.
func coversOn(all []place.CoverSpell, bed string, on cal.Date) []cover.Kind {
	var out []cover.Kind
	for _, c := range place.CoversOf(all, bed) {
		if c.On <= on && (!c.Off.IsSet() || c.Off > on) {
			out = append(out, c.Kind)
		}
	}
	return out
}
