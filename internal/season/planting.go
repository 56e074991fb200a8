package season

import (
	"garner/internal/cal"
	"garner/internal/canopy"
	"garner/internal/growth"
)

// Planting is one planting of a bed as the day loop takes it.
type Planting struct {
	ID         string
	Parameters *growth.Parameters
	Date       cal.Date // the day it goes into the ground
	AreaM2     float64
	ClearBy    cal.Date // day the ground must be free; None: when it is over
	YearsOld   int      // of a perennial
	Shares     int      // index of the planting it stands under or between; -1: alone
	Beneath    float64  // share of its ground that lies beneath that planting, 0-1
	Soil       float64  // factor of the soil's state on weight
	Losses     []Loss   // in order of time
	Strips     []Strip  // lower leaves taken off
	Stays      []Stay   // where it stood before it was set here, in order
	Lifted     bool     // on ClearBy it is lifted, to go on elsewhere
}

// Strip takes lower leaves off.
type Strip struct {
	On    cal.Date
	Share float64 // of the leaf there then, 0-1
}

// Stay is a planting's time in another bed, before it was lifted and set in this
// one. Its neighbours there are left out.
type Stay struct {
	Elsewhere  int      // index of that bed's own weather in Runner.Elsewhere
	Until      cal.Date // the day it is lifted
	Parameters *growth.Parameters
}

// Outcome is how a planting fared under one future. Days are indexes of the
// sky's span; -1 where it never came to it.
type Outcome struct {
	Emerged, Ready, Over int
	End                  growth.End
	Gone                 int       // day it ended, for whatever reason: its ground is free from the day after
	First                int       // day of the first entry of Standing or Flow
	Standing             []float32 // weight that stands to be pulled [kg], by day
	Flow                 []float32 // weight newly ready to be picked [kg], by day
}

// stand is a planting while the days go by.
type stand struct {
	growth.Plants
	from     *Planting
	start    int     // day index on which it goes in, may be negative
	clear    int     // day index by which it must be gone
	areaOff  float64 // share by which its ground is larger than told
	ready    int
	out      Outcome
	judged   bool    // the heat at the end has been looked at
	left     float64 // share of it that is not lost
	lost     int     // losses that have come
	standing []float32
	flow     []float32

	params *growth.Parameters // those of the place where it stands now
	stay   int                // index of its stay elsewhere; beyond the last: it stands here
	shared bool               // others have leaves on its ground today
	light  canopy.Light       // what it gets then
	beside float64            // how far their leaves fill its ground, in full stands
}

func (s *stand) begin(p *Planting, sky *Sky, d growth.Draw) {
	*s = stand{Plants: growth.Begin(p.Parameters, d), from: p, areaOff: d.AreaOff, left: 1, standing: s.standing[:0], flow: s.flow[:0]}
	s.params = p.Parameters
	if len(p.Stays) > 0 {
		s.params = p.Stays[0].Parameters
		s.Plants = growth.Begin(s.params, d)
	}
	s.start = int(p.Date-sky.First) + d.Shift
	s.clear = len(sky.DayLengthH)
	if p.ClearBy.IsSet() {
		s.clear = min(s.clear, int(p.ClearBy-sky.First))
	}
	s.ready = -1
	s.out = Outcome{Emerged: -1, Ready: -1, Over: -1, Gone: -1, First: -1}
	if s.start >= 0 && s.start < len(sky.dayOfYear) {
		s.StartSeason(p.Parameters, int(sky.dayOfYear[s.start]), p.YearsOld)
	}
}

// heatSpan is the time round ready in which heat spoils a cool-season crop:
// from 15 days before to 5 after (the window trial).
const (
	heatBefore = 15
	heatAfter  = 5
	// firstFortnight is the time in which heat keeps a planting from taking.
	firstFortnight = 14
)

// close books the day after the states have moved.
func (s *stand) close(day int, sky *Sky, b *Bedside) {
	p, u := s.params, s.params.Use
	if s.out.Emerged < 0 && s.Emergence >= 1 {
		s.out.Emerged = day
	}
	if day-s.start+1 == firstFortnight && u.HeatStartC > 0 && b.MeanAirC(s.start, day+1) > u.HeatStartC {
		s.Fail(growth.TooHot)
	}
	if s.ready < 0 && s.Living() {
		s.judgeSlowness(day, sky)
	}
	if s.Stage == growth.Ready && s.ready < 0 {
		s.ready = day
	}
	if s.ready >= 0 && !s.judged && !p.Perennial() {
		s.judgeHeat(day, b)
	}
	if s.Living() && day+1 >= s.clear {
		s.leave()
	}
	s.keep(day)
	s.end()
	if !s.Living() && s.out.Over < 0 && s.ready >= 0 && s.Stage == growth.Over {
		s.out.Over = day
	}
	if !s.Living() {
		s.out.Gone = day
	}
}

// leave takes the planting off its ground.
func (s *stand) leave() {
	if s.from.Lifted {
		s.TakeUp()
		return
	}
	s.Clear()
}

// judgeSlowness fails a crop that takes far longer than it should: it has
// stalled, whatever the calendar says. What was put in while days lengthen is
// only waiting for warmth, and is not judged before midsummer.
func (s *stand) judgeSlowness(day int, sky *Sky) {
	if sky.lengthening(s.start) && sky.lengthening(day) && day-s.start < halfYear {
		return
	}
	p := s.params
	limit := p.Use.SlowFactor * p.PublishedDays()
	if limit <= 0 || float64(s.Age) <= limit {
		return
	}
	if s.Development >= 1 {
		s.Fail(growth.TooSmall)
		return
	}
	s.Fail(growth.TooSlow)
}

// judgeHeat fails a crop whose last weeks were too hot.
func (s *stand) judgeHeat(day int, b *Bedside) {
	limit := s.params.Use.HeatEndC
	if limit <= 0 || day < s.ready+heatAfter {
		return
	}
	s.judged = true
	if b.MeanAirC(max(s.start, s.ready-heatBefore), day+1) > limit {
		s.Fail(growth.TooHot)
		s.standing, s.flow = s.standing[:0], s.flow[:0]
		s.out.First = -1
	}
}

// keep books what stands and what came ripe today.
func (s *stand) keep(day int) {
	if s.elsewhere() {
		return // it is the other bed's until it is lifted
	}
	p := s.params
	scale := s.from.AreaM2 * s.from.Soil * (1 + s.areaOff) * s.left
	if p.Flows() {
		if y := s.YieldedKgM2(p); y > 0 || s.out.First >= 0 {
			s.out.First = first(s.out.First, day)
			s.flow = pad(s.flow, day-s.out.First)
			s.flow = append(s.flow, float32(y*scale))
		}
	}
	if p.Stands() && s.Stage == growth.Ready {
		s.out.First = first(s.out.First, day)
		s.standing = pad(s.standing, day-s.out.First)
		s.standing = append(s.standing, float32(s.FreshKgM2(p)*scale))
	}
}

func first(known, day int) int {
	if known < 0 {
		return day
	}
	return known
}

func pad(s []float32, n int) []float32 {
	for len(s) < n {
		s = append(s, 0)
	}
	return s
}

// outcome returns what is known at the end of the span, with copies of what was
// kept.
func (s *stand) outcome() Outcome {
	o := s.out
	o.Ready, o.End = s.ready, s.End
	if s.gathered() {
		o.End = s.params.GoodEnd()
	}
	o.Standing = append([]float32(nil), s.standing...)
	o.Flow = append([]float32(nil), trim(s.flow)...)
	return o
}

// gathered tells whether a planting that has ended gave a harvest first: it was
// ready, and lived the days past ready that its use asks for.
func (s *stand) gathered() bool {
	if s.ready < 0 || s.Living() || s.Stage == growth.Dead || s.End == growth.Lifted {
		return false
	}
	return s.End == growth.Unfinished || float64(s.Days-(s.ready-s.start)) > s.params.Use.KeepDays
}

// trim drops the empty days at the end.
func trim(s []float32) []float32 {
	for len(s) > 0 && s[len(s)-1] == 0 {
		s = s[:len(s)-1]
	}
	return s
}
