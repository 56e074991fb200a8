package outlook

import (
	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/season"
)

// Tract is ground of a bed on which plantings stand that share it, over a run of days
// under one future. What it points to holds until the next tract is shown.
type Tract struct {
	Bed     place.Bed
	Future  int
	First   cal.Date
	Days    []season.AtGround
	Growing []Growing
}

// Growing is one planting of a tract.
type Growing struct {
	Planting plan.Planting
	Use      *crop.Use
	Host     int // index of the planting on whose ground it stands; -1: on its own
	Days     []GrowingDay
}

// GrowingDay is a planting at the close of a day, nothing where it is not there.
type GrowingDay struct {
	There   bool
	AreaM2  float64 // ground it still holds
	Caught  float64 // share of the light on its ground that its leaves catch, 0-1
	HeightM float64
	Full    float64 // its leaves as a share of those of a full stand, 0-1

	Stage       growth.Stage
	Development float64 // 0 through to 1 first use
}

// Tracts shows the ground of every bed on which anything stands from today on,
// before the end: its weather and its plantings on the days from first up to end,
// under the first futures of the table, each tract's futures one after another. The
// plantings are kept watered.
func Tracts(s Setting, m *Memory, futures int, first, end cal.Date, each func(*Tract) error) error {
	m.mu.Lock()
	defer m.mu.Unlock()
	m.begin()
	defer m.tidy()
	j := &job{Setting: s}
	defer func() { m.forget(j) }()
	if err := j.lay(m); err != nil {
		return err
	}
	from := max(0, int(first-j.first()))
	to := min(j.span(), int(end-j.first()))
	w := walk{job: j, from: from, to: to}
	for _, b := range j.beds {
		if !b.standsWithin(j.Today, end) {
			continue
		}
		if err := b.prepare(); err != nil {
			return err
		}
		for f := range min(futures, j.Years) {
			if err := safely(f, func(f int) error { return w.tract(b, f, each) }); err != nil {
				return err
			}
		}
	}
	return nil
}

// standsWithin tells whether a planting of the bed may stand on a day from one up to
// another.
func (b *bedWork) standsWithin(from, to cal.Date) bool {
	for i := range b.bed.Plantings {
		p := &b.bed.Plantings[i]
		if p.Date < to && !(p.ClearBy.IsSet() && p.ClearBy <= from) {
			return true
		}
	}
	return false
}

// walk goes through tracts and keeps its working space.
type walk struct {
	job      *job
	from, to int // of the sky
	runner   season.Runner
	beside   season.Bedside
	out      Tract
}

func (w *walk) tract(b *bedWork, f int, each func(*Tract) error) (err error) {
	b.site.years.fill(f)
	days := b.site.years.days[f][:w.to]
	o := &w.out
	o.Bed, o.Future, o.First = b.place, f, b.site.sky.First+cal.Date(w.from)
	if o.Days, err = b.bed.Ground.AtGround(b.site.sky, days, w.from, w.to, o.Days); err != nil {
		return err
	}
	o.Growing = o.Growing[:0]
	for i := range b.plantings {
		o.Growing = append(o.Growing, Growing{b.plantings[i], b.uses[i].use, b.bed.Plantings[i].Shares, make([]GrowingDay, w.to-w.from)})
	}
	if err := w.run(b, f); err != nil {
		return err
	}
	return each(o)
}

// run steps the plantings of a bed and books their days.
func (w *walk) run(b *bedWork, f int) error {
	w.runner.Elsewhere = nil
	if len(b.former) > 0 {
		air, err := b.air(f)
		if err != nil {
			return err
		}
		w.runner.Elsewhere = air.elsewhere
	}
	if err := w.beside.Build(b.site.sky, b.site.years.days[f][:w.to], b.bed.Ground, b.start); err != nil {
		return err
	}
	w.runner.Watch = func(i, day int, s *growth.Plants, l season.Light) {
		if day < w.from || !s.Living() {
			return
		}
		p, date := &b.bed.Plantings[i], b.site.sky.First+cal.Date(day)
		for _, stay := range p.Stays {
			if date < stay.Until {
				return
			}
		}
		w.out.Growing[i].Days[day-w.from] = GrowingDay{There: true, AreaM2: p.AreaM2 * p.Left(date), Caught: l.Caught,
			HeightM: s.HeightM(p.Parameters), Full: s.Fullness(p.Parameters), Stage: s.Stage, Development: s.Development}
	}
	w.runner.Run(b.site.sky, &w.beside, &b.bed, b.draws(w.job.Seed, f, nil))
	return nil
}
