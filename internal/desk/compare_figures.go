package desk

import (
	"math"

	"garner/internal/words"
)

// ComparedFigure is one figure of both plans, and the second less the first.
type ComparedFigure struct{ Name, A, B, Differs words.Phrase }

// Figures are the sums of both plans in words, in the order in which they are shown.
func (v *CompareView) Figures() []ComparedFigure {
	a, b := &v.SumA, &v.SumB
	kg := unit{"desk.figure_kg", "desk.figure_kg", 1}
	share := unit{"desk.figure_share", "desk.figure_share_differs", 0.01}
	weeks := unit{"desk.figure_weeks", "desk.figure_weeks", 1}
	area := unit{"desk.figure_area_weeks", "desk.figure_area_weeks", 10}
	hours := unit{"desk.figure_hours", "desk.figure_hours", 1}
	yield := unit{"desk.figure_yield", "desk.figure_yield", 0.1}
	litres := unit{"desk.figure_litres", "desk.figure_litres", 100}
	out := []ComparedFigure{
		figure("desk.compare_figure_share", share, a.Share, b.Share),
		figure("desk.compare_figure_eaten", kg, a.EatenKg, b.EatenKg),
		figure("desk.compare_figure_short", kg, a.ShortKg, b.ShortKg),
		figure("desk.compare_figure_gaps", weeks, float64(a.GapWeeks), float64(b.GapWeeks)),
		figure("desk.compare_figure_over", kg, a.OverKg, b.OverKg),
		figure("desk.compare_figure_gluts", weeks, float64(a.GlutWeeks), float64(b.GlutWeeks)),
		figure("desk.compare_figure_ground", area, a.AreaWeeks, b.AreaWeeks),
		figure("desk.compare_figure_garden", hours, a.GardenH, b.GardenH),
		figure("desk.compare_figure_kitchen", hours, a.KitchenH, b.KitchenH),
		figure("desk.compare_figure_yield", yield, a.KgPerM2, b.KgPerM2),
	}
	if !v.TellsWater() {
		return out
	}
	return append(out, figure("desk.compare_figure_water", litres, a.WaterL, b.WaterL))
}

// TellsWater tells whether the weather of all sites tells what water is asked.
func (v *CompareView) TellsWater() bool {
	return v.Comparison.A.Water != nil && v.Comparison.B.Water != nil
}

// WaterNote says what the water of a comparison is.
func (v *CompareView) WaterNote() words.Phrase {
	if v.TellsWater() {
		return words.P("desk.compare_water", nil)
	}
	return words.P("desk.compare_no_water", nil)
}

// unit is how a figure is written, how a difference of it, and how finely both are told.
type unit struct {
	figure, differs string
	step            float64
}

func figure(name string, u unit, a, b float64) ComparedFigure {
	a, b = math.Round(a/u.step)*u.step, math.Round(b/u.step)*u.step
	told := func(key string, n float64) words.Phrase { return words.P(key, words.Args{"n": n, "points": 100 * n}) }
	return ComparedFigure{words.P(name, nil), told(u.figure, a), told(u.figure, b), told(u.differs, b-a)}
}
