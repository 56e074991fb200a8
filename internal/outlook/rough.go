package outlook

import (
	"garner/internal/num"
	"garner/internal/plan"
)

// roughness is how far what was told of a planting may be off.
type roughness struct {
	days     int     // half-width of what is known of its date [d]
	area     float64 // share its ground may be off either way, 0-0.9
	earliest int     // the shift that would bring it to the first day of weather [d], 0 or less
}

// roughnessOf reads what is told roughly. A date that was recorded is exact.
func roughnessOf(p *plan.Planting, h happened) roughness {
	r := roughness{days: p.DateWithinD, area: p.AreaWithin}
	if h.planted.IsSet() {
		r.days = 0
	}
	return r
}

// draw takes how far off a planting is in one future: every day within the
// half-width and every share of the ground is as likely as another. Both are
// always drawn, so that telling one of them better leaves the other as it was.
func (r roughness) draw(own *num.Stream) (shift int, areaOff float64) {
	shift = own.IntN(2*r.days+1) - r.days
	areaOff = r.area * (2*own.Float64() - 1)
	return max(shift, r.earliest), areaOff
}
