package frost

import (
	"math"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/plan"
	"garner/internal/risk"
)

// Heat is a rule that says something on a bed in the days that are told one by one.
type Heat struct {
	Bed       string
	Under     cover.Kind
	Rule      *risk.Heat
	Plantings []plan.Planting // that it is about; none: all that stands there
	Days      []HeatDay
}

// HeatDay is a day on which it may be too hot.
type HeatDay struct {
	Date cal.Date
	C    Tens    // maximum under the cover: as it is opened, or shut, as the rule has it
	Odds float64 // share of the futures in which the rule speaks
}

// heat are the rules of the air that speak on a bed, and its sowings of seed that warm
// soil puts to sleep.
func (b *bed) heat(a *Seen) ([]Heat, []Sowing, error) {
	var out []Heat
	for i := range a.book.Heats {
		rule := &a.book.Heats[i]
		if rule.OfSoil() {
			continue
		}
		h, err := b.hot(rule, a)
		if err != nil {
			return nil, nil, err
		}
		if len(h.Days) > 0 {
			out = append(out, h)
		}
	}
	return out, b.sleepers(a), nil
}

// hot is what a rule of the air says on a bed.
func (b *bed) hot(rule *risk.Heat, a *Seen) (Heat, error) {
	now := a.setting.Today
	h := Heat{Bed: b.place.ID, Rule: rule, Under: cover.At(b.spells, now)}
	for i := range nightsTold {
		spell := b.spellAt(now + cal.Date(i))
		standing := b.stands(rule, spell.Kind, i, a)
		if len(standing) == 0 {
			continue
		}
		c, err := cover.Of(spell)
		if err != nil {
			return h, err
		}
		highs := make([]float64, a.futures)
		day := HeatDay{Date: now + cal.Date(i)}
		for f := range highs {
			highs[f] = b.sky.highest(c, rule, f, i)
			if rule.Fires(highs[f]) {
				day.Odds += 1 / float64(a.futures)
			}
		}
		if day.Odds < Least {
			continue
		}
		day.C = tensOf(highs)
		h.Days, h.Under = append(h.Days, day), spell.Kind
		if len(rule.Crops) > 0 {
			h.Plantings = joined(h.Plantings, standing)
		}
	}
	return h, nil
}

// stands are the plantings on a day that a rule is about: one of crops is about those that
// set fruit then.
func (b *bed) stands(rule *risk.Heat, kind cover.Kind, day int, a *Seen) []plan.Planting {
	var out []plan.Planting
	for _, p := range b.plants {
		n := p.there[day]
		if len(rule.Crops) > 0 {
			n = p.sets[day]
		}
		if rule.For(p.planting.Crop, kind) && n > a.futures/2 {
			out = append(out, p.planting)
		}
	}
	return out
}

// highest is the maximum under a cover on a day, shut where the rule looks at that [C].
func (s *sky) highest(c *cover.Cover, rule *risk.Heat, f, day int) float64 {
	open, above := s.days[f][s.today+day], s.above[s.today+day]
	if rule.OfShut() {
		return c.Shut(open, above).TMaxC
	}
	return c.Under(open, above).TMaxC
}

// joined adds what is not in a list yet.
func joined(list, more []plan.Planting) []plan.Planting {
	for _, p := range more {
		known := false
		for i := range list {
			known = known || list[i].ID == p.ID
		}
		if !known {
			list = append(list, p)
		}
	}
	return list
}

// Sowing is a sowing in the weeks ahead of seed that sleeps in warm soil.
type Sowing struct {
	Planting plan.Planting
	Rule     *risk.Heat
	C        Tens    // warmest of the soil at the seed in its first days [C]
	Odds     float64 // share of the futures in which it is warm enough to put seed to sleep
	Sure     float64 // share in which it is so warm that most sleep
}

const (
	sowingsAhead = 28 // days ahead for which sowings are looked at
	drinks       = 3  // days in which seed takes up water, and may fall asleep. judgement
	seedM        = 0.01
	// dampingM is the depth at which the daily wave of warmth is down to 37 %: 0.105 to
	// 0.14 m from amplitudes at 5 to 20 cm (Moene & van Dam 2014, fig. 2.18, bare soil,
	// Wageningen).
	dampingM = 0.11
)

// sleepers are the sowings whose seed may sleep.
func (b *bed) sleepers(a *Seen) []Sowing {
	var out []Sowing
	now := a.setting.Today
	for _, p := range b.plants {
		from := int(p.planting.Date - now)
		if from < 0 || from >= min(sowingsAhead, a.nights-drinks) || p.planting.Method != plan.Seed {
			continue
		}
		for i := range a.book.Heats {
			rule := &a.book.Heats[i]
			if !rule.OfSoil() || !rule.For(p.planting.Crop, cover.At(b.spells, p.planting.Date)) {
				continue
			}
			if s, err := b.sowing(p, rule, from, a); err == nil && s.Odds >= Least {
				out = append(out, s)
			}
		}
	}
	return out
}

func (b *bed) sowing(p *plant, rule *risk.Heat, from int, a *Seen) (Sowing, error) {
	s := Sowing{Planting: p.planting, Rule: rule}
	c, err := cover.Of(b.spellAt(p.planting.Date))
	if err != nil {
		return s, err
	}
	peaks := make([]float64, a.futures)
	for f := range peaks {
		peaks[f] = b.warmest(c, f, from, p.use.SowDepthM)
		if rule.Fires(peaks[f]) {
			s.Odds += 1 / float64(a.futures)
		}
		if rule.Degree(peaks[f]) >= 1 {
			s.Sure += 1 / float64(a.futures)
		}
	}
	s.C = tensOf(peaks)
	return s, nil
}

// warmest is the warmest of the soil at the seed in its first days: the mean of the day
// and on top of it half the swing of the air, damped down to the seed [C].
func (b *bed) warmest(c *cover.Cover, f, from int, depthM float64) float64 {
	if depthM <= 0 {
		depthM = seedM
	}
	peak := math.Inf(-1)
	for i := from; i < min(from+drinks, len(b.soilC[f])); i++ {
		day := c.Under(b.sky.days[f][b.sky.today+i], b.sky.above[b.sky.today+i])
		peak = max(peak, b.soilC[f][i]+(day.TMaxC-day.TMinC)/2*math.Exp(-depthM/dampingM))
	}
	return peak
}
