package calibrate

import (
	"sort"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/num"
	"garner/internal/season"
)

// Harvest is how a use's reference planting fares in the reference climate.
type Harvest struct {
	Use     *crop.Use
	Years   int
	Ready   int     // years in which it came ready
	Days    float64 // median days from going into the ground to first use, over those years
	Quick   float64 // the same for the quickest of the sowings of the two months after the reference date
	YieldKg float64 // median yield of the years that came ready [kg/m2]; perennials in a full year
}

// Harvests grows every reference planting of the book.
func Harvests(book *crop.Book) ([]Harvest, error) {
	days, err := referenceWeather()
	if err != nil {
		return nil, err
	}
	f := &field{sky: season.NewSky(referencePlace, referenceFirst, len(days)), days: days,
		bedsides: map[cover.Kind]*season.Bedside{}}
	var out []Harvest
	for _, c := range book.Crops() {
		for _, u := range c.Uses {
			if !u.Feeds() {
				continue
			}
			b, err := f.beside(cover.Kind(u.ReferenceCover))
			if err != nil {
				return nil, err
			}
			out = append(out, f.harvest(u, b))
		}
	}
	return out, nil
}

// fullAge is an age at which a perennial bears in full.
const fullAge = 4

func (f *field) harvest(u *crop.Use, b *season.Bedside) Harvest {
	h := Harvest{Use: u, Years: referenceYears}
	day, _ := cal.ParseMonthDay(u.ReferenceDate)
	params := growth.Prepare(u, growth.StartOf(u.ReferenceMethod), true)
	var took, kg []float64
	for y := range referenceYears {
		p := season.Planting{Parameters: params, Date: day.In(referenceFirst.Year() + y), AreaM2: 1, ClearBy: cal.None, Soil: 1}
		if params.Perennial() {
			p.YearsOld = fullAge
			p.ClearBy = p.Date + 365
		}
		o := f.runner.Follow(f.sky, b, &p, growth.Fair(u), nil)
		if o.Ready >= 0 || params.Perennial() {
			kg = append(kg, weigh(&o))
		}
		if o.Ready >= 0 {
			took = append(took, float64(o.Ready-int(p.Date-referenceFirst)))
		}
	}
	sort.Float64s(took)
	sort.Float64s(kg)
	h.Quick = f.quickest(u, b, params)
	h.Ready, h.Days = len(took), num.Quantile(took, 0.5)
	if len(kg) > 0 {
		h.YieldKg = num.Quantile(kg, 0.5)
	}
	return h
}

// sowingsAfter are the days after the reference date on which a use is put in
// once more: published days are those of good conditions, which in a cool
// climate come later than the first sowing.
var sowingsAfter = []int{0, 20, 40, 60}

func (f *field) quickest(u *crop.Use, b *season.Bedside, params *growth.Parameters) float64 {
	day, _ := cal.ParseMonthDay(u.ReferenceDate)
	best := never
	for _, after := range sowingsAfter {
		var took []float64
		for y := range referenceYears {
			p := season.Planting{Parameters: params, Date: day.In(referenceFirst.Year()+y) + cal.Date(after), AreaM2: 1, ClearBy: cal.None, Soil: 1}
			if o := f.runner.Follow(f.sky, b, &p, growth.Fair(u), nil); o.Ready >= 0 {
				took = append(took, float64(o.Ready-int(p.Date-referenceFirst)))
			}
		}
		if len(took) > referenceYears/2 {
			sort.Float64s(took)
			best = min(best, num.Quantile(took, 0.5))
		}
	}
	return best
}
