package desk

import (
	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/outlook"
)

// BedWater is what the air asks of a bed in the year ahead, by month, January
// first: reference evapotranspiration of its ground, that is, what short grass
// all over it would lose. The bed's covers count; the rain does not. The full
// light is that of the open sky under the same covers.
type BedWater struct {
	MM       [12]float64 `json:"asks_mm"`            // in the month
	OpenMM   [12]float64 `json:"full_light_mm"`      // in the month, in full light
	WeekL    [12]float64 `json:"asks_l_week"`        // litres for the whole bed in a week of the month
	OpenL    [12]float64 `json:"full_light_l_week"`  // the same in full light
	YearMM   float64     `json:"asks_mm_year"`       // all months
	YearOpen float64     `json:"full_light_mm_year"` // all months in full light
}

// Peak is the month, 1-12, in which the air asks most.
func (w *BedWater) Peak() int {
	peak := 0
	for m, mm := range w.MM {
		if mm > w.MM[peak] {
			peak = m
		}
	}
	return peak + 1
}

// Spared is the share of what the air would ask in full light that the shade
// spares in a month, 1-12. It is 0 where the shaded bed asks more, as it may in winter,
// when it keeps its warmth: the little that is asked then is within the error.
func (w *BedWater) Spared(month int) float64 { return spared(w.MM[month-1], w.OpenMM[month-1]) }

// YearSpared is the same of the whole year.
func (w *BedWater) YearSpared() float64 { return spared(w.YearMM, w.YearOpen) }

func spared(mm, openMM float64) float64 {
	if openMM <= 0 {
		return 0
	}
	return max(0, 1-mm/openMM)
}

// waterOf works out what the air asks of all beds, by id.
func waterOf(h *holding.Holding, m *outlook.Memory) (map[string]*BedWater, error) {
	s, err := settingOf(h, OutlookOptions{Seed: pageSeed})
	if err != nil {
		return nil, err
	}
	asked, err := outlook.AskedOfBeds(s, m)
	if err != nil {
		return nil, err
	}
	area := map[string]float64{}
	for _, b := range h.Beds {
		area[b.ID] = b.AreaM2()
	}
	out := map[string]*BedWater{}
	for i := range asked {
		a := &asked[i]
		w := &BedWater{}
		for month := range 12 {
			perWeek := 7 / float64(cal.DaysInMonth(month+1)) * area[a.Bed]
			w.MM[month], w.OpenMM[month] = tenthOf(a.MM[month]), tenthOf(a.OpenMM[month])
			w.WeekL[month], w.OpenL[month] = tenthOf(a.MM[month]*perWeek), tenthOf(a.OpenMM[month]*perWeek)
			w.YearMM += a.MM[month]
			w.YearOpen += a.OpenMM[month]
		}
		w.YearMM, w.YearOpen = tenthOf(w.YearMM), tenthOf(w.YearOpen)
		out[a.Bed] = w
	}
	return out, nil
}

// askedMM is what the air asks of each bed by month [mm]; nil where the site's weather
// does not tell.
func askedMM(h *holding.Holding, m *outlook.Memory) (map[string][12]float64, error) {
	all, err := waterOf(h, m)
	if err != nil {
		_, err = untold(err)
		return nil, err
	}
	out := map[string][12]float64{}
	for bed, w := range all {
		out[bed] = w.MM
	}
	return out, nil
}

// untold lists the faults of a holding for which a figure is left untold; a
// mistake of ours is passed on.
func untold(err error) (fault.List, error) {
	if err != nil && fault.KindOf(err) == fault.Internal {
		return nil, err
	}
	return listOf(err), nil
}

// waterKey names what the air asks of the beds: any entry may change it, and the
// day moves it on.
type waterKey struct {
	version int64
	sky     int64 // so may a forecast
	today   cal.Date
}

// water is what the air asks of all beds of the holding as it stands. It is
// worked out apart from the table, which may be under way.
func (o *Office) water(h *holding.Holding, version int64) (map[string]*BedWater, error) {
	now, err := today(h)
	if err != nil {
		return nil, err
	}
	key := waterKey{version, o.fetching.revision.Load(), now}
	if known, ok := o.views.waters.get(key); ok {
		return known, nil
	}
	w, err := waterOf(h, o.views.sky)
	if err != nil {
		return nil, err
	}
	o.views.waters.keep(key, w)
	return w, nil
}

// BedWater is what the air asks of one bed of the holding as it stands; nothing
// where the site's weather does not tell.
func (o *Office) BedWater(bed string) (*BedWater, error) {
	h, version, err := o.standing()
	if err != nil {
		return nil, err
	}
	all, err := o.water(h, version)
	if _, err = untold(err); err != nil {
		return nil, err
	}
	return all[bed], nil
}
