package desk

import (
	"garner/internal/fault"
	"garner/internal/shade"
	"garner/internal/words"
)

// GroundLight is the light on a site in a month, 1-12, and which of its trees
// stand bare: what lies beneath the plan. It is empty where nothing is drawn.
func (o *Office) GroundLight(site string, month int) (*ShadeView, error) {
	h, version, err := o.keeper.Holding()
	if err != nil {
		return nil, err
	}
	if month < 1 || month > 12 {
		return nil, fault.New(fault.OutOfRange, "desk.shade_month", words.Args{"given": month})
	}
	key := lightKey{version, site, month}
	if v, known := o.views.lights.get(key); known {
		return v, nil
	}
	v := &ShadeView{Month: month}
	if v.Site, err = siteOf(h, site); err != nil {
		return nil, err
	}
	scene, _ := shade.NewScene(v.Site, h.Features)
	v.Map = scene.Map(v.Site, month, usualDiffuse(h, v.Site)[month-1])
	for i, f := range h.Features {
		if f.Site == v.Site.ID {
			v.Features = append(v.Features, ShadeFeature{f, scene.Bare(i, month)})
		}
	}
	o.views.lights.keep(key, v)
	return v, nil
}
