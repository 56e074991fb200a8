package advise

import (
	"math"

	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/space"
	"garner/internal/sun"
	"garner/internal/words"
)

// Space is ground of one bed that is free for a time.
type Space struct {
	Bed    string
	From   cal.Date // first day it can be sown
	Until  cal.Date // day it must be free again; None: open
	AreaM2 float64
}

// Asked is a space as somebody asks for it: what is left open is filled in from
// the bed's free ground.
type Asked struct {
	Bed    string
	From   cal.Date // None, zero or past: today
	Until  cal.Date // None or zero: until the ground is held again
	AreaM2 float64  // 0: what is free
}

// Space fills in what a question leaves open. Without an area it is the largest
// piece that is free on the day, or the one that comes free next.
func (a *Adviser) Space(q Asked) (Space, error) {
	bed := a.Ground.Bed(q.Bed)
	if bed == nil {
		return Space{}, fault.New(fault.NotFound, "advise.bed_unknown", words.Args{"bed": q.Bed})
	}
	s := Space{Bed: q.Bed, From: max(q.From, a.Today), Until: q.Until, AreaM2: q.AreaM2}
	if s.Until == 0 || s.Until >= a.Table.End() {
		s.Until = cal.None // as far as the table sees
	}
	if s.From >= a.Table.End() {
		return s, fault.New(fault.OutOfRange, "advise.beyond", words.Args{"from": s.From, "end": a.Table.End()})
	}
	if s.Until.IsSet() && s.Until <= s.From {
		return s, fault.New(fault.Invalid, "advise.backwards", words.Args{"from": s.From, "until": s.Until})
	}
	if s.AreaM2 > 0 && s.Until.IsSet() {
		return s, nil
	}
	return a.free(s)
}

// free looks up the bed's free ground for what a space leaves open: the piece that
// is free on the day for which most light is left, else the one that comes next.
func (a *Adviser) free(s Space) (Space, error) {
	bed := a.Ground.Bed(s.Bed)
	if s.Until.IsSet() {
		if s.AreaM2 = rounded(bed.RoomM2(s.From, s.Until)); s.AreaM2 >= leastAreaM2 {
			return s, nil
		}
		s.AreaM2 = 0
	}
	g := a.brightest(bed.Gaps(s.From, s.From+1))
	if g == nil || g.Until-max(s.From, g.From.P50) < leastDays {
		if next := soonest(bed.Gaps(s.From, a.Table.End())); next != nil && s.AreaM2 <= 0 {
			g = next
		}
	}
	switch {
	case g != nil:
	case s.AreaM2 > 0:
		return s, nil // the asker knows better than the plan
	default:
		return s, fault.New(fault.NotFound, "advise.no_ground", words.Args{"bed": a.bedName(s.Bed), "from": s.From})
	}
	if s.AreaM2 <= 0 {
		s.AreaM2, s.From = rounded(g.AreaM2), max(s.From, g.From.P50)
	}
	if !g.Open && (!s.Until.IsSet() || g.Until < s.Until) {
		s.Until = g.Until
	}
	return s, nil
}

// rounded cuts an area to what a form takes, so that what is accepted is what was
// weighed [m2].
func rounded(m2 float64) float64 { return math.Floor(m2*100+1e-6) / 100 }

// leastAreaM2 is the least ground worth a thought [m2].
const leastAreaM2 = 0.1

// What is left of the year for a gap is counted in days long enough for growth,
// as far as one crop needs them.
const (
	growingDayH  = 10.0 // common practice, no source: growth all but stops on shorter days
	oneCropsDays = 150
)

// soonest is the first gap with ground and time enough for a crop; nil when there
// is none.
func soonest(gaps []space.Gap) *space.Gap {
	for i := range gaps {
		if g := &gaps[i]; g.AreaM2 >= leastAreaM2 && g.Until-g.From.P50 >= leastDays {
			return g
		}
	}
	return nil
}

// brightest is the gap with the most ground over the most growing days; nil when
// there is none.
func (a *Adviser) brightest(gaps []space.Gap) *space.Gap {
	var best *space.Gap
	most := 0.0
	for i := range gaps {
		g := &gaps[i]
		days := 0
		for d := g.From.P50; d < g.Until && days < oneCropsDays; d++ {
			if sun.DayLengthH(a.latitude(g.Bed), d.DayOfYear()) >= growingDayH {
				days++
			}
		}
		if light := g.AreaM2 * (float64(days) + 0.01*float64(g.Until-g.From.P50)); g.AreaM2 >= leastAreaM2 && light > most {
			best, most = g, light
		}
	}
	return best
}

// northern tells whether midsummer falls in June at a bed.
func (a *Adviser) northern(bed string) bool { return a.latitude(bed) >= 0 }

// latitude is that of a bed's site [degrees].
func (a *Adviser) latitude(bed string) float64 {
	for _, b := range a.holding.Beds {
		for _, s := range a.holding.Sites {
			if b.ID == bed && s.ID == b.Site {
				return s.Location.LatitudeDeg
			}
		}
	}
	return 0
}

func (a *Adviser) bedName(id string) string {
	for _, b := range a.holding.Beds {
		if b.ID == id && b.Name != "" {
			return b.Name
		}
	}
	return id
}
