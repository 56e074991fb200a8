package watering

import (
	"garner/internal/cal"
	"garner/internal/outlook"
	"garner/internal/water"
)

const (
	// pastDays is how long before today the balance begins [d]: half a year, which
	// takes in a winter that filled the ground.
	pastDays = 182

	// weekDays is the week ahead [d].
	weekDays = 7

	// aheadDays is how far it is looked ahead for the first bed that suffers [d].
	aheadDays = 28

	// usualFutures is how many futures are looked at.
	usualFutures = 20
)

// Away is a time in which nobody comes: watered for the last time on the day of
// leaving, for the first time again on the day of coming back.
type Away struct{ Leave, Back cal.Date }

// Of works out what every planted bed of a holding wants. away may be nil. Beds
// come in the order of the holding; one on which nothing stands is left out. The
// second answer is of all beds together, future by future, without dates.
func Of(s outlook.Setting, m *outlook.Memory, away *Away) (beds []Bed, all Bed, err error) {
	end := s.Today + aheadDays
	if away != nil {
		end = max(end, away.Back+1)
	}
	a := asking{setting: &s, away: away, beds: map[string]*tally{}}
	if a.told, err = toldOf(s, m); err != nil {
		return nil, Bed{}, err
	}
	if err := outlook.Tracts(s, m, usualFutures, s.Today-pastDays, end, a.see); err != nil {
		return nil, Bed{}, err
	}
	sum := newTally(min(usualFutures, s.Years))
	for i := range s.Holding.Beds {
		if t := a.beds[s.Holding.Beds[i].ID]; t != nil {
			beds = append(beds, t.bed(s.Holding.Beds[i].ID))
			sum.add(t)
		}
	}
	return beds, sum.bed(""), nil
}

// asking gathers what tracts want, by bed and future.
type asking struct {
	setting *outlook.Setting
	away    *Away
	told    given
	beds    map[string]*tally
	course  course
}

// toldOf gathers what was told of the water of all beds, with the ground that was
// planted when a bed was watered as a whole.
func toldOf(s outlook.Setting, m *outlook.Memory) (given, error) {
	g, err := told(s.Holding)
	if err != nil || len(g.beds) == 0 {
		return g, err
	}
	var c course
	return g, outlook.Tracts(s, m, 1, s.Today-pastDays, s.Today, func(t *outlook.Tract) error {
		if err := c.lay(t); err != nil {
			return err
		}
		g.plant(t, &c)
		return nil
	})
}

// see adds a tract under one future to its bed.
func (a *asking) see(t *outlook.Tract) error {
	if err := a.course.lay(t); err != nil {
		return err
	}
	c := &a.course
	today := c.at(a.setting.Today)
	if !stands(c, today) {
		return nil
	}
	into := a.beds[t.Bed.ID]
	if into == nil {
		into = newTally(min(usualFutures, a.setting.Years))
		a.beds[t.Bed.ID] = into
	}
	f := t.Future
	into.told = into.told || a.told.since(t).IsSet()
	b, read, movedMM := c.past(t, &a.told, today)
	if f == 0 {
		into.areaM2 += c.areaM2[today]
		if read.IsSet() {
			into.read = read
			into.readL += movedMM * c.areaM2[c.at(read)]
		}
	}
	into.now[f] += c.due(&b, today) * c.areaM2[today]
	into.missing[f] += b.MissingMM * c.areaM2[today]
	into.fails[f] = sooner(into.fails[f], c.date(c.alone(b, today, len(c.given))))
	weekly := b
	given, lost := c.keep(&weekly, today, today+weekDays)
	into.week[f] += given
	into.uses[f] += lost
	if a.away != nil {
		a.leave(c, into, f, today, b)
	}
	return nil
}

// leave adds what days away ask of a tract.
func (a *asking) leave(c *course, into *tally, f, today int, b water.Balance) {
	leave, back := c.at(a.away.Leave), c.at(a.away.Back)
	c.keep(&b, today, leave)
	if leave >= len(c.given) {
		return
	}
	if c.stands[leave].Basal > 0 {
		into.before[f] += b.MissingMM * c.areaM2[leave]
		c.day(&b, leave, b.MissingMM)
	} else {
		c.day(&b, leave, 0)
	}
	into.failsAway[f] = sooner(into.failsAway[f], c.date(c.alone(b, leave+1, back)))
	helped := b
	given, _ := c.keep(&helped, leave+1, back)
	into.helper[f] += given
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
