package risk

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/cover"
	"garner/internal/crop"
)

const (
	// youngDays is how long plants count as young in the crop book.
	youngDays = 25
	// damageAboveC is how far above the temperature that kills half a stand the
	// first plants are lost, as growth has it.
	damageAboveC = 1.0
)

// Stand is what stands in a bed when a frost may come.
type Stand struct {
	Use    *crop.Use
	AgeD   int     // days since it came up or was planted
	Harden float64 // how far it is hardened, 0-1
	Spells []cover.Spell
}

// DamageC is the night under which plants are lost [C].
func (s *Stand) DamageC() float64 {
	kill := s.Use.KillC
	if s.AgeD < youngDays {
		kill = s.Use.KillYoungC
	}
	return kill + s.Harden*(s.Use.KillHardenedC-s.Use.KillC) + damageAboveC
}

// Tender tells whether an air frost hurts a stand.
func (s *Stand) Tender() bool { return s.DamageC() >= climate.FrostC }

// Alarm is a night that may hurt a stand.
type Alarm struct {
	Date  cal.Date
	Odds  float64     // share of the futures that hurt it under the cover it has
	Under cover.Kind  // that cover
	Saves []CoverOdds // covers that would bring the odds to the least or below, the best first
}

// CoverOdds is what is left of the odds under a cover.
type CoverOdds struct {
	Kind cover.Kind
	Odds float64
}

// Alarms are the nights whose odds are above the least, with the covers out of those
// that are at hand that would save the stand. A cover that is there already can be
// doubled only by fleece in a tunnel.
func (a *Ahead) Alarms(s Stand, hand []cover.Kind, least float64) ([]Alarm, error) {
	damage := s.DamageC()
	hurt := func(in *climate.Day) bool { return in.TMinC < damage }
	var out []Alarm
	for day := range a.AboveMJ {
		date := a.First + cal.Date(day)
		odds, err := a.share(s.Spells, day, hurt)
		if err != nil {
			return nil, err
		}
		if odds <= least {
			continue
		}
		alarm := Alarm{Date: date, Odds: odds, Under: cover.At(s.Spells, date)}
		for _, kind := range hand {
			with, ok := added(alarm.Under, kind)
			if !ok {
				continue
			}
			left, err := a.share([]cover.Spell{{Kind: with, On: date, Off: cal.None}}, day, hurt)
			if err != nil {
				return nil, err
			}
			if left <= least {
				alarm.Saves = append(alarm.Saves, CoverOdds{with, left})
			}
		}
		slices.SortStableFunc(alarm.Saves, func(x, y CoverOdds) int {
			switch {
			case x.Odds < y.Odds:
				return -1
			case x.Odds > y.Odds:
				return 1
			}
			return 0
		})
		out = append(out, alarm)
	}
	return out, nil
}

// added is the cover that comes of laying one over what is there.
func added(under, kind cover.Kind) (cover.Kind, bool) {
	switch {
	case under == cover.Tunnel && kind == cover.Fleece:
		return cover.TunnelInner, true
	case under == cover.Open && kind != cover.Open:
		return kind, true
	}
	return "", false
}
