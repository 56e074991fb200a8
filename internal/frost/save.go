package frost

import (
	"cmp"
	"slices"
	"strings"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/place"
	"garner/internal/protect"
)

// Save is a cover that makes a bed safer in a night.
type Save struct {
	Lay   cover.Kind // what is laid
	Under cover.Kind // the cover it is laid under; open: none
	LiftC float64    // by which the night is warmer with it, mean of the futures
	Odds  float64    // that something is hurt all the same
	Spell cover.Kind // the kind of spell it comes to
}

// Saves tells whether it brings the odds below those that are told as a risk.
func (s *Save) Saves() bool { return s.Odds < Least }

// leastLiftC is the lift for which nobody gets up [C].
const leastLiftC = 0.2

// way is a way of laying something over a bed.
type way struct {
	lay, under, spell cover.Kind
	cover             *cover.Cover
}

// laid are the kinds of cover that a household may lay for a night.
var laid = []cover.Kind{cover.Fleece, cover.Cloche, cover.LowTunnel, cover.ColdFrame}

// waysOver are the ways of laying more over a bed than lies there.
func waysOver(s cover.Spell) ([]way, error) {
	if s.Kind == cover.Open {
		var out []way
		for _, kind := range laid {
			c, err := cover.Lookup(kind)
			if err != nil {
				return nil, err
			}
			out = append(out, way{kind, cover.Open, kind, c})
		}
		return out, nil
	}
	outer, err := cover.Of(s)
	if err != nil {
		return nil, err
	}
	if inner, ok := outer.WithFleece(); ok {
		return []way{{cover.Fleece, s.Kind, cover.TunnelInner, inner}}, nil
	}
	return nil, nil
}

// protect finds, for the nights at risk, which of the covers that are owned make a bed
// safer, and shares out for tonight what there is: to the beds with the greatest odds
// first, and to each the surest.
func (a *Seen) protect(beds []Bed) error {
	spells := slices.Clone(a.setting.Holding.Covers)
	var tonight []*Bed
	for i := range beds {
		told := &beds[i]
		for k := range told.Nights {
			if told.Nights[k].Odds < Least {
				continue
			}
			var err error
			if told.Nights[k].Saves, err = a.saves(told, k, spells); err != nil {
				return err
			}
		}
		if told.Nights[0].Odds >= Least {
			tonight = append(tonight, told)
		}
	}
	slices.SortStableFunc(tonight, func(x, y *Bed) int { return cmp.Compare(y.Nights[0].Odds, x.Nights[0].Odds) })
	for _, told := range tonight {
		left, err := a.saves(told, 0, spells)
		if err != nil {
			return err
		}
		if len(left) == 0 {
			continue
		}
		told.Tonight = &left[0]
		spells = append(spells, trial(told, a.setting.Today, left[0].Spell))
	}
	return nil
}

// saves are the covers that make a bed safer in a night, out of what is free then.
func (a *Seen) saves(told *Bed, night int, spells []place.CoverSpell) ([]Save, error) {
	b := a.beds[told.Place.ID]
	evening := told.Nights[night].Evening
	ways, err := waysOver(b.spellAt(evening))
	if err != nil {
		return nil, err
	}
	var out []Save
	for _, w := range ways {
		free, err := a.free(told, evening, w.spell, spells)
		if err != nil || !free {
			if err != nil {
				return nil, err
			}
			continue
		}
		if s := b.with(&w, night, a); s.LiftC >= leastLiftC && s.Odds < told.Nights[night].Odds {
			out = append(out, s)
		}
	}
	slices.SortStableFunc(out, func(x, y Save) int { return cmp.Compare(x.Odds, y.Odds) })
	return out, nil
}

// with is what is left of a night's risk with something laid.
func (b *bed) with(w *way, night int, a *Seen) Save {
	s := Save{Lay: w.lay, Under: w.under, Spell: w.spell}
	hurt := 0
	for f := range a.futures {
		low := b.sky.under(w.cover, f, night)
		s.LiftC += (low - float64(b.under[night][f])) / float64(a.futures)
		if slices.ContainsFunc(b.plants, func(p *plant) bool { return p.hurt(low, night, f) }) {
			hurt++
		}
	}
	s.Odds = float64(hurt) / float64(a.futures)
	return s
}

// forTheNight begins the id of a spell of one night.
const forTheNight = "for the night, "

// trial is a spell of one night.
func trial(told *Bed, evening cal.Date, kind cover.Kind) place.CoverSpell {
	return place.CoverSpell{ID: forTheNight + told.Place.ID, Bed: told.Place.ID, Spell: cover.Spell{Kind: kind, On: evening, Off: evening + 1}}
}

// free tells whether the household owns enough of what a cover is laid with, that fits
// the bed and lies over no other on that evening.
func (a *Seen) free(told *Bed, evening cal.Date, kind cover.Kind, spells []place.CoverSpell) (bool, error) {
	h := a.setting.Holding
	gear, err := protect.Takes(kind)
	if err != nil || !slices.ContainsFunc(h.Gear, func(g place.Gear) bool { return g.Kind == gear }) {
		return false, err
	}
	t := trial(told, evening, kind)
	stock, err := protect.Count(h.Gear, append(slices.Clone(spells), t), h.Beds, evening)
	if err != nil {
		return false, err
	}
	return !slices.ContainsFunc(stock.Short, func(s protect.Shortage) bool { return strings.HasPrefix(s.Spell, forTheNight) }), nil
}
