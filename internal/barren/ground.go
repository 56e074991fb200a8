package barren

import (
	"fmt"

	"garner/internal/climate"
	"garner/internal/cover"
	"garner/internal/draft"
	"garner/internal/holding"
	"garner/internal/num"
	"garner/internal/outlook"
	"garner/internal/plan"
)

// variant is how the ground could be otherwise.
type variant struct {
	bright  bool    // nothing takes light from any bed
	warmerC float64 // than it is, all year
}

// ground is the holding's beds with nothing in them.
type ground struct {
	scales *outlook.Scales
	kinds  []string                 // one bed of each kind that are alike
	spells map[string][]cover.Spell // covers that the gear in stock reaches to, by these beds
}

// kind is what makes beds alike: all that grows in them, and the covers within reach.
type kind struct {
	alike  num.Digest
	covers string
}

// ground makes the beds ready, each variant once.
func (f *finder) ground(v variant) (*ground, error) {
	if known := f.grounds[v]; known != nil {
		return known, nil
	}
	s := f.setting
	s.Holding, s.Weeks, s.Years = bare(s.Holding, v), weeks, futures
	g := &ground{spells: map[string][]cover.Spell{}}
	var err error
	if g.scales, err = outlook.NewScales(s, outlook.NewMemory()); err != nil {
		return nil, err
	}
	seen := map[kind]bool{}
	for i := range s.Holding.Beds {
		id := s.Holding.Beds[i].ID
		alike, err := g.scales.Alike(id)
		if err != nil {
			return nil, err
		}
		var spells []cover.Spell
		if v == (variant{}) { // what would have to be otherwise is asked of the open
			if spells, err = draft.Coverable(s, id); err != nil {
				return nil, err
			}
		}
		key := kind{alike, fmt.Sprint(spells)}
		if !seen[key] {
			seen[key] = true
			g.kinds, g.spells[id] = append(g.kinds, id), spells
		}
	}
	f.grounds[v] = g
	return g, nil
}

// bare is a holding with nothing in the ground and nothing wanted, as a variant has it.
func bare(h *holding.Holding, v variant) *holding.Holding {
	own := *h
	own.Plans, own.Plantings, own.Changes = []plan.Plan{{ID: h.Plan}}, nil, nil
	own.Wants, own.GapsLeft, own.Groups, own.Members, own.Visits, own.Batches, own.Records = nil, nil, nil, nil, nil, nil, nil
	if v.bright {
		own.Features = nil
		own.Beds = append(own.Beds[:0:0], h.Beds...)
		for i := range own.Beds {
			own.Beds[i].Light = 1
		}
	}
	if v.warmerC != 0 {
		own.Weather = append(own.Weather[:0:0], h.Weather...)
		for i := range own.Weather {
			warm(&own.Weather[i], v.warmerC)
		}
		own.Skies = nil // readings at the site are not of the warmer place
	}
	return &own
}

// warm makes all that is known of the weather warmer [C].
func warm(w *holding.WeatherSource, byC float64) {
	if w.Normals != nil {
		own := *w.Normals
		for i := range own {
			own[i].TMinC, own[i].TMaxC = own[i].TMinC+byC, own[i].TMaxC+byC
		}
		w.Normals = &own
	}
	w.Record, w.Forecast = warmRecord(w.Record, byC), warmRecord(w.Forecast, byC)
}

func warmRecord(r *climate.Record, byC float64) *climate.Record {
	if r == nil {
		return nil
	}
	own := *r
	own.Days = append(own.Days[:0:0], r.Days...)
	for i := range own.Days {
		for _, c := range []*climate.Maybe{&own.Days[i].TMinC, &own.Days[i].TMaxC, &own.Days[i].DewC} {
			c.Value += byC
		}
	}
	return &own
}
