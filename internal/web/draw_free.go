package web

import (
	"math"

	"garner/internal/holding"
	"garner/internal/place"
)

// How a free spot is looked for: in steps, and no further than this from the
// plan's middle [m].
const (
	spotStepM = 0.5
	spotFarM  = 25.0
	besideM   = 0.3 // room left round it
)

// freeSpot is where on a site's plan a thing of a size lies clear of all others,
// as near the middle as can be; the middle where there is no such spot.
func freeSpot(h *holding.Holding, siteID string, length, width float64) place.Spot {
	var site place.Site
	for _, s := range h.Sites {
		if s.ID == siteID {
			site = s
		}
	}
	var taken [][]place.Point
	for i := range h.Beds {
		if b := &h.Beds[i]; b.Site == siteID && b.At.IsSet() {
			taken = append(taken, b.Corners())
		}
	}
	for i := range h.Features {
		if f := &h.Features[i]; f.Site == siteID && !f.Tree() {
			taken = append(taken, f.Corners())
		}
	}
	half := func(m float64) float64 { return math.Round(m/2/spotStepM) * spotStepM }
	middle := place.Spot{XM: half(site.PlanWidthM), YM: half(site.PlanDepthM)}
	best, near := middle, math.Inf(1)
	for x := -spotFarM; x <= spotFarM; x += spotStepM {
		for y := -spotFarM; y <= spotFarM; y += spotStepM {
			at := place.Spot{XM: middle.XM + x, YM: middle.YM + y}
			if far := math.Hypot(x, y); far < near && inside(site, at, length, width) && isClear(taken, at, length, width) {
				best, near = at, far
			}
		}
	}
	return best
}

func inside(s place.Site, at place.Spot, length, width float64) bool {
	return at.XM >= length/2 && at.YM >= width/2 && at.XM+length/2 <= s.PlanWidthM && at.YM+width/2 <= s.PlanDepthM
}

func isClear(taken [][]place.Point, at place.Spot, length, width float64) bool {
	own := place.Bed{LengthM: length + 2*besideM, WidthM: width + 2*besideM, At: at}.Corners()
	for _, corners := range taken {
		if place.OverlapM2(own, corners) > 0 {
			return false
		}
	}
	return true
}
