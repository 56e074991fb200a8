package frost

import (
	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/plan"
)

// SetOut is a tender planting that is to be set out or to come through.
type SetOut struct {
	Planting plan.Planting
	Use      *crop.Use
	On       cal.Date   // it is to go in
	Under    cover.Kind // over its bed on that day
	Frost    float64    // share of the futures in which it freezes outside after that day, before high summer
	Hurt     float64    // share in which it is hurt, under the covers that are planned
	FirstC   float64    // minimum under which the first of it are lost young [C]
}

// ahead are the tender plantings that are still to be planted on a bed.
func (b *bed) ahead(a *Seen) []SetOut {
	now := a.setting.Today
	summer := b.sky.highSummer(now)
	var out []SetOut
	for _, p := range b.plants {
		first := growth.FirstHurtC(lethalC(p.use, 0, 0))
		on := p.planting.Date
		if on <= now || on >= summer || int(on-now) >= a.nights || p.use.Pattern == crop.Perennial || first < frostC {
			continue
		}
		from, to := int(on-now), min(int(summer-now), a.nights)
		s := SetOut{Planting: p.planting, Use: p.use, On: on, Under: cover.At(b.spells, on), FirstC: first}
		for f := range a.futures {
			if b.freezes(from, to, f) {
				s.Frost += 1 / float64(a.futures)
			}
			if b.hurts([]*plant{p}, from, to, f) {
				s.Hurt += 1 / float64(a.futures)
			}
		}
		out = append(out, s)
	}
	return out
}

// freezes tells whether a night in a run of nights freezes outside.
func (b *bed) freezes(from, to, f int) bool {
	for i := from; i < to; i++ {
		if b.sky.minimum[f][i] <= frostC {
			return true
		}
	}
	return false
}
