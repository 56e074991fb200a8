package frost

import (
	"cmp"
	"slices"
	"strings"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/holding"
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

// Way is a way of laying something more over a bed.
type Way struct {
	Lay   cover.Kind // what is laid
	Under cover.Kind // the cover it is laid under; open: none
	Spell cover.Kind // the kind of spell it comes to
	Cover *cover.Cover
}

// laid are the kinds of cover that a household may lay for a night.
var laid = []cover.Kind{cover.Fleece, cover.Cloche, cover.LowTunnel, cover.ColdFrame}

// Ways are the ways of laying more over a bed than lies there.
func Ways(s cover.Spell) ([]Way, error) {
	if s.Kind == cover.Open {
		var out []Way
		for _, kind := range laid {
			c, err := cover.Lookup(kind)
			if err != nil {
				return nil, err
			}
			out = append(out, Way{kind, cover.Open, kind, c})
		}
		return out, nil
	}
	outer, err := cover.Of(s)
	if err != nil {
		return nil, err
	}
	if inner, ok := outer.WithFleece(); ok {
		return []Way{{cover.Fleece, s.Kind, cover.TunnelInner, inner}}, nil
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
		spells = append(spells, Trial(told.Place.ID, a.setting.Today, left[0].Spell))
	}
	return nil
}

// saves are the covers that make a bed safer in a night, out of what is free then.
func (a *Seen) saves(told *Bed, night int, spells []place.CoverSpell) ([]Save, error) {
	b := a.beds[told.Place.ID]
	evening := told.Nights[night].Evening
	ways, err := Ways(b.spellAt(evening))
	if err != nil {
		return nil, err
	}
	var out []Save
	for _, w := range ways {
		free, err := Free(a.setting.Holding, told.Place.ID, evening, w.Spell, spells)
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
func (b *bed) with(w *Way, night int, a *Seen) Save {
	s := Save{Lay: w.Lay, Under: w.Under, Spell: w.Spell}
	hurt := 0
	for f := range a.futures {
		low := b.sky.under(w.Cover, f, night)
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

// Trial is a spell of one night over a bed.
func Trial(bed string, evening cal.Date, kind cover.Kind) place.CoverSpell {
	return place.CoverSpell{ID: forTheNight + bed, Bed: bed, Spell: cover.Spell{Kind: kind, On: evening, Off: evening + 1}}
}

// Free tells whether a household owns enough of what a kind of cover is laid with, that
// fits the bed and lies over no other on an evening, given all spells that are laid.
func Free(h *holding.Holding, bed string, evening cal.Date, kind cover.Kind, spells []place.CoverSpell) (bool, error) {
	gear, err := protect.Takes(kind)
	if err != nil || !slices.ContainsFunc(h.Gear, func(g place.Gear) bool { return g.Kind == gear }) {
		return false, err
	}
	stock, err := protect.Count(h.Gear, append(slices.Clone(spells), Trial(bed, evening, kind)), h.Beds, evening)
	if err != nil {
		return false, err
	}
	return !slices.ContainsFunc(stock.Short, func(s protect.Shortage) bool { return strings.HasPrefix(s.Spell, forTheNight) }), nil
}
