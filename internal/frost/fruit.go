package frost

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/num"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/risk"
)

// Fruit is a tree or bush whose blossom a frost can kill.
type Fruit struct {
	ID       string         // of the planting or feature
	Planting *plan.Planting // nil: a tree of the site
	Feature  *place.Feature // taken for its fruit by its name; nil: a planting
	Crop     *crop.Crop
	Stages   []*risk.Blossom // in order of time
	Stage    *risk.Blossom   // told, or reached by its sum of warmth; nil: not known, or before the first
	Told     bool            // the stage was told
	On       cal.Date        // the day the stage was seen; None: it was not
	Stale    bool            // it was seen too long ago to say anything, and no sum leads on from it
	Asleep   bool            // before its first stage, in the middle of the futures
	Over     bool            // its last stage is long past
	Nights   []FruitNight    // the nights told one by one
	If       []StageRisk     // by stage, as if it stood in it: where no stage is known
	Bloom    *Dates          // when it is in full bloom, by its sum; nil: no sum is known, or it is past
	Bitten   float64         // share of the futures in which a tenth or more of the blossom is lost from then on, until the fruit is set
}

// FruitNight is what a night does to the blossom.
type FruitNight struct {
	Evening cal.Date
	Stage   *risk.Blossom // in the middle of the futures
	C       Tens          // its minimum there
	Odds    float64       // share of the futures in which a tenth or more is lost
	Lost    float64       // share of the blossom that is lost, mean of the futures
}

// StageRisk is what the nights told one by one do to a stage.
type StageRisk struct {
	Stage *risk.Blossom
	Odds  float64
}

// petalDays is how long after the beginning of its last stage the fruit is set. judgement
const petalDays = 14

// fruit are the trees and bushes of the holding whose blossom has published figures.
func (a *Seen) fruit(q Question) ([]Fruit, error) {
	var out []Fruit
	for _, b := range a.inOrder() {
		for _, p := range b.plants {
			c, known := a.setting.Book.Crop(p.planting.Crop)
			if !known || p.there[0] <= a.futures/2 || len(a.book.Stages(c.ID)) == 0 {
				continue
			}
			f := Fruit{ID: p.planting.ID, Planting: &p.planting, Crop: c}
			if err := a.blossom(&f, a.seenStage(q, f.ID), b.sky, b.spellAt); err != nil {
				return nil, err
			}
			out = append(out, f)
		}
	}
	h := a.setting.Holding
	for i := range h.Features {
		x := &h.Features[i]
		called := a.setting.Book.Called(x.Name)
		s := a.skies[x.Site]
		if x.Kind != place.DeciduousTree || len(called) != 1 || len(a.book.Stages(called[0].ID)) == 0 || s == nil {
			continue
		}
		f := Fruit{ID: x.ID, Feature: x, Crop: called[0]}
		if err := a.blossom(&f, a.seenStage(q, f.ID), s, func(cal.Date) cover.Spell { return cover.Spell{Kind: cover.Open} }); err != nil {
			return nil, err
		}
		out = append(out, f)
	}
	return out, nil
}

// seenStage is the stage that is told of today, else the one that was recorded.
func (a *Seen) seenStage(q Question, id string) SeenStage {
	if stage := q.Stages[id]; stage != "" {
		return SeenStage{stage, a.setting.Today}
	}
	return q.Seen[id]
}

// blossom works out what the nights do to a fruit's blossom.
func (a *Seen) blossom(x *Fruit, seen SeenStage, s *sky, spellAt func(cal.Date) cover.Spell) error {
	x.Stages, x.On = a.book.Stages(x.Crop.ID), cal.None
	told := slices.IndexFunc(x.Stages, func(b *risk.Blossom) bool { return b.Stage == seen.Stage })
	if told >= 0 {
		x.On = seen.On
		if x.Stale = !x.Stages[told].Known() && a.setting.Today-seen.On >= nightsTold; x.Stale {
			told = -1
		}
	}
	x.Told = told >= 0
	lows, err := a.lows(s, spellAt)
	if err != nil {
		return err
	}
	course := a.course(x, s, told)
	if course == nil {
		for k := range x.Stages {
			x.If = append(x.If, StageRisk{x.Stages[k], share(lows[:nightsTold], func(low float64, _, _ int) bool { return low <= x.Stages[k].Kill10C })})
		}
		return nil
	}
	x.nights(lows, course, a)
	if x.Stages[0].Known() {
		x.bloom(s, course, a)
		x.Bitten = share(lows, func(low float64, i, f int) bool {
			st := course[i][f]
			return st >= 0 && st < len(x.Stages) && low <= x.Stages[st].Kill10C
		})
	}
	return nil
}

// lows are the minima at a fruit, by night and future.
func (a *Seen) lows(s *sky, spellAt func(cal.Date) cover.Spell) ([][]float64, error) {
	out := make([][]float64, a.nights)
	for i := range out {
		c, err := cover.Of(spellAt(a.setting.Today + cal.Date(i)))
		if err != nil {
			return nil, err
		}
		for f := range a.futures {
			out[i] = append(out[i], s.under(c, f, i))
		}
	}
	return out, nil
}

// share is the share of the futures in which something holds in one of the nights.
func share(lows [][]float64, holds func(low float64, i, f int) bool) float64 {
	n := 0
	for f := range lows[0] {
		for i := range lows {
			if holds(lows[i][f], i, f) {
				n++
				break
			}
		}
	}
	return float64(n) / float64(len(lows[0]))
}

// course is the stage by night and future: -1 before the first, as many as there are
// stages when the fruit is set; nil where none is known. One that was seen stands for as
// many nights from then on as are told one by one where no sums are known; elsewhere the
// sum is set to that stage's on the day it was seen, and goes on from there.
func (a *Seen) course(x *Fruit, s *sky, told int) [][]int {
	if told < 0 && !x.Stages[0].Known() {
		return nil
	}
	out := make([][]int, a.nights)
	for i := range out {
		out[i] = make([]int, a.futures)
	}
	for f := range a.futures {
		sum, last := s.warmth(x.Stages[0].BaseC, f), 0
		if told >= 0 && x.Stages[told].Known() {
			sum = a.fromSeen(x, s, told, f, sum)
		}
		for i := range out {
			at := told
			if x.Stages[0].Known() {
				at = stageAt(x.Stages, sum)
				sum += s.dayWarmth(x.Stages[0].BaseC, f, s.today+i)
			} else if i >= nightsTold-int(a.setting.Today-x.On) {
				at = len(x.Stages)
			}
			if at == len(x.Stages)-1 && x.Stages[0].Known() {
				if last++; last > petalDays {
					at = len(x.Stages)
				}
			}
			out[i][f] = at
		}
	}
	return out
}

// fromSeen is the sum of today in a future, from the day on which a stage was seen: that
// of the stage, or what it was by then where that lies within the stage [C d].
func (a *Seen) fromSeen(x *Fruit, s *sky, told, f int, sum float64) float64 {
	since := 0.0
	for i := max(0, s.today-int(a.setting.Today-x.On)); i < s.today; i++ {
		since += s.dayWarmth(x.Stages[0].BaseC, f, i)
	}
	then := max(sum-since, x.Stages[told].SumCd)
	if told+1 < len(x.Stages) {
		then = min(then, x.Stages[told+1].SumCd-1)
	}
	return then + since
}

// stageAt is the stage that a sum has reached; -1: none.
func stageAt(stages []*risk.Blossom, sum float64) int {
	at := -1
	for k := range stages {
		if sum >= stages[k].SumCd {
			at = k
		}
	}
	return at
}

// warmth is the sum above a base from the beginning of the growing year up to today [C d].
func (s *sky) warmth(baseC float64, f int) float64 {
	begin := BlossomYear(s.first+cal.Date(s.today), s.south)
	sum := 0.0
	for i := max(0, int(begin-s.first)); i < s.today; i++ {
		sum += s.dayWarmth(baseC, f, i)
	}
	return sum
}

// BlossomYear is the first day of the year of blossom that a day lies in: 1 January,
// south of the equator 1 July.
func BlossomYear(now cal.Date, south bool) cal.Date {
	if !south {
		return cal.Of(now.Year(), 1, 1)
	}
	if begin := cal.Of(now.Year(), 7, 1); begin <= now {
		return begin
	}
	return cal.Of(now.Year()-1, 7, 1)
}

func (s *sky) dayWarmth(baseC float64, f, i int) float64 {
	return max(0, s.days[f][i].MeanC()-baseC)
}

// nights tells the nights one by one.
func (x *Fruit) nights(lows [][]float64, course [][]int, a *Seen) {
	for i := range nightsTold {
		n := FruitNight{Evening: a.setting.Today + cal.Date(i), C: tensOf(lows[i])}
		at := slices.Clone(course[i])
		slices.Sort(at)
		if mid := at[len(at)/2]; mid >= 0 && mid < len(x.Stages) {
			n.Stage = x.Stages[mid]
		} else if i == 0 {
			x.Asleep, x.Over = mid < 0, mid >= 0
		}
		for f, low := range lows[i] {
			st := course[i][f]
			if st < 0 || st >= len(x.Stages) {
				continue
			}
			if low <= x.Stages[st].Kill10C {
				n.Odds += 1 / float64(a.futures)
			}
			n.Lost += x.Stages[st].Lost(low) / float64(a.futures)
		}
		if i == 0 {
			x.Stage = n.Stage
		}
		x.Nights = append(x.Nights, n)
	}
}

// bloom tells when it comes to full bloom.
func (x *Fruit) bloom(s *sky, course [][]int, a *Seen) {
	full := slices.IndexFunc(x.Stages, func(b *risk.Blossom) bool { return b.Stage == fullBloom })
	var found []float64
	for f := range a.futures {
		if full < 0 || course[0][f] >= full {
			continue
		}
		for i := range course {
			if course[i][f] >= full {
				found = append(found, float64(a.setting.Today)+float64(i))
				break
			}
		}
	}
	if len(found) == 0 {
		return
	}
	slices.Sort(found)
	day := func(p float64) cal.Date { return cal.Date(num.Quantile(found, p) + 0.5) }
	x.Bloom = &Dates{P10: day(0.1), P50: day(0.5), P90: day(0.9), Share: float64(len(found)) / float64(a.futures)}
}

// fullBloom is the stage of that name in the data.
const fullBloom = "full_bloom"
