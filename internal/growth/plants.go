package growth

import "garner/internal/sun"

// Plants is the state of one planting, per m2 of the ground it was given. The
// zero value with Begin called is a planting on its first day.
type Plants struct {
	Stage       Stage
	End         End
	Emergence   float64 // 0 in the ground to 1 through
	Development float64 // 0 through to 1 first use
	Leaf        float64 // leaf area index
	Organ       float64 // dry matter of the picked organ [g/m2]
	Alive       float64 // share of the stand that lives, 0-1
	Harden      float64 // 0 tender growth to 1 fully hardened
	Chill       float64 // chill days gathered
	Seeding     float64 // thermal time towards running to seed [C d]
	Standing    float64 // days at best warmth since ready
	Days        int     // days since it went into the ground
	Age         int     // days since through, or planted out

	good     End     // how it ends when it has served
	bestDays float64 // days at best warmth and light to first use, with luck
	luck     float64 // weight factor of this future
	stand    float64 // share of the stand that seedling losses leave
	cuts     int
	sinceCut float64
	season   seasonState
	bare     float64 // leaf area taken off from below, of the leaf there has been
	room     float64 // share of its greatest leaf and piece that neighbours leave it room for, 0-1

	rate rates
}

// rates are what one day adds, held until all plantings of the bed have theirs.
type rates struct {
	warmth      float64 // mean temperature response of the day
	emergence   float64
	development float64
	leaf        float64
	organ       float64
	chill       float64
	seeding     float64
	harden      float64
	lost        float64 // share of the living killed by the night
	yielded     float64 // dry matter picked ripe today [g/m2]
}

// Begin puts the planting into the ground.
func Begin(p *Parameters, d Draw) Plants {
	s := Plants{Stage: Germinating, Alive: 1, luck: d.Yield, stand: 1 - d.Loss, room: 1}
	s.bestDays, s.good = p.bestDays, p.GoodEnd()
	if p.published > 0 {
		s.bestDays *= max(0.3, 1+d.DaysLater/p.published)
	}
	switch p.Start {
	case FromPlant:
		s.Stage, s.Emergence, s.Leaf = Young, 1, p.leafStart
	case FromCrown:
		s.Stage, s.Emergence = Resting, 1
	}
	if p.pattern == perennial {
		s.Stage, s.Emergence = Resting, 1
	}
	return s
}

// Living tells whether the planting still changes.
func (s *Plants) Living() bool { return s.Stage != Over && s.Stage != Dead }

// Rates works out what the day will add. par is the radiation at the top of
// this planting's canopy [MJ/m2], which neighbours may have dimmed; water is the
// share of growth that soil water allows, 0-1.
func (s *Plants) Rates(p *Parameters, a *Air, par, water float64) {
	switch {
	case p.pattern == perennial:
		s.rate = rates{warmth: max(0, a.MeanC-p.Use.BaseC)}
	case s.Stage == Germinating:
		s.rate = rates{emergence: emergenceRate(p.Use, a.SoilC)}
		if p.Start == FromSet && a.SoilC < p.Use.KillHardenedC {
			s.rate.lost = 1 // sets and tubers in frozen ground
		}
	case s.Living():
		s.grow(p, a, par, Intercepted(p.Use.Extinction, s.Leaf), water)
	}
}

// grow gives the rates of a planting that stands in leaf. par is the radiation
// at the top of its canopy [MJ/m2], and caught the share of it that it takes.
func (s *Plants) grow(p *Parameters, a *Air, par, caught, water float64) {
	u := p.Use
	r := rates{warmth: p.Response.OverDay(a)}
	light := a.Light
	if par < a.PARMJ {
		light = lightCurve.At(par / sun.PARShare)
	}
	if s.Development < 1 {
		r.development = s.developmentRate(p, a, r.warmth, light)
	}
	dry := u.RadiationUse * par * caught * assimilation(r.warmth) * water
	share := organShare(u, s.Development)
	r.organ = dry * share
	r.leaf = s.leafRate(p, light, r.warmth, dry, share)
	if p.needsChill {
		r.chill = chillRate(u, a.MeanC)
	}
	if u.BoltThermalCd > 0 {
		r.seeding = s.seedingRate(u, a)
	}
	r.harden = hardenRate(a.TMinC)
	if a.TMinC < coldCheckC(u) {
		r.lost = LostToCold(LethalC(u, s.Age, s.Harden), a.TMinC)
	}
	s.rate = r
}

// Integrate moves all states by the day's rates.
func (s *Plants) Integrate(p *Parameters) {
	if !s.Living() {
		return
	}
	s.Days++
	switch {
	case p.pattern == perennial:
		s.perennialDay(p)
	case s.Stage == Germinating:
		s.emerge(p)
	default:
		s.advance(p)
	}
}

func (s *Plants) emerge(p *Parameters) {
	if s.rate.lost > 0 {
		s.die(Killed)
		return
	}
	s.Emergence += s.rate.emergence
	if s.Emergence >= 1 {
		s.Stage, s.Leaf = Young, p.leafStart
		return
	}
	if p.Start == FromSeed && float64(s.Days) > p.Use.EmergeLimitDays {
		s.die(Killed) // seed rots; sets, cloves and tubers wait
	}
}

func (s *Plants) advance(p *Parameters) {
	r := &s.rate
	s.Age++
	if s.Stage == Young && s.Age > youngDays {
		s.Stage = Growing
	}
	s.Harden = min(1, max(0, s.Harden+r.harden))
	s.Alive *= 1 - r.lost
	s.Leaf = max(0, s.Leaf+r.leaf) * (1 - 0.5*r.lost)
	limit := p.organLimit()
	s.Organ = min(s.Organ+r.organ, max(limit*s.room, min(s.Organ, limit)))
	if s.Development >= p.Use.BoltJuvenile {
		s.Chill += r.chill
	}
	s.Seeding += r.seeding
	s.Development += r.development
	if s.Alive < leastStand {
		s.die(Killed)
		return
	}
	if p.Use.BoltThermalCd > 0 && s.Seeding >= p.Use.BoltThermalCd {
		s.finish(Bolted)
		return
	}
	s.ripen(p)
}

// leastStand is the share of the stand under which a grower calls it lost.
const leastStand = 0.25 // judgement

// die ends a planting that gave nothing more.
func (s *Plants) die(why End) {
	s.End = why
	if s.Stage == Ready {
		s.Stage = Over
		return
	}
	s.Stage = Dead
}

// finish ends a planting by its own doing: after it was ready it is simply over.
func (s *Plants) finish(why End) {
	if s.Stage == Ready {
		s.Stage = Over
		if s.End == Unfinished {
			s.End = s.good
		}
		return
	}
	s.die(why)
}

// Fail ends a planting that a rule of the season rules out.
func (s *Plants) Fail(why End) { s.Stage, s.End = Dead, why }

// Lose ends a planting that was lost as a whole.
func (s *Plants) Lose() { s.die(Lost) }

// FreshKgM2 returns the fresh weight that stands to be picked, with this
// future's luck and losses [kg/m2 of ground given].
func (s *Plants) FreshKgM2(p *Parameters) float64 {
	return s.Organ * p.freshPerG * s.luck * s.Alive * s.stand
}

// PieceG returns the fresh weight of one living plant's harvest [g].
func (s *Plants) PieceG(p *Parameters) float64 {
	return s.Organ * p.freshPerG * s.luck / p.plantsPerM * 1000
}

// Clear takes the planting off its ground: what was ready has been harvested,
// what was not comes to nothing.
func (s *Plants) Clear() {
	if s.Stage == Ready {
		s.finish(Harvested)
		return
	}
	if s.Stage == Resting {
		s.Stage = Over
		return
	}
	s.die(TooSmall)
}
