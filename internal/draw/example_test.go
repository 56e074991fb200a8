package draw

import (
	"math"

	"garner/internal/cal"
	"garner/internal/desk"
)

// The household of the drawings' tests: 78 weeks from Monday 1 February 2027,
// today 9 March. One kilogram a week is wanted, half of it in summer and none in
// the last quarter.
var (
	exampleFrom  = cal.Of(2027, 2, 1)
	exampleToday = cal.Of(2027, 3, 9)
)

const exampleWeeks = 78

func exampleScale() Scale { return Weeks(exampleFrom, exampleWeeks) }

// rising is the share of futures that lie beyond a step, for a date with a
// middle and a spread in steps: the normal distribution.
func rising(step, middle int, spread float64) float32 {
	return float32(0.5 * math.Erfc(-(float64(step-middle) / spread / math.Sqrt2)))
}

// exampleRibbon is food out of store until about step 40, out of the ground from
// about step 60, to spare about step 90, and all of it from store again later.
func exampleRibbon() *desk.RibbonView {
	v := &desk.RibbonView{Name: "carrot", Plural: "carrots", WantKg: make([]float64, exampleWeeks)}
	for k := range v.WantKg {
		switch {
		case k >= 60:
		case k >= 18 && k < 30:
			v.WantKg[k] = 0.5
		default:
			v.WantKg[k] = 1
		}
	}
	n := exampleWeeks * 4
	for j := range desk.Threads {
		v.Ground[j], v.Food[j] = make([]float32, n), make([]float32, n)
		for i := range n {
			v.Ground[j][i] = rising(i, 60+2*j, 8) * (1 - rising(i, 150-3*j, 6))
			stored := 1 - rising(i, 40-j, 5) + rising(i, 146, 4)*(1-rising(i, 230-2*j, 9))
			v.Food[j][i] = min(1, v.Ground[j][i]+stored)
		}
	}
	for q := range v.Over {
		v.Over[q] = make([]float32, n)
		for i := 88; i < 112; i++ {
			v.Over[q][i] = float32(q) * 0.25
		}
	}
	first := exampleFrom + 7*12
	v.Gap = &desk.GapView{First: first, Last: first + 7*3 - 1, Weeks: 3, Good: 1, Poor: 5, Chance: 0.8, Lacks: 0.6}
	return v
}

// exampleVegetable has two plantings and a batch; from week 15 to 37 the first
// gives three quarters of what is eaten from the ground and the second a quarter.
func exampleVegetable() *desk.VegetableView {
	r := exampleRibbon()
	v := &desk.VegetableView{Name: "carrot", Plural: "carrots", Today: exampleToday, From: exampleFrom, Weeks: exampleWeeks,
		WantKg: r.WantKg, Ribbon: *r, Gaps: []desk.GapView{*r.Gap}}
	course := func(share float64, from, to int) []float64 {
		out := make([]float64, exampleWeeks)
		for k := from; k < to; k++ {
			out[k] = share * r.WantKg[k]
		}
		return out
	}
	none := make([]float64, exampleWeeks)
	v.Sources = []desk.SourceView{
		{Letter: "A", Batch: "old", Store: "shed", Name: "last year's", FreshKg: none, StoredKg: course(1, 0, 14)},
		{Letter: "B", Planting: "first", Name: "first", FreshKg: course(0.75, 10, 42), StoredKg: none},
		{Letter: "C", Planting: "second", Store: "shed", Name: "second", FreshKg: course(0.25, 10, 42), StoredKg: course(1, 34, 60)},
	}
	v.Plantings = []desk.PlantingLine{*exampleLine()}
	return v
}

func exampleLine() *desk.PlantingLine {
	n := exampleWeeks * 4
	p := &desk.PlantingLine{ID: "first", Letter: "B", Name: "first & <best>", Bed: "b", BedName: "bed 4", Date: exampleToday + 20,
		Leaf: make([]float32, n), Picked: make([]float32, n), Movable: true}
	for i := range n {
		p.Leaf[i] = 0.9 * rising(i, 50, 6) * (1 - rising(i, 120, 5))
		p.Picked[i] = rising(i, 80, 5) * (1 - rising(i, 110, 6))
	}
	return p
}

func examplePlanting() *desk.PlantingView {
	p := &desk.PlantingView{PlantingLine: *exampleLine(), Vegetable: "carrot"}
	for i := range 50 {
		stage := "growing"
		if i > 30 {
			stage = "ready"
		}
		p.Course = append(p.Course, desk.CourseDay{Date: exampleToday + cal.Date(3*i), Stage: stage, LAI: 0.08 * float64(i), KgM2: 0.002 * float64(i*i),
			LightMJ: 12 + 6*math.Sin(float64(i)), MeanC: float64(i)/4 - 2})
	}
	return p
}

func exampleTexts() AxisTexts {
	return AxisTexts{Label: "months & light", Months: [12]string{"Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"},
		Year: func(year int) string { return whole(year) }, Today: "today 9 March",
		Hours: func(h float64) string { return px(h) }, Daylight: func(h float64) string { return px(h) + " of daylight" }}
}

// exampleDaylight rises and falls about twelve hours, lowest at the winter
// solstice, five hours either way.
func exampleDaylight() []float64 {
	out := make([]float64, exampleWeeks)
	for k := range out {
		day := float64((exampleFrom + cal.Date(7*k)).DayOfYear())
		out[k] = 12 - 5*math.Cos(2*math.Pi*(day+10)/365)
	}
	return out
}
