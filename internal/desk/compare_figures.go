package desk

import "garner/internal/words"

// ComparedFigure is one figure of both plans, and the second less the first.
type ComparedFigure struct{ Name, A, B, Differs words.Phrase }

// Figures are the sums of both plans in words, in the order in which they are shown.
func (v *CompareView) Figures() []ComparedFigure {
	a, b := &v.SumA, &v.SumB
	kg := unit{"desk.figure_kg", "desk.figure_kg"}
	share := unit{"desk.figure_share", "desk.figure_share_differs"}
	weeks := unit{"desk.figure_weeks", "desk.figure_weeks"}
	area := unit{"desk.figure_area_weeks", "desk.figure_area_weeks"}
	hours := unit{"desk.figure_hours", "desk.figure_hours_differs"}
	yield := unit{"desk.figure_yield", "desk.figure_yield"}
	return []ComparedFigure{
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
}

// unit is how a figure is written, and how a difference of it.
type unit struct{ figure, differs string }

func figure(name string, u unit, a, b float64) ComparedFigure {
	told := func(key string, n float64) words.Phrase { return words.P(key, words.Args{"n": n, "points": 100 * n}) }
	return ComparedFigure{words.P(name, nil), told(u.figure, a), told(u.figure, b), told(u.differs, b-a)}
}
