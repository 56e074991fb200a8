package watering

import (
	"garner/internal/cal"
	"garner/internal/outlook"
)

const (
	// pastDays is how long before today the balance begins [d]: half a year, which
	// takes in a winter that filled the ground.
	pastDays = 182

	// weekDays is the week ahead, and the one behind [d].
	weekDays = 7

	// aheadDays is how far it is looked ahead for the first bed that suffers [d].
	aheadDays = 28

	// usualFutures is how many futures are looked at.
	usualFutures = 20
)

// Away is a time in which nobody comes: watered for the last time on the day of
// leaving, for the first time again on the day of coming back.
type Away struct {
	Leave, Back cal.Date
	Odds        float64 // share of the futures for which what is given before is enough, 0.5-0.95; 0: UsualOdds
}

func (a *Away) odds() float64 {
	if a == nil || a.Odds == 0 {
		return UsualOdds
	}
	return a.Odds
}

// Of works out what every planted bed of a holding wants. away may be nil. Beds
// come in the order of the holding; one on which nothing stands is left out. The
// second answer is what all of them ask in a dry week, the driest of ten [L]: their own
// dry weeks need not come together. The number of workers changes nothing.
func Of(s outlook.Setting, m *outlook.Memory, away *Away) (beds []Bed, allDryL float64, err error) {
	end := s.Today + aheadDays
	if away != nil {
		end = max(end, away.Back+1)
	}
	a := asking{setting: &s, away: away, beds: map[string]*tally{}}
	if a.told, err = toldOf(s, m); err != nil {
		return nil, 0, err
	}
	futures := min(usualFutures, s.Years)
	for i := range s.Holding.Beds {
		a.beds[s.Holding.Beds[i].ID] = newTally(futures)
	}
	if err := outlook.Tracts(s, m, futures, s.Today-pastDays, end, a.visitor((*seer).see)); err != nil {
		return nil, 0, err
	}
	which, allDryL := a.choose(futures)
	for i := range s.Holding.Beds {
		if t := a.beds[s.Holding.Beds[i].ID]; t.isSeen() {
			beds = append(beds, t.bed(s.Holding.Beds[i].ID, &which, s.Today))
		}
	}
	return beds, allDryL, nil
}

// choose settles what is given today and before leaving, and chooses the futures that
// are told.
func (a *asking) choose(futures int) (which chosen, allDryL float64) {
	var asked [][]float64
	all := make([]float64, futures)
	for i := range a.setting.Holding.Beds {
		t := a.beds[a.setting.Holding.Beds[i].ID]
		if !t.isSeen() {
			continue
		}
		t.settle()
		t.depart(a.away)
		asked = append(asked, t.asked())
		for f, l := range t.week() {
			all[f] += l
		}
	}
	which = chosen{middle(asked), a.thirsty(futures), a.away.odds()}
	return which, max(quantile(all, dry), all[which.week])
}

// thirsty is, for each round, the future that is told of it; none without days away.
func (a *asking) thirsty(futures int) (which []int) {
	if a.away == nil {
		return nil
	}
	for k := range everyDays {
		litres := make([]float64, futures)
		for i := range a.setting.Holding.Beds {
			a.beds[a.setting.Holding.Beds[i].ID].rounds[k].litres(litres)
		}
		which = append(which, thirsty(litres, a.away.odds()))
	}
	return which
}

// asking gathers what tracts want, by bed and future.
type asking struct {
	setting *outlook.Setting
	away    *Away
	told    given
	beds    map[string]*tally
}

// seer is the eyes of one worker, with its working space.
type seer struct {
	*asking
	course course
}

func (a *asking) visitor(each func(*seer, *outlook.Tract) error) func() func(*outlook.Tract) error {
	return func() func(*outlook.Tract) error {
		s := &seer{asking: a}
		return func(t *outlook.Tract) error {
			if err := s.course.lay(t); err != nil {
				return err
			}
			return each(s, t)
		}
	}
}

// toldOf gathers what was told of the water of all beds, with the ground that was
// planted when a bed was watered as a whole.
func toldOf(s outlook.Setting, m *outlook.Memory) (given, error) {
	g, err := told(s.Holding, s.Today)
	if err != nil || len(g.beds) == 0 {
		return g, err
	}
	return g, outlook.Tracts(s, m, 1, s.Today-pastDays, s.Today+1, func() func(*outlook.Tract) error {
		var c course
		return func(t *outlook.Tract) error {
			if err := c.lay(t); err != nil {
				return err
			}
			g.plant(t, &c)
			return nil
		}
	})
}

// see adds a tract under one future to its bed.
func (s *seer) see(t *outlook.Tract) error {
	c := &s.course
	today := c.at(s.setting.Today)
	if !stands(c, today) {
		return nil
	}
	into, f := s.beds[t.Bed.ID], t.Future
	into.seen[f] = true
	b, past := c.past(t, &s.told, today)
	area := c.areaM2[today]
	if f == 0 {
		if past.read.IsSet() {
			into.read = past.read
			into.readL += past.movedMM * c.areaM2[c.at(past.read)]
		}
		into.told = into.told || s.told.since(t).IsSet()
		into.areaM2 += area
		into.seeds = into.seeds || c.stands[today].Seed
		into.rain = c.lastRain(today, into.rain)
	}
	into.level[f] = drier(into.level[f], c.level(b, today))
	into.lately[f] += past.lostL
	into.wake(f, c, b, today)
	into.missing[f] += b.MissingMM * area
	into.fails[f] = sooner(into.fails[f], c.date(c.alone(b, today, today+aheadDays)))
	if s.away != nil {
		s.leave(c, into, f, today, b)
	}
	return nil
}

// stands tells whether anything stands on a tract on a day or after it.
func stands(c *course, from int) bool {
	for i := from; i < len(c.areaM2); i++ {
		if c.areaM2[i] > 0 {
			return true
		}
	}
	return false
}

func (c *course) date(i int) cal.Date {
	if i < 0 {
		return cal.None
	}
	return c.first + cal.Date(i)
}

// sooner is the first of two dates, either of which may be none.
func sooner(a, b cal.Date) cal.Date {
	switch {
	case !a.IsSet():
		return b
	case !b.IsSet():
		return a
	}
	return min(a, b)
}
