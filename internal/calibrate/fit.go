package calibrate

import (
	"fmt"
	"sort"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/num"
	"garner/internal/season"
)

// Fitted is one fitted number with what it was fitted to.
type Fitted struct {
	Crop, Use, Parameter string
	Value                float64
	Unit                 string
	Wanted, Got          float64 // published figure and what the fit gives
	What                 string  // what was fitted
}

// field is the reference climate under each cover, built once.
type field struct {
	sky      *season.Sky
	days     []climate.Day
	bedsides map[cover.Kind]*season.Bedside
	runner   season.Runner
}

// Fit fits every use of the book.
func Fit(book *crop.Book) ([]Fitted, error) {
	days, err := referenceWeather()
	if err != nil {
		return nil, err
	}
	f := &field{sky: season.NewSky(referencePlace, referenceFirst, len(days)), days: days,
		bedsides: map[cover.Kind]*season.Bedside{}}
	var out []Fitted
	for _, c := range book.Crops() {
		for _, u := range c.Uses {
			fits, err := f.fit(u)
			if err != nil {
				return nil, err
			}
			out = append(out, fits...)
		}
	}
	return out, nil
}

func (f *field) fit(u *crop.Use) ([]Fitted, error) {
	if u.Pattern == crop.Perennial || !u.Feeds() {
		return nil, nil
	}
	beside, err := f.beside(cover.Kind(u.ReferenceCover))
	if err != nil {
		return nil, err
	}
	trial := *u
	trial.YieldScale, trial.UsableG = 1, 0
	trial.HeatStartC, trial.HeatEndC, trial.SlowFactor = 0, 0, 0
	var out []Fitted
	if dated(u) {
		days := f.fitDays(&trial, beside)
		trial.DaysFactor = days.Value
		out = append(out, days)
	}
	return append(out, f.fitYield(&trial, u, beside)), nil
}

func (f *field) beside(kind cover.Kind) (*season.Bedside, error) {
	if b, ok := f.bedsides[kind]; ok {
		return b, nil
	}
	g := season.Ground{Light: 1}
	if kind != cover.Open {
		g.Spells = []cover.Spell{{Kind: kind, On: referenceFirst, Off: cal.None}}
	}
	b := &season.Bedside{}
	if err := b.Build(f.sky, f.days, g, 0); err != nil {
		return nil, err
	}
	f.bedsides[kind] = b
	return b, nil
}

// crops grows the reference planting in every year.
func (f *field) crops(u *crop.Use, b *season.Bedside) []season.Outcome {
	params := growth.Prepare(u, growth.StartOf(u.ReferenceMethod), true)
	day, _ := cal.ParseMonthDay(u.ReferenceDate)
	var out []season.Outcome
	for y := 0; y < referenceYears; y++ {
		p := season.Planting{Parameters: params, Date: day.In(referenceFirst.Year() + y), AreaM2: 1, ClearBy: cal.None, Soil: 1}
		out = append(out, f.runner.Follow(f.sky, b, &p, growth.Fair(u), nil))
	}
	return out
}

// fitYield finds the scale that brings the median year to the published yield.
// The scale enters the limit on swelling, so it is found by repetition.
func (f *field) fitYield(u, book *crop.Use, b *season.Bedside) Fitted {
	trial := *u
	got := 0.0
	for range 12 {
		if got = f.medianYield(&trial, b); got <= 0 {
			break
		}
		trial.YieldScale *= book.YieldKgM2 / got
	}
	scale := round3(num.Clamp(trial.YieldScale, 0.05, 20))
	if got <= 0 {
		scale = 1
	}
	trial.YieldScale = scale
	return Fitted{Crop: u.Crop, Use: u.Name, Parameter: "yield_scale", Value: scale, Unit: "1",
		Wanted: book.YieldKgM2, Got: f.medianYield(&trial, b), What: "yield of the reference planting [kg/m2]"}
}

// pullAfter is how long after it is ready a crop of one pull is weighed, as a
// share of the time it stands: growers pull over that time.
const pullAfter = 0.25

// medianYield is that of the years that came ready: published yields are of
// crops that came to harvest.
func (f *field) medianYield(u *crop.Use, b *season.Bedside) float64 {
	var kg []float64
	for _, o := range f.crops(u, b) {
		if o.Ready >= 0 {
			kg = append(kg, weigh(&o))
		}
	}
	if len(kg) == 0 {
		return 0
	}
	sort.Float64s(kg)
	return num.Quantile(kg, 0.5)
}

func weigh(o *season.Outcome) float64 {
	sum := 0.0
	for _, v := range o.Flow {
		sum += float64(v)
	}
	if n := len(o.Standing); n > 0 {
		sum += float64(o.Standing[int(pullAfter*float64(n-1))])
	}
	return sum
}

func round3(v float64) float64 { return float64(int(v*1000+0.5)) / 1000 }

// Line writes a fitted number as a line of the book's fitted.csv.
func (f Fitted) Line() string {
	return fmt.Sprintf("%s,%s,%s,%g,%s,own-reference-fit,%s,fitted,%s wanted %.3g got %.3g",
		f.Crop, f.Use, f.Parameter, f.Value, f.Unit, "reference planting", f.What, f.Wanted, f.Got)
}
