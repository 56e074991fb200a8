package web

import (
	"errors"
	"net/http"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/draw"
	"garner/internal/fault"
	"garner/internal/words"
)

// compareBody is the page of two plans side by side.
type compareBody struct {
	Plans   []desk.PlanLine
	A, B    string // ids of the two
	Fault   string // what is wrong with what was asked; empty: nothing
	View    *desk.CompareView
	Figures []desk.ComparedFigure
	Axis    string
	Rows    []compareRow
	Rest    int // vegetables that do not differ
	Weeks   []compareWeek
}

// compareRow is one vegetable that differs, as two ribbons.
type compareRow struct {
	Title, Path, Says string
	First, Second     string // ribbons
}

// compareWeek is one week of both plans.
type compareWeek struct {
	Week                             cal.Date
	ShareA, ShareB                   float64
	GapsA, GapsB, GlutsA, GlutsB     int
	GroundA, GroundB, HoursA, HoursB float64
	WaterA, WaterB                   float64 // 0 where it is not told
}

// compareHeight is the height of a ribbon's greatest want [px].
const compareHeight = 26.0

// comparePage sets two plans side by side: the plan in force and the last other one
// unless two are named.
func comparePage(v *visit) error {
	plans, err := v.office.PlansView()
	if err != nil {
		return err
	}
	b := &compareBody{Plans: plans.Plans, A: v.query("a"), B: v.query("b")}
	if b.A == "" {
		b.A = plans.InForce
	}
	if b.B == "" {
		b.B = otherPlan(plans)
	}
	p := page{Name: "compare", Nav: "plans", Body: b}
	if b.A == "" || b.B == "" {
		return v.show(p)
	}
	view, err := v.office.CompareView(b.A, b.B)
	var wrong *fault.Error
	if errors.As(err, &wrong) && !desk.LacksWeather(err) && (wrong.Kind == fault.NotFound || wrong.Kind == fault.Conflict) {
		b.Fault, p.Status = v.sentence(wrong.Phrase), http.StatusNotFound
		return v.show(p)
	}
	if err != nil {
		return err
	}
	b.fill(v, view)
	return v.show(p)
}

func (b *compareBody) fill(v *visit, view *desk.CompareView) {
	b.View, b.A, b.B, b.Figures = view, view.A.ID, view.B.ID, view.Figures()
	b.Rest = len(view.Vegetables) - len(view.Differs)
	scale := draw.Scale{From: view.From, Days: 7 * view.Weeks, WidthPX: chartWidth}
	b.Axis = draw.Axis(scale, view.Today, nil, v.axisTexts(v.say("web.axis_today_date", words.Args{"date": planned(view.Today, view.Today)}), false))
	for _, d := range view.Differs {
		b.Rows = append(b.Rows, v.compareRow(view, d, scale))
	}
	for k := range view.Weeks {
		b.Weeks = append(b.Weeks, compareWeekOf(view, k))
	}
}

func (v *visit) compareRow(view *desk.CompareView, d desk.Difference, scale draw.Scale) compareRow {
	row := compareRow{Title: capital(view.Plurals[d.Vegetable]), Path: vegetablePath(d.Vegetable), Says: v.sentence(d.Bare)}
	first, second := view.RibbonsA[d.Vegetable], view.RibbonsB[d.Vegetable]
	row.First = v.compareRibbon(view, &first, nil, view.A.Name, scale)
	row.Second = v.compareRibbon(view, &second, &first, view.B.Name, scale)
	return row
}

// compareRibbon draws one plan's ribbon; of the second, what only it fills and what
// it leaves open stand out. A vegetable that a plan does not have has none.
func (v *visit) compareRibbon(view *desk.CompareView, r, before *desk.RibbonView, plan string, scale draw.Scale) string {
	if len(r.Food[0]) == 0 || fullWant(r.WantKg) == 0 {
		return ""
	}
	if before != nil && len(before.Food[0]) == 0 {
		before = nil
	}
	first, _ := rowWords(r, view.Today)
	label := v.say("web.compare_ribbon", words.Args{"vegetable": capital(r.Plural), "plan": plan, "text": plainText(v.sentence(first))})
	return draw.Ribbon(r, scale, draw.RibbonOptions{HeightPX: compareHeight, Label: label, Today: view.Today, Small: true, Months: true, Before: before})
}

func compareWeekOf(view *desk.CompareView, k int) compareWeek {
	a, b := &view.Comparison.A, &view.Comparison.B
	w := compareWeek{Week: view.From + cal.Date(7*k), ShareA: shareOf(a.Eaten[k], a.Want[k]), ShareB: shareOf(b.Eaten[k], b.Want[k]),
		GapsA: a.Gaps[k], GapsB: b.Gaps[k], GlutsA: a.Gluts[k], GlutsB: b.Gluts[k], GroundA: a.Ground[k], GroundB: b.Ground[k],
		HoursA: a.Garden[k] + a.Kitchen[k], HoursB: b.Garden[k] + b.Kitchen[k]}
	if view.TellsWater() {
		w.WaterA, w.WaterB = a.Water[k], b.Water[k]
	}
	return w
}

// shareOf is what is eaten of what is wanted; 1 where nothing is.
func shareOf(eaten, want float64) float64 {
	if want <= 0 {
		return 1
	}
	return eaten / want
}
