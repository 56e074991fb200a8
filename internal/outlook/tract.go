package outlook

import (
	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/num"
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
	Spells  []cover.Spell // the covers over it
	SoilC   []float64     // at sowing depth, mean of the day
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
	AgeD        int     // days since it came through or was planted
	Harden      float64 // how far it is hardened, 0-1
	Development float64 // stage of development, 0-1
}

// Tracts shows the ground of every bed on which anything stands from today on,
// before the end: its weather and its plantings on the days from first up to end,
// under the first futures of the table. The plantings are kept watered. Futures are
// shared out to workers, each of which begins once and sees whole futures, the beds of
// each in the order of the holding.
func Tracts(s Setting, m *Memory, futures int, first, end cal.Date, begin func() func(*Tract) error) error {
	return tracts(s, m, futures, first, end, true, begin)
}

// Standing is Tracts without the weather at the ground, one future after another.
func Standing(s Setting, m *Memory, futures int, first, end cal.Date, each func(*Tract) error) error {
	s.Workers = 1
	return tracts(s, m, futures, first, end, false, func() func(*Tract) error { return each })
}

func tracts(s Setting, m *Memory, futures int, first, end cal.Date, atGround bool, begin func() func(*Tract) error) error {
	m.mu.Lock()
	defer m.mu.Unlock()
	m.begin()
	defer m.tidy()
	j := &job{Setting: s}
	defer func() { m.forget(j) }()
	if err := j.lay(m); err != nil {
		return err
	}
	var beds []*bedWork
	for _, b := range j.beds {
		if !b.standsWithin(j.Today, end) {
			continue
		}
		if err := b.prepare(); err != nil {
			return err
		}
		beds = append(beds, b)
	}
	from, to := max(0, int(first-j.first())), min(j.span(), int(end-j.first()))
	return shared(min(futures, j.Years), s.Workers, func() func(int) error {
		w, each := walk{job: j, from: from, to: to, atGround: atGround}, begin()
		return func(f int) error {
			for _, b := range beds {
				if err := w.tract(b, f, each); err != nil {
					return err
				}
			}
			return nil
		}
	})
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
	atGround bool
	runner   season.Runner
	beside   season.Bedside
	out      Tract

	laid num.Digest // ground whose weather is in beside and out
	like int        // under this future
}

func (w *walk) tract(b *bedWork, f int, each func(*Tract) error) (err error) {
	o := &w.out
	o.Bed, o.Future, o.First = b.place, f, b.site.sky.First+cal.Date(w.from)
	if err := w.lay(b, f); err != nil {
		return err
	}
	o.Spells, o.Growing = b.bed.Ground.Spells, o.Growing[:0]
	for i := range b.plantings {
		o.Growing = append(o.Growing, Growing{b.plantings[i], b.uses[i].use, b.bed.Plantings[i].Shares, make([]GrowingDay, w.to-w.from)})
	}
	if err := w.run(b, f); err != nil {
		return err
	}
	return each(o)
}

// lay builds the weather at the ground of a bed, once for all tracts of it.
func (w *walk) lay(b *bedWork, f int) (err error) {
	like := b.site.years.like(f)
	if w.laid == b.ground && w.like == like {
		return nil
	}
	w.laid, w.like = b.ground, like
	days, o := b.site.years.of(f)[:w.to], &w.out
	if err = w.beside.Build(b.site.sky, days, b.bed.Ground, b.start); err != nil {
		return err
	}
	o.SoilC = o.SoilC[:0]
	for _, air := range w.beside.Air[w.from:w.to] {
		o.SoilC = append(o.SoilC, air.SoilC)
	}
	if w.atGround {
		o.Days, err = b.bed.Ground.AtGround(b.site.sky, days, w.from, w.to, o.Days)
	}
	return err
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
			HeightM: s.HeightM(p.Parameters), Full: s.Fullness(p.Parameters),
			Stage: s.Stage, AgeD: s.Age, Harden: s.Harden, Development: s.Development}
	}
	w.runner.Run(b.site.sky, &w.beside, &b.bed, b.draws(w.job.Seed, f, nil))
	return nil
}
