package scoreboard

import (
	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/num"
	"garner/internal/outlook"
	"garner/internal/season"
)

// pair is two sowings on the same ground, the second beneath or between the
// first.
type pair struct {
	upper, lower sowing
	meet         float64
	light        float64
	strip        cal.MonthDay // day the upper's lower leaves come off; none: they stay
}

// pairCustoms are the measures of practice.csv that are about two crops on the
// same ground.
func (m *maker) pairCustoms() map[string]custom {
	stalls := func(light float64) func(*garden, *crop.Use) (Span, error) {
		return func(_ *garden, u *crop.Use) (Span, error) { return m.stalls(u, light) }
	}
	return map[string]custom{
		"keeps over squash":             {"scoreboard.practice_over_squash", m.cornKeeps},
		"keeps under sweetcorn":         {"scoreboard.practice_under_corn", m.squashKeeps},
		"with squash as beds apart":     {"scoreboard.practice_beds_apart", m.cornAndSquash},
		"gains by early october":        {"scoreboard.practice_strip_early", m.strippedGain},
		"of it by mid-november":         {"scoreboard.practice_strip_late", m.lateGain},
		"stalls beneath brassica":       {"scoreboard.practice_beneath", stalls(1)},
		"stalls beneath brassica, tree": {"scoreboard.practice_beneath_tree", stalls(0.5)},
		"out before leaves meet":        {"scoreboard.practice_out_before", func(_ *garden, u *crop.Use) (Span, error) { return m.outBeforeLeavesMeet(u) }},
	}
}

// stripped is the share of the leaf that comes off with the lower leaves.
const stripped = 0.5

// cleared is the day of the next year by which both are off the ground.
var cleared = cal.MonthDay{Month: 5, Day: 10}

// together is how a pair fared in one year, and how each would have alone.
type together struct {
	upper, lower, upperAlone, lowerAlone season.Outcome
	date                                 cal.Date // 1 January of the year
}

// everyPair grows a pair in each year, together and apart.
func (g *garden) everyPair(p pair, watch func(planting int, date cal.Date, s *growth.Plants, l season.Light), each func(together)) error {
	b, err := g.bed(cover.Open, p.light)
	if err != nil {
		return err
	}
	for y := range gardenYears {
		year := gardenFirst.Year() + y
		bed := season.Bed{Plantings: []season.Planting{g.planting(p.upper, year), g.planting(p.lower, year)}}
		if p.strip.Month > 0 {
			bed.Plantings[0].Strips = []season.Strip{{On: p.strip.In(year), Share: stripped}}
		}
		draws := []growth.Draw{growth.Fair(p.upper.use), growth.Fair(p.lower.use)}
		apart := g.runner.Run(g.sky, b, &bed, draws)
		bed.Plantings[1].Shares, bed.Plantings[1].Beneath = 0, p.meet
		if watch != nil {
			g.runner.Watch = func(i, day int, s *growth.Plants, l season.Light) { watch(i, gardenFirst+cal.Date(day), s, l) }
		}
		both := g.runner.Run(g.sky, b, &bed, draws)
		g.runner.Watch = nil
		each(together{both[0], both[1], apart[0], apart[1], cal.Of(year, 1, 1)})
	}
	return nil
}

func (g *garden) planting(s sowing, year int) season.Planting {
	return season.Planting{Parameters: growth.Prepare(s.use, s.start, g.sky.Northern()), Date: s.on.In(year), AreaM2: 1,
		ClearBy: cleared.In(year + 1), Shares: -1, Soil: 1}
}

// givenKg is what a planting gives: all its pickings, and what stands on the day
// it is ready.
func givenKg(o season.Outcome) float64 {
	sum := 0.0
	for _, kg := range o.Flow {
		sum += float64(kg)
	}
	if len(o.Standing) > 0 {
		sum += float64(o.Standing[0])
	}
	return sum
}

// ofAlone is what two crops give together as shares of what each gives alone.
func (g *garden) ofAlone(p pair) (upper, lower float64, err error) {
	var both, alone [2]float64
	err = g.everyPair(p, nil, func(t together) {
		both[0] += givenKg(t.upper)
		both[1] += givenKg(t.lower)
		alone[0] += givenKg(t.upperAlone)
		alone[1] += givenKg(t.lowerAlone)
	})
	return both[0] / alone[0], both[1] / alone[1], err
}

// cornOverSquash grows the two from their dates in the book.
func (m *maker) cornOverSquash() (upper, lower float64, err error) {
	corn, squash := m.find("sweetcorn", "table"), m.find("winter-squash", "table")
	var p pair
	if p.upper, err = onReference(corn); err != nil {
		return 0, 0, err
	}
	if p.lower, err = onReference(squash); err != nil {
		return 0, 0, err
	}
	p.meet, p.light = outlook.UnderShare, 1
	return m.home.ofAlone(p)
}

// onReference is a raised plant set out on the date of the book.
func onReference(u *crop.Use) (sowing, error) {
	on, err := cal.ParseMonthDay(u.ReferenceDate)
	return planted(u, on), err
}

func planted(u *crop.Use, on cal.MonthDay) sowing {
	return sowing{u, growth.FromPlant, on, cover.Open, 1, 0}
}

// cornKeeps is the share of its yield that sweetcorn keeps over squash [%].
func (m *maker) cornKeeps(*garden, *crop.Use) (Span, error) {
	upper, _, err := m.cornOverSquash()
	return exactly(100 * upper), err
}

// squashKeeps is the share of its yield that squash keeps under sweetcorn [%].
func (m *maker) squashKeeps(*garden, *crop.Use) (Span, error) {
	_, lower, err := m.cornOverSquash()
	return exactly(100 * lower), err
}

// cornAndSquash is how many beds grown apart give as much as one with both.
func (m *maker) cornAndSquash(*garden, *crop.Use) (Span, error) {
	upper, lower, err := m.cornOverSquash()
	return exactly(upper + lower), err
}

// beneathSprouts is a crop sown in mid-August beneath winter sprouts.
func (m *maker) beneathSprouts(u *crop.Use) pair {
	sprouts := m.find("brussels-sprout", "winter")
	return pair{upper: planted(sprouts, cal.MonthDay{Month: 5, Day: 25}), meet: outlook.UnderShare, light: 1,
		lower: sowing{u, growth.FromSeed, cal.MonthDay{Month: 8, Day: 15}, cover.Open, 1, 0}}
}

// judgedOn is when an under-crop of the winter is looked at, in the year after.
var judgedOn = cal.MonthDay{Month: 1, Day: 1}

// leafOnDay is the leaf area of the lower crop on the day it is looked at, mean
// of the years.
func (m *maker) leafOnDay(p pair) (float64, error) {
	sum := 0.0
	err := m.home.everyPair(p, func(i int, date cal.Date, s *growth.Plants, _ season.Light) {
		if _, month, day := date.YMD(); i == 1 && month == judgedOn.Month && day == judgedOn.Day {
			sum += s.Leaf / gardenYears
		}
	}, func(together) {})
	return sum, err
}

// When lower leaves come off: early enough, and too late.
var (
	earlyStrip = cal.MonthDay{Month: 10, Day: 5}
	lateStrip  = cal.MonthDay{Month: 11, Day: 15}
)

// strippedGain is how much more leaf a crop beneath sprouts has at the turn of
// the year when their lower leaves come off early, than when they stay [%].
func (m *maker) strippedGain(_ *garden, u *crop.Use) (Span, error) {
	kept, early, _, err := m.stripping(u)
	return exactly(100 * (early/kept - 1)), err
}

// lateGain is how much of that is still to be had when they come off late [%].
func (m *maker) lateGain(_ *garden, u *crop.Use) (Span, error) {
	kept, early, late, err := m.stripping(u)
	return exactly(100 * (late - kept) / (early - kept)), err
}

func (m *maker) stripping(u *crop.Use) (kept, early, late float64, err error) {
	p := m.beneathSprouts(u)
	if kept, err = m.leafOnDay(p); err != nil {
		return 0, 0, 0, err
	}
	p.strip = earlyStrip
	if early, err = m.leafOnDay(p); err != nil {
		return 0, 0, 0, err
	}
	p.strip = lateStrip
	late, err = m.leafOnDay(p)
	return kept, early, late, err
}

// stalls is the share of years in which a low crop beneath sprouts, in half of
// the light, is not ready by May [%].
func (m *maker) stalls(u *crop.Use, light float64) (Span, error) {
	p := m.beneathSprouts(u)
	p.light = light
	n := 0
	err := m.home.everyPair(p, nil, func(t together) {
		if t.lower.Ready < 0 {
			n++
		}
	})
	return exactly(100 * float64(n) / gardenYears), err
}

// outBeforeLeavesMeet is how long before the leaves of young sprouts meet a salad
// between them is ready [d].
func (m *maker) outBeforeLeavesMeet(u *crop.Use) (Span, error) {
	sprouts := m.find("brussels-sprout", "winter")
	on := cal.MonthDay{Month: 5, Day: 25}
	met := cal.None
	var early []float64
	err := m.home.everyPair(pair{upper: planted(sprouts, on), lower: planted(u, on), meet: outlook.BetweenShare, light: 1},
		func(i int, date cal.Date, s *growth.Plants, _ season.Light) {
			if i == 0 && !met.IsSet() && s.Leaf >= leavesMeet {
				met = date
			}
		}, func(t together) {
			if t.lower.Ready >= 0 && met.IsSet() {
				early = append(early, float64(met-gardenFirst)-float64(t.lower.Ready))
			}
			met = cal.None
		})
	if len(early) < gardenYears {
		return unknown(), err
	}
	return exactly(num.Quantiles(early, 0.5)[0]), err
}

// leavesMeet is the leaf area at which the leaves of neighbours touch.
const leavesMeet = 3 // judgement: two thirds of the light is caught before plants touch at 0.6 m
