package calibrate

import (
	_ "embed" // the uses whose days are fitted
	"sort"
	"strings"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/num"
	"garner/internal/season"
)

//go:embed data/dated.csv
var datedUses string

// dated tells whether a use's published days are calendar days at the reference
// place, so that its days factor is fitted to them.
func dated(u *crop.Use) bool {
	for _, line := range strings.Split(datedUses, "\n") {
		if strings.HasPrefix(line, u.Crop+","+u.Name+",") {
			return true
		}
	}
	return false
}

// never stands for a crop that does not come ready.
const never = 1e6

// fitDays finds the days factor that brings the median year ready after the
// published days, by halving.
func (f *field) fitDays(u *crop.Use, b *season.Bedside) Fitted {
	params := growth.Prepare(u, growth.StartOf(u.ReferenceMethod), true)
	wanted := params.PublishedDays()
	low, high := 0.03, 1.5
	trial := *u
	trial.ReadyStage = 1
	for range 18 {
		trial.DaysFactor = (low + high) / 2
		if f.medianDays(&trial, b) > wanted {
			high = trial.DaysFactor
		} else {
			low = trial.DaysFactor
		}
	}
	trial.DaysFactor = round3((low + high) / 2)
	return Fitted{Crop: u.Crop, Use: u.Name, Parameter: "days_factor", Value: trial.DaysFactor, Unit: "1",
		Wanted: wanted, Got: f.medianDays(&trial, b), What: "days to first use"}
}

func (f *field) medianDays(u *crop.Use, b *season.Bedside) float64 {
	day, _ := cal.ParseMonthDay(u.ReferenceDate)
	var took []float64
	for y, o := range f.crops(u, b) {
		d := never
		if o.Ready >= 0 {
			d = float64(o.Ready - int(day.In(referenceFirst.Year()+y)-referenceFirst))
		}
		took = append(took, d)
	}
	sort.Float64s(took)
	return num.Quantile(took, 0.5)
}
