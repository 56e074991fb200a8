package frost

import (
	"cmp"
	"slices"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/outlook"
	"garner/internal/place"
)

// Bed is what stands on a bed tonight or in the nights told one by one.
type Bed struct {
	Place   place.Bed
	Nights  []BedNight
	Plants  []Plant
	Weeks   []BedWeek // those in which something is at risk
	Tonight *Save     // what is to be laid tonight of what the household owns; nil: nothing is needed, or nothing helps that is still free
}

// BedNight is a night under the cover that lies over the bed.
type BedNight struct {
	Evening cal.Date
	Under   cover.Kind
	C       Tens    // its minimum there
	LiftC   float64 // by which it is warmer than in the open, in the mean
	Odds    float64 // share of the futures in which something is hurt
	Saves   []Save  // covers that are owned, fit and are free, and make it safer; the best first
}

// BedWeek is a run of nights in which something is at risk.
type BedWeek struct {
	First, Last cal.Date
	Odds        float64  // share of the futures in which something is hurt
	Plantings   []string // ids of those at risk
}

// bed gathers one bed over all futures.
type bed struct {
	place  place.Bed
	sky    *sky
	spells []cover.Spell
	under  [][]float32 // minimum under the cover, by night and future
	soilC  [][]float64 // at sowing depth, mean of the day, by future and day
	plants []*plant
	byID   map[string]*plant
}

// see adds a tract under one future to its bed.
func (a *Seen) see(t *outlook.Tract) error {
	b := a.beds[t.Bed.ID]
	if b == nil {
		b = &bed{place: t.Bed, sky: a.skies[t.Bed.Site], spells: slices.Clone(t.Spells), byID: map[string]*plant{}}
		for i := range a.nights {
			night, err := b.minima(a.setting.Today, i, a.futures)
			if err != nil {
				return err
			}
			b.under = append(b.under, night)
		}
		a.beds[t.Bed.ID] = b
	}
	for i := range t.Growing {
		g := &t.Growing[i]
		p := b.byID[g.Planting.ID]
		if p == nil {
			p = newPlant(g, a)
			b.byID[g.Planting.ID] = p
			b.plants = append(b.plants, p)
		}
		p.see(g, t.Future, a.nights)
	}
	if len(b.soilC) == t.Future { // once for all tracts of the bed
		b.soilC = append(b.soilC, slices.Clone(t.SoilC))
	}
	return nil
}

// minima are the minima of a night under the cover that is planned for the bed, by future.
func (b *bed) minima(now cal.Date, night, futures int) ([]float32, error) {
	c, err := cover.Of(b.spellAt(now + cal.Date(night)))
	if err != nil {
		return nil, err
	}
	out := make([]float32, futures)
	for f := range out {
		out[f] = float32(b.sky.under(c, f, night))
	}
	return out, nil
}

// spellAt is the spell over the bed on an evening, the open where there is none.
func (b *bed) spellAt(d cal.Date) cover.Spell {
	kind := cover.At(b.spells, d)
	for _, s := range b.spells {
		if s.Kind == kind && d >= s.On && (s.Off == cal.None || d < s.Off) {
			return s
		}
	}
	return cover.Spell{Kind: kind}
}

// inOrder are the beds along the walking route.
func (a *Seen) inOrder() []*bed {
	site := map[string]int{}
	for i := range a.setting.Holding.Sites {
		site[a.setting.Holding.Sites[i].ID] = i
	}
	var out []*bed
	for _, b := range a.beds {
		out = append(out, b)
	}
	slices.SortFunc(out, func(x, y *bed) int {
		return cmp.Or(cmp.Compare(site[x.place.Site], site[y.place.Site]), cmp.Compare(x.place.Order, y.place.Order), cmp.Compare(x.place.ID, y.place.ID))
	})
	return out
}

// told is what there is to say of a bed.
func (b *bed) told(a *Seen) (Bed, error) {
	out := Bed{Place: b.place}
	var shown []*plant
	for _, p := range b.plants {
		if t, there := p.tell(b, a); there {
			out.Plants, shown = append(out.Plants, t), append(shown, p)
		}
	}
	for i := range nightsTold {
		evening := a.setting.Today + cal.Date(i)
		n := BedNight{Evening: evening, Under: cover.At(b.spells, evening)}
		lows := make([]float64, a.futures)
		for f := range lows {
			lows[f] = float64(b.under[i][f])
			n.LiftC += (lows[f] - b.sky.minimum[f][i]) / float64(a.futures)
		}
		n.C, n.Odds = tensOf(lows), b.odds(shown, i, i+1, a)
		out.Nights = append(out.Nights, n)
	}
	for from := nightsTold; from < a.nights; from += 7 {
		out.Weeks = b.week(out.Weeks, from, min(from+7, a.nights), a)
	}
	return out, nil
}

// week adds a run of nights, when something is at risk in it.
func (b *bed) week(weeks []BedWeek, from, to int, a *Seen) []BedWeek {
	w := BedWeek{First: a.setting.Today + cal.Date(from), Last: a.setting.Today + cal.Date(to) - 1, Odds: b.odds(b.plants, from, to, a)}
	if w.Odds < Least {
		return weeks
	}
	likeliest, top := "", 0.0
	for _, p := range b.plants {
		odds := b.odds([]*plant{p}, from, to, a)
		if odds >= Least {
			w.Plantings = append(w.Plantings, p.planting.ID)
		}
		if odds > top {
			likeliest, top = p.planting.ID, odds
		}
	}
	if len(w.Plantings) == 0 && likeliest != "" { // only together are they at risk
		w.Plantings = []string{likeliest}
	}
	return append(weeks, w)
}

// odds are the share of the futures in which one of some plantings is hurt in a run of
// nights.
func (b *bed) odds(plants []*plant, from, to int, a *Seen) float64 {
	n := 0
	for f := range a.futures {
		if b.hurts(plants, from, to, f) {
			n++
		}
	}
	return float64(n) / float64(a.futures)
}

func (b *bed) hurts(plants []*plant, from, to, f int) bool {
	for i := from; i < to; i++ {
		for _, p := range plants {
			if p.hurt(float64(b.under[i][f]), i, f) {
				return true
			}
		}
	}
	return false
}
