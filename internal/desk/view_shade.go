package desk

import (
	"cmp"
	"slices"

	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/place"
	"garner/internal/shade"
	"garner/internal/words"
)

// ShadeView is the light on one site in a month, and on its beds through the
// year.
type ShadeView struct {
	Site     place.Site
	Sites    []place.Site // all there are
	Month    int          // 1-12
	Beds     []ShadedBed  // those drawn, in walking order
	Undrawn  []place.Bed
	Features []ShadeFeature
	Map      shade.Grid // empty when the site has no plan
	Taken    []Taken    // the most first
	Wrong    fault.List // what throws no shade as it is told; why no water is told
}

// ShadedBed is a bed with the light it gets, as shares of the open sky's: what
// stands round it times its own light_share.
type ShadedBed struct {
	place.Bed
	Light [12]float64
	Year  float64   // mean of the months
	Water *BedWater // what the air asks of it; nil where the weather does not tell
}

// ShadeFeature is a thing on the site.
type ShadeFeature struct {
	place.Feature
	Bare bool // it stands without its leaves in the month
}

// Taken is how much light one thing takes from a bed in the month, as a share of
// the open sky's: what the bed would gain without it.
type Taken struct {
	Feature, Bed string // names
	Share        float64
}

// ShadeView shows the light on a site in a month. No site gives the first one
// that is drawn, month 0 the holding's own.
func (o *Office) ShadeView(site string, month int) (*ShadeView, error) {
	h, version, err := o.keeper.Holding()
	if err != nil {
		return nil, err
	}
	v := &ShadeView{Month: month, Sites: h.Sites}
	if month == 0 {
		now, err := today(h)
		if err != nil {
			return nil, err
		}
		v.Month = now.Month()
	}
	if v.Month < 1 || v.Month > 12 {
		return nil, fault.New(fault.OutOfRange, "desk.shade_month", words.Args{"given": month})
	}
	found := slices.IndexFunc(h.Sites, func(s place.Site) bool { return s.ID == site || site == "" && s.PlanWidthM > 0 })
	if found < 0 && site != "" {
		return nil, fault.New(fault.NotFound, "desk.shade_site", words.Args{"given": site})
	}
	if len(h.Sites) == 0 {
		return v, nil
	}
	v.Site = h.Sites[max(0, found)]
	v.fill(h)
	water, err := o.water(h, version)
	faults, err := untold(err)
	v.Wrong = append(v.Wrong, faults...)
	for i := range v.Beds {
		v.Beds[i].Water = water[v.Beds[i].ID]
	}
	return v, err
}

func (v *ShadeView) fill(h *holding.Holding) {
	scene, wrong := shade.NewScene(v.Site, h.Features)
	v.Wrong = wrong
	usual := usualDiffuse(h, v.Site)
	now := usual[v.Month-1]
	v.Map = scene.Map(v.Site, v.Month, now)
	for i, f := range h.Features {
		if f.Site == v.Site.ID {
			v.Features = append(v.Features, ShadeFeature{f, scene.Bare(i, v.Month)})
		}
	}
	for _, b := range h.Beds {
		switch {
		case b.Site != v.Site.ID:
		case !b.At.IsSet():
			v.Undrawn = append(v.Undrawn, b)
		default:
			v.Beds = append(v.Beds, shadedBed(scene, b, usual))
		}
	}
	slices.SortStableFunc(v.Beds, func(a, b ShadedBed) int { return cmp.Compare(a.Order, b.Order) })
	v.take(h, scene, now)
}

func shadedBed(scene *shade.Scene, b place.Bed, usual [12]float64) ShadedBed {
	s := ShadedBed{Bed: b, Light: bedLight(scene, b, usual)}
	for _, light := range s.Light {
		s.Year += light / 12
	}
	return s
}

// leastTaken is the share of the light under which nobody is told of it: what is
// left out of the model is more.
const leastTaken = 0.01

// take leaves each thing out in turn and sees what each bed gains.
func (v *ShadeView) take(h *holding.Holding, scene *shade.Scene, diffuseShare float64) {
	with := make([]float64, len(v.Beds))
	for i := range v.Beds {
		with[i] = scene.BedInMonth(v.Beds[i].Bed, v.Month, diffuseShare)
	}
	for _, f := range scene.Features() {
		without := scene.Without(f)
		for i := range v.Beds {
			b := &v.Beds[i]
			if share := b.Bed.Light * (without.BedInMonth(b.Bed, v.Month, diffuseShare) - with[i]); share >= leastTaken {
				v.Taken = append(v.Taken, Taken{h.Features[f].Name, b.Name, share})
			}
		}
	}
	slices.SortStableFunc(v.Taken, func(a, b Taken) int { return cmp.Compare(b.Share, a.Share) })
}
