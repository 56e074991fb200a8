package desk

import (
	"garner/internal/cal"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/plan"
	"garner/internal/watering"
)

// WaterUse is the water given in the months behind and asked for in those ahead.
type WaterUse struct {
	Today cal.Date    `json:"today"`
	Sites []UsedWater `json:"sites"`
	All   UsedWater   `json:"all"`
	Beds  []UsedWater `json:"beds"` // those that are told of or ask for any, along the route
}

// UsedWater is the water of one bed, site or of all [L].
type UsedWater struct {
	ID       string       `json:"id,omitempty"`
	Name     string       `json:"name,omitempty"`
	Given    []GivenMonth `json:"given"`   // by the records: twelve months up to the present one
	ToCome   []ComeMonth  `json:"to_come"` // a year from today; the first and last month in part
	GivenL   float64      `json:"given_l"`
	YearL    float64      `json:"year_l"`     // the mean of the futures
	YearDryL float64      `json:"year_dry_l"` // in the driest of ten
}

// GivenMonth is what the records tell of a month.
type GivenMonth struct {
	Month cal.Date `json:"month"` // its first day
	L     float64  `json:"l"`
}

// ComeMonth is what a month will ask for.
type ComeMonth struct {
	Month cal.Date `json:"month"`
	L     float64  `json:"l"`     // the mean of the futures
	DryL  float64  `json:"dry_l"` // in the driest of ten
}

// WaterByMonth works out the water of a holding by month.
func WaterByMonth(h *holding.Holding, seed uint64) (*WaterUse, error) {
	h, _ = withWeather(h)
	s, err := settingOf(h, OutlookOptions{Seed: seed})
	if err != nil {
		return nil, err
	}
	d, err := watering.Year(s, outlook.NewMemory())
	if err != nil {
		return nil, err
	}
	return waterUse(&asked{holding: h, setting: s}, d)
}

// WaterUse is the water of the holding as it stands, by month.
func (o *Office) WaterUse() (*WaterUse, error) {
	a, d, err := o.demand()
	if err != nil {
		return nil, err
	}
	return waterUse(a, d)
}

// demand is what the beds will ask for in the year ahead.
func (o *Office) demand() (*asked, *watering.Demand, error) {
	a, err := o.askKnown()
	if err != nil {
		return nil, nil, err
	}
	name := a.answer("water of a year").Sum()
	if known, ok := o.views.demands.get(name); ok {
		return a, known, nil
	}
	d, err := watering.Year(a.setting, o.views.sky)
	if err != nil {
		return nil, nil, err
	}
	o.views.demands.keep(name, d)
	return a, d, nil
}

// monthsBack are the months of records that are told, the present one among them.
const monthsBack = 12

func waterUse(a *asked, d *watering.Demand) (*WaterUse, error) {
	plantings, faults := plan.Resolve(a.holding.Plans, a.holding.Plantings, a.holding.Changes, a.holding.Plan)
	if len(faults) > 0 {
		return nil, faults
	}
	given := watering.GivenByMonth(a.holding.Records, plantings)
	u := &WaterUse{Today: a.setting.Today, Sites: []UsedWater{}, Beds: []UsedWater{}}
	var all []string
	for _, site := range a.holding.Sites {
		beds := bedsOn(a.holding, site.ID)
		all = append(all, beds...)
		u.Sites = append(u.Sites, used(site.ID, site.Name, beds, a.setting.Today, d, given))
	}
	u.All = used("", "", all, a.setting.Today, d, given)
	n := newNamer(a)
	for _, id := range all {
		if b := used(id, n.bed(id), []string{id}, a.setting.Today, d, given); b.YearL > 0 || b.GivenL > 0 {
			u.Beds = append(u.Beds, b)
		}
	}
	return u, nil
}

// bedsOn are the beds of a site along the route.
func bedsOn(h *holding.Holding, site string) []string {
	var ids []string
	for _, b := range alongTheRoute(h) {
		if b.Site == site {
			ids = append(ids, b.ID)
		}
	}
	return ids
}

func used(id, name string, beds []string, now cal.Date, d *watering.Demand, given map[string]map[cal.Date]float64) UsedWater {
	u := UsedWater{ID: id, Name: name, ToCome: []ComeMonth{}}
	year, month, _ := now.YMD()
	for back := monthsBack - 1; back >= 0; back-- {
		first := cal.Of(year+(month-1-back+12)/12-1, (month-1-back+12)%12+1, 1)
		m := GivenMonth{Month: first}
		for _, bed := range beds {
			m.L += given[bed][first]
		}
		m.L = wholeL(m.L)
		u.GivenL += m.L
		u.Given = append(u.Given, m)
	}
	months, mean, dry := d.Months(beds)
	for _, m := range months {
		u.ToCome = append(u.ToCome, ComeMonth{m.First, wholeL(m.MeanL), wholeL(m.DryL)})
	}
	u.YearL, u.YearDryL = wholeL(mean), wholeL(dry)
	return u
}

// FirstAhead is the first month ahead, that of today; None where none is told.
func (u *UsedWater) FirstAhead() cal.Date {
	if len(u.ToCome) == 0 {
		return cal.None
	}
	return u.ToCome[0].Month
}
