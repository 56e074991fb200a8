package growth

import (
	"math"

	"garner/internal/crop"
	"garner/internal/num"
)

// Start is how a planting begins, as far as growth is concerned.
type Start uint8

// The starts.
const (
	FromSeed  Start = iota // emerges from seed
	FromPlant              // stands as a raised plant or rooted cutting
	FromSet                // emerges from a set, clove or tuber
	FromCrown              // a dormant perennial
)

// StartOf gives the start of a method of planting (plan.Method's values).
func StartOf(method string) Start {
	switch method {
	case "plant", "cutting":
		return FromPlant
	case "set":
		return FromSet
	case "crown":
		return FromCrown
	}
	return FromSeed
}

// Draw is one future's luck with one planting: what weather does not explain.
type Draw struct {
	Yield     float64 // weight times this
	DaysLater float64 // days later to maturity; negative earlier
	Loss      float64 // share of the stand lost before picking, 0-1

	// How far off what was told of the planting turns out to be.
	Shift   int     // it went in this many days after the day told; negative before it
	AreaOff float64 // its ground is larger than told by this share of it; negative smaller
}

// Fair is the draw without luck: full weight, no delay, the mean stand loss.
func Fair(u *crop.Use) Draw { return Draw{Yield: 1, Loss: u.StandLoss} }

// Drawn takes the luck of one planting in one future: half of the variance of
// weight from the stream it shares with its crop that year, the rest and all of
// the dates and the stand from its own. Weight is log-normal with the use's
// coefficient of variation, dates are normal, held within 2.5 standard
// deviations, and the stand loss has the use's mean.
//
// judgement: the spreads stand in the crop book, without a source.
func Drawn(u *crop.Use, shared, own *num.Stream) Draw {
	z := math.Sqrt(0.5) * (shared.Normal() + own.Normal())
	return Draw{
		Yield:     logNormal(z, u.WeightSpread),
		DaysLater: u.DateSpread * num.Clamp(own.Normal(), -2.5, 2.5),
		Loss:      lossDraw(u.StandLoss, own.Float64()),
	}
}

// Parameters is a use of a crop made ready for the day loop.
type Parameters struct {
	Use      *crop.Use
	Start    Start
	Response *Response

	published  float64 // published days to first use for this start [d]
	bestDays   float64 // days at best warmth and light to first use [d]
	plantsPerM float64 // plants per m2 set out
	leafStart  float64 // leaf area index at emergence or planting out
	needsChill bool
	pattern    pattern
	leafCrop   bool    // the picked organ is the leaf itself
	freshPerG  float64 // kg fresh picked weight per g dry matter of the organ, without luck
	usableKgM2 float64 // least usable fresh weight [kg/m2 set out]
	fullKgM2   float64 // full fresh weight [kg/m2 set out]
	fullLeaf   float64 // greatest leaf area index of a full stand of its kind
	tallLeaf   float64 // leaf area index at which it has its full height
	season     perennialSeason
}

// squareCentimetre in m2.
const squareCentimetre = 1e-4

// swelling is how far beyond its full size a standing piece may grow.
const swelling = 1.25 // judgement: roots and heads left standing go on, but not for ever

// Prepare makes a use of a crop ready for a start.
func Prepare(u *crop.Use, start Start, northern bool) *Parameters {
	p := &Parameters{Use: u, Start: start, Response: NewResponse(u.BaseC, u.OptimumC, u.CeilingC)}
	p.published = publishedDays(u, start)
	p.bestDays = u.DaysFactor * p.published
	p.plantsPerM = 1 / (u.InRowM * u.BetweenRowM)
	leaf := u.LeafStartCM2
	if start == FromPlant {
		leaf = u.LeafPlantCM2
	}
	p.leafStart = leaf * squareCentimetre * p.plantsPerM
	p.needsChill = u.GateChill > 0 || u.BoltChill > 0
	p.pattern = patternOf(u.Pattern)
	p.leafCrop = u.OrganStart <= 0
	if u.Feeds() {
		p.freshPerG = u.YieldScale / u.DryMatter / 1000
	}
	p.usableKgM2 = u.UsableG / 1000 * p.plantsPerM
	p.fullKgM2 = u.PieceG / 1000 * p.plantsPerM
	p.fullLeaf = u.LeafMax * math.Pow(1-u.Sparse, roomPower-1)
	p.tallLeaf = p.fullLeaf * (1 - u.Sparse)
	p.season = newPerennialSeason(u, northern)
	return p
}

// PublishedDays returns the published days from the start to first use [d].
func (p *Parameters) PublishedDays() float64 { return p.published }

// PlantsPerM2 returns the plants set out per m2.
func (p *Parameters) PlantsPerM2() float64 { return p.plantsPerM }

func publishedDays(u *crop.Use, start Start) float64 {
	first, rest := u.DaysSeed, []float64{u.DaysPlant, u.DaysSet}
	switch start {
	case FromPlant:
		first, rest = u.DaysPlant, []float64{u.DaysSeed, u.DaysSet}
	case FromSet, FromCrown:
		first, rest = u.DaysSet, []float64{u.DaysPlant, u.DaysSeed}
	}
	if first > 0 {
		return first
	}
	for _, d := range rest {
		if d > 0 {
			return d
		}
	}
	return 0
}

// pattern is a harvest pattern as the day loop wants it.
type pattern uint8

const (
	pulling pattern = iota
	picking
	cutting
	leafThenHead
	perennial
	covering
)

func patternOf(name crop.Pattern) pattern {
	switch name {
	case crop.Picking:
		return picking
	case crop.Cut:
		return cutting
	case crop.LeafThenHead:
		return leafThenHead
	case crop.Perennial:
		return perennial
	case crop.GroundCover:
		return covering
	}
	return pulling
}

// Flows tells whether the planting gives its food in daily pickings (besides
// what may stand).
func (p *Parameters) Flows() bool { return p.pattern != pulling && p.pattern != covering }

// Stands tells whether the planting waits in the ground to be pulled.
func (p *Parameters) Stands() bool { return p.pattern == pulling || p.pattern == leafThenHead }

// GoodEnd is how the planting ends when it has served: harvested, or, of a green
// manure, having covered its ground.
func (p *Parameters) GoodEnd() End {
	if p.pattern == covering {
		return Covered
	}
	return Harvested
}

// Perennial tells whether the planting bears year after year.
func (p *Parameters) Perennial() bool { return p.pattern == perennial }
