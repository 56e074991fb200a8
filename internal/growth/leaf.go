package growth

import "garner/internal/crop"

// assimilation returns how far the temperature of the day lets light be turned
// into dry matter, from the response of development. Light conversion is less
// sensitive to cold than development: it is full from half the response up.
//
// judgement: after the shape of assimilation against temperature in WOFOST crop
// files, where cool-season crops reach two thirds at 10 C.
func assimilation(warmth float64) float64 { return min(1, 2*warmth) }

// leafFraction is the share of new dry matter that leaves take before the
// picked organ begins.
const leafFraction = 0.6 // judgement; SWAT and WOFOST crops start at 0.5-0.65

// organRamp is the span of development over which the picked organ comes to its
// full share of new dry matter.
const organRamp = 0.3 // judgement

// organShare returns the share of new dry matter that goes to the picked organ.
func organShare(u *crop.Use, development float64) float64 {
	if u.OrganStart <= 0 {
		return u.OrganShare
	}
	return u.OrganShare * min(1, max(0, (development-u.OrganStart)/organRamp))
}

// leafRate returns the day's change of leaf area index: exponential with
// warmth while leaves are few, then what the new dry matter pays for
// (Goudriaan & Monteith 1990, A mathematical function for crop growth based on
// light interception and leaf area expansion, Annals of Botany 66:695-701).
func (s *Plants) leafRate(p *Parameters, light, warmth, dry, organ float64) float64 {
	u := p.Use
	if s.Leaf+s.bare >= u.LeafMax*s.room {
		return 0
	}
	wanted := s.Leaf * u.LeafGrowth * warmth * min(1, light)
	fraction := leafFraction
	if !p.leafCrop {
		fraction *= 1 - organ
	}
	return min(wanted, dry*fraction*u.LeafPerGram)
}

// organLimit is the dry matter at which a standing piece stops swelling; what
// was taken as leaf first is lacking to the head.
func (p *Parameters) organLimit() float64 {
	if p.freshPerG <= 0 {
		return 0
	}
	limit := swelling * p.fullKgM2 / p.freshPerG
	if p.pattern == leafThenHead {
		limit *= 1 - p.Use.LeafShare
	}
	return limit
}
