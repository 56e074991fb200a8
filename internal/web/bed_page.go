package web

import (
	"garner/internal/cover"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/place"
	"garner/internal/words"
)

// bedBody is the page of one bed.
type bedBody struct {
	plantingsBody // tells of plantings
	Path          string
	Bed           bedLine
	All           []desk.GroundLine // to come
	Past          []desk.GroundLine
	Tend          *tendBody
	Light         float64 // share of the open sky's light, mean of the year
	LightPath     string
	Asks          string // what the air asks of it; "" where the weather does not tell
	AsksPath      string
	Water         bedWaterBody
}

// bed shows one bed: what stands in it, what comes, and what lies over it.
func bed(v *visit) error {
	return v.showBed(v.r.PathValue("id"), typedForm{}, 0)
}

// showBed shows a bed, with a form of its page that could not be taken.
func (v *visit) showBed(id string, typed typedForm, status int) error {
	h, err := v.office.Holding()
	if err != nil {
		return err
	}
	ground, err := v.office.GroundView()
	if err != nil {
		return err
	}
	its, found := bedWith(h, id)
	if !found {
		return fault.New(fault.NotFound, "desk.row_unknown", words.Args{"kind": words.P("desk.kind_beds", nil), "id": id})
	}
	b := bedBody{plantingsBody: plantingsBody{Today: ground.Today, Forecast: ground.Forecast}, Path: bedPath(id), Bed: bedOf(h, its, ground)}
	for _, p := range ground.Plantings {
		switch {
		case p.Bed != id:
		case p.State == desk.Ahead:
			b.All = append(b.All, p)
		case p.State == desk.Past:
			b.Past = append(b.Past, p)
		}
	}
	if b.Tend, err = v.tend(id, typed); err != nil {
		return err
	}
	b.Light, b.LightPath = meanLight(desk.LightOn(h, its)), lightPath(its.Site, ground.Today.Month())
	water, err := v.office.BedWater(id)
	if err != nil {
		return err
	}
	asks, month := v.bedAsks(water)
	b.Asks, b.AsksPath = asks, lightPath(its.Site, month)+"#light-water"
	b.Water = v.bedWater(h, its, ground.Today)
	return v.show(page{Name: "bed", Nav: "ground", Status: status, Body: b})
}

func bedWith(h *holding.Holding, id string) (place.Bed, bool) {
	for _, b := range h.Beds {
		if b.ID == id {
			return b, true
		}
	}
	return place.Bed{}, false
}

// coverLine tells when a cover lies over a bed.
func (v *visit) coverLine(c place.CoverSpell) rowLine {
	name := v.named("desk.value_covers.kind.", string(c.Kind))
	if c.Kind == cover.Open {
		name = string(c.Kind)
	}
	says := words.P("web.cover_on", words.Args{"on": c.On})
	if c.Off.IsSet() {
		says = words.P("web.cover_on_off", words.Args{"on": c.On, "off": c.Off})
	}
	return rowLine{Name: capital(name), Path: rowPath(&coverForm, c.ID) + "/edit", Says: says}
}
