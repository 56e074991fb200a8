package desk

import (
	"cmp"
	"slices"

	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/place"
	"garner/internal/supply"
	"garner/internal/watering"
	"garner/internal/words"
)

// ButtOptions say which butt is asked for: one of the holding's, or what is tried.
type ButtOptions struct {
	Source   string  // id of a butt; "": the first, unless a roof is tried
	Site     string  // of what is tried
	RoofM2   float64 // 0: that of the source
	Covering string
	HoldsL   float64
	Seed     uint64
}

// ButtView is what butts of several sizes would serve.
type ButtView struct {
	Source   string      `json:"source,omitempty"`
	Name     string      `json:"name,omitempty"`
	Site     string      `json:"site"`
	SiteName string      `json:"-"`
	RoofM2   float64     `json:"roof_m2"`
	Covering string      `json:"covering"`
	PerMM    float64     `json:"l_per_mm"` // litres that a millimetre of rain brings
	ShedL    float64     `json:"roof_l_year"`
	AskedL   float64     `json:"asked_l_year"`
	AskedDry float64     `json:"asked_l_year_dry"`
	Beds     []string    `json:"beds"` // ids of those that hang on it
	AllBeds  bool        `json:"all_beds"`
	Own      *ButtPoint  `json:"own"` // nil: no size is told
	Sizes    []ButtPoint `json:"sizes"`
	RuleL    float64     `json:"rule_l"`   // a twentieth of the year
	EnoughL  float64     `json:"enough_l"` // beyond which more holds little more; 0: nothing is served

	BedNames []string            `json:"-"`
	Butts    []place.WaterSource `json:"-"` // of the holding, to choose from
	Sites    []place.Site        `json:"-"`
}

// ButtPoint is what one size serves.
type ButtPoint struct {
	HoldsL    float64 `json:"holds_l"`
	Share     float64 `json:"share"`     // of the year's need, in the middle of the futures
	ShareDry  float64 `json:"share_dry"` // in the driest of ten
	EmptyDays int     `json:"empty_days"`
	EmptyDry  int     `json:"empty_days_dry"`
	OverflowL float64 `json:"overflow_l"`
}

// Butt works out a butt of a holding.
func Butt(h *holding.Holding, o ButtOptions) (*ButtView, error) {
	h, _ = withWeather(h)
	s, err := settingOf(h, OutlookOptions{Seed: o.Seed})
	if err != nil {
		return nil, err
	}
	m := outlook.NewMemory()
	d, err := watering.Year(s, m)
	if err != nil {
		return nil, err
	}
	return buttView(&asked{holding: h, setting: s}, m, d, o)
}

// ButtView works out a butt of the holding as it stands.
func (o *Office) ButtView(ask ButtOptions) (*ButtView, error) {
	a, d, err := o.demand()
	if err != nil {
		return nil, err
	}
	return buttView(a, o.views.sky, d, ask)
}

func buttView(a *asked, m *outlook.Memory, d *watering.Demand, o ButtOptions) (*ButtView, error) {
	v := &ButtView{Sites: a.holding.Sites, Sizes: []ButtPoint{}, Beds: []string{}}
	for _, w := range a.holding.Sources {
		if w.Kind == place.Butt {
			v.Butts = append(v.Butts, w)
		}
	}
	roof, holds, err := v.choose(a.holding, o)
	if err != nil || v.Site == "" {
		return v, err
	}
	if v.PerMM, err = roof.SharePerMM(); err != nil {
		return nil, err
	}
	v.RoofM2, v.Covering = roof.AreaM2, cmp.Or(roof.Covering, supply.Coverings()[0])
	v.hang(a)
	rain, err := outlook.Rain(a.setting, m, d.Futures, d.First, d.First+yearAhead)
	if err != nil {
		return nil, err
	}
	v.serve(d, rain[v.Site], holds)
	return v, nil
}

// yearAhead is the year that is looked at [d].
const yearAhead = 365

// choose finds the butt that is asked for and what of it is tried otherwise.
func (v *ButtView) choose(h *holding.Holding, o ButtOptions) (roof supply.Roof, holdsL float64, err error) {
	at := 0
	if o.Source != "" {
		if at = slices.IndexFunc(v.Butts, func(w place.WaterSource) bool { return w.ID == o.Source }); at < 0 {
			return roof, 0, fault.New(fault.NotFound, "desk.butt_unknown", words.Args{"given": o.Source})
		}
	}
	v.Site = o.Site
	if at < len(v.Butts) && (o.Site == "" || o.Site == v.Butts[at].Site) {
		w := v.Butts[at]
		v.Source, v.Name, v.Site = w.ID, w.Name, w.Site
		roof, holdsL = supply.Roof{AreaM2: w.RoofM2, Covering: w.Covering, Loss: w.FilterLoss}, w.HoldsL
	}
	if v.Site == "" && len(h.Sites) > 0 {
		v.Site = h.Sites[0].ID
	}
	site := slices.IndexFunc(h.Sites, func(s place.Site) bool { return s.ID == v.Site })
	if site < 0 && v.Site != "" {
		return roof, 0, fault.New(fault.NotFound, "desk.site_not_there", words.Args{"given": v.Site})
	}
	if site >= 0 {
		v.SiteName = h.Sites[site].Name
	}
	if o.RoofM2 > 0 {
		roof.AreaM2 = o.RoofM2
	}
	if o.Covering != "" {
		roof.Covering = o.Covering
	}
	if o.HoldsL > 0 {
		holdsL = o.HoldsL
	}
	return roof, holdsL, nil
}

// hang finds the beds that are watered from the butt; where none is told to be, those of
// its whole site.
func (v *ButtView) hang(a *asked) {
	n := newNamer(a)
	for _, b := range alongTheRoute(a.holding) {
		if v.Source != "" && b.Water == v.Source {
			v.Beds = append(v.Beds, b.ID)
		}
	}
	if len(v.Beds) == 0 {
		v.Beds, v.AllBeds = append(v.Beds, bedsOn(a.holding, v.Site)...), true
	}
	for _, id := range v.Beds {
		v.BedNames = append(v.BedNames, n.bed(id))
	}
}

// littleMore is the share of the need under which the next size is not worth it.
// judgement.
const littleMore = 0.04

// serve runs the year under every future for each size, the own one among them.
func (v *ButtView) serve(d *watering.Demand, rain [][]float64, holdsL float64) {
	var shed, asked []float64 // of the year, by future
	roofs, needs := make([][]float64, d.Futures), make([][]float64, d.Futures)
	for f := range d.Futures {
		needs[f] = d.Of(v.Beds, f)
		roofs[f] = make([]float64, d.Days)
		for i := range roofs[f] {
			roofs[f][i] = rain[f][i] * v.PerMM
		}
		shed, asked = append(shed, sumOf(roofs[f])), append(asked, sumOf(needs[f]))
	}
	v.ShedL, v.AskedL, v.AskedDry = wholeL(amongYears(shed, 0.5)), wholeL(amongYears(asked, 0.5)), wholeL(amongYears(asked, 0.9))
	v.RuleL = wholeL(supply.Twentieth(v.ShedL, v.AskedL))
	for _, size := range supply.Sizes {
		v.Sizes = append(v.Sizes, pointOf(size, roofs, needs))
	}
	if holdsL > 0 {
		own := pointOf(holdsL, roofs, needs)
		v.Own = &own
	}
	for i := range v.Sizes {
		if v.EnoughL = v.Sizes[i].HoldsL; i+1 < len(v.Sizes) && v.Sizes[i+1].Share-v.Sizes[i].Share < littleMore {
			break
		}
	}
	if v.AskedL <= 0 || v.PerMM <= 0 {
		v.EnoughL = 0
	}
}

// pointOf is one size under every future. A butt begins as full as the same year would
// leave it, come round once.
func pointOf(holdsL float64, roofs, needs [][]float64) ButtPoint {
	var share, empty, over []float64
	for f := range roofs {
		before := supply.Run(holdsL, holdsL, roofs[f], needs[f])
		c := supply.Run(holdsL, before.EndL, roofs[f], needs[f])
		share, empty, over = append(share, c.Served()), append(empty, float64(c.EmptyDays)), append(over, c.OverflowL)
	}
	return ButtPoint{HoldsL: holdsL, Share: amongYears(share, 0.5), ShareDry: amongYears(share, 0.1),
		EmptyDays: int(amongYears(empty, 0.5)), EmptyDry: int(amongYears(empty, 0.9)), OverflowL: wholeL(amongYears(over, 0.5))}
}

// amongYears is the value that a share of the values do not pass.
func amongYears(values []float64, share float64) float64 {
	sorted := slices.Clone(values)
	slices.Sort(sorted)
	return sorted[max(0, min(len(sorted)-1, int(share*float64(len(sorted))+0.999999)-1))]
}

// Coverings names what roofs are covered with.
func Coverings() []string { return supply.Coverings() }
