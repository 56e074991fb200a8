package desk

import (
	"math"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/place"
	"garner/internal/shade"
	"garner/internal/sun"
)

// ShadeResult is the light that each bed gets through the year, and what the air
// asks of it.
type ShadeResult struct {
	Beds  []BedLight `json:"beds"`
	Wrong fault.List `json:"-"` // what throws no shade as it is told; why no water is told
}

// BedLight is a bed's light by month, January first, as shares of the open
// sky's: what stands round it on the plan, times its own light_share. A bed that
// is not drawn has its light_share alone. Covers are not counted in it.
type BedLight struct {
	Bed   string      `json:"bed"`
	Light [12]float64 `json:"light"`
	Water *BedWater   `json:"water,omitempty"` // nothing where the weather does not tell
}

// Shade works out the light of all beds of a holding, and what the air asks of
// them.
func Shade(h *holding.Holding) (*ShadeResult, error) {
	r := Light(h)
	water, err := waterOf(h, outlook.NewMemory())
	faults, err := untold(err)
	if err != nil {
		return nil, err
	}
	r.Wrong = append(r.Wrong, faults...)
	for i := range r.Beds {
		r.Beds[i].Water = water[r.Beds[i].Bed]
	}
	return r, nil
}

// Light works out the light alone of all beds of a holding.
func Light(h *holding.Holding) *ShadeResult {
	r := &ShadeResult{Beds: []BedLight{}}
	lights := map[string][12]float64{}
	for _, site := range h.Sites {
		scene, wrong := shade.NewScene(site, h.Features)
		r.Wrong = append(r.Wrong, wrong...)
		usual := usualDiffuse(h, site)
		for _, b := range h.Beds {
			if b.Site == site.ID {
				lights[b.ID] = bedLight(scene, b, usual)
			}
		}
	}
	for _, b := range h.Beds {
		r.Beds = append(r.Beds, BedLight{Bed: b.ID, Light: lights[b.ID]})
	}
	return r
}

// LightOn works out the light of one bed by month, as Light does of all.
func LightOn(h *holding.Holding, b place.Bed) [12]float64 {
	for _, site := range h.Sites {
		if site.ID == b.Site {
			scene, _ := shade.NewScene(site, h.Features)
			return bedLight(scene, b, usualDiffuse(h, site))
		}
	}
	return bedLight(&shade.Scene{}, b, [12]float64{})
}

// lightFrom is the mean light of a bed over the months that days run through.
func lightFrom(light [12]float64, first cal.Date, days int) float64 {
	sum, n := 0.0, 0
	for d := 0; d < max(1, days); d++ {
		sum += light[(first+cal.Date(d)).Month()-1]
		n++
	}
	return sum / float64(n)
}

// shadeSteps is how finely a share of light is told: to a ten-thousandth.
const shadeSteps = 1e4

// bedLight is a bed's light by month.
func bedLight(scene *shade.Scene, b place.Bed, usual [12]float64) [12]float64 {
	year := shade.Open()
	if b.At.IsSet() {
		year = scene.Bed(b)
	}
	light := year.Months(usual)
	for m := range light {
		light[m] = math.Round(light[m]*b.Light*shadeSteps) / shadeSteps
	}
	return light
}

// anyDiffuse is the diffuse share of the light where nothing is known of a
// place's radiation. // judgement: an ordinary cloudy climate
const anyDiffuse = 0.6

// usualDiffuse is the diffuse share of the light that is usual at a site in each
// month, from its weather's mean radiation (Erbs et al. 1982, the monthly
// correlation).
func usualDiffuse(h *holding.Holding, site place.Site) (out [12]float64) {
	radiation, known := meanRadiation(h, site)
	for m := range out {
		out[m] = anyDiffuse
		if !known {
			continue
		}
		day := cal.MonthDay{Month: m + 1, Day: 15}.DayOfYear()
		above := sun.ExtraterrestrialMJ(site.Location.LatitudeDeg, day)
		out[m] = sun.DiffuseShareMonthly(sun.Clearness(above, radiation[m]), sun.SunsetAngle(site.Location.LatitudeDeg, day))
	}
	return out
}

// meanRadiation is what a site's weather tells of its radiation, by month.
func meanRadiation(h *holding.Holding, site place.Site) (out [12]float64, known bool) {
	for i := range h.Weather {
		w := &h.Weather[i]
		switch {
		case w.ID != site.Weather:
		case w.Normals != nil:
			return w.Normals.RadiationMJ(site.Location), true
		case w.Record != nil:
			if normals, err := climate.NormalsOf(w.Record); err == nil {
				return normals.RadiationMJ(site.Location), true
			}
		}
	}
	return out, false
}
