package web

import (
	"strings"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/draw"
	"garner/internal/words"
)

// chartWidth is how wide the time of a vegetable or a planting is drawn [px]. On
// a phone it is swept.
const chartWidth = 904

// courseWidth is how wide a planting's course is drawn [px].
const courseWidth = 1080

// Heights on the page of a vegetable [px].
const (
	stackHeight  = 158.0
	beforeHeight = 34.0
	laneHeight   = 34.0
	courseHeight = 92.0
)

func chartScale(view *desk.VegetableView) draw.Scale {
	return draw.Scale{From: view.From, Days: 7 * view.Weeks, WidthPX: chartWidth}
}

// vegetableAxis draws the time along the top or the foot; today is named at the
// top.
func (v *visit) vegetableAxis(view *desk.VegetableView, top bool) string {
	today, named := cal.None, ""
	if top {
		today, named = view.Today, v.say("web.axis_today_date", words.Args{"date": planned(view.Today, view.Today)})
	}
	return draw.Axis(chartScale(view), today, nil, v.axisTexts(named, false))
}

// stack draws the want and what fills it.
func (v *visit) stack(view *desk.VegetableView) string {
	return draw.Stack(view, chartScale(view), draw.StackOptions{HeightPX: stackHeight,
		Label:  v.say("web.vegetable_label", words.Args{"name": capital(view.Plural), "text": plainText(strings.Join(v.vegetableWords(view), " "))}),
		Source: v.sourceName,
		Figure: func(kg float64) string { return v.words.Format().Plain(kg) },
		Want:   v.say("web.vegetable_want_label", nil),
		Gap:    func(g desk.GapView) string { return v.say("web.vegetable_short_total", words.Args{"n": g.Weeks}) },
		Mended: func(weeks int) string { return v.say("web.vegetable_mended", words.Args{"n": weeks}) },
		Bought: v.say("web.ribbon_bought", nil),
		Short:  v.say("web.ribbon_short", nil)})
}

// sourceName is what stands upon a source's band.
func (v *visit) sourceName(s desk.SourceView, stored bool) string {
	key := "web.vegetable_fresh"
	if stored {
		key = "web.vegetable_stored"
	}
	return s.Letter + "  " + v.say(key, nil)
}

// before draws how a vegetable stands, when a change is tried.
func (v *visit) before(view *desk.VegetableView) string {
	text := v.shortTotal(view)
	return draw.Ribbon(&view.Ribbon, chartScale(view), draw.RibbonOptions{HeightPX: beforeHeight, Today: view.Today, Months: true,
		Label: v.say("web.ribbon_label", words.Args{"name": capital(view.Plural), "text": text}), Words: v.ribbonWords()})
}

// laneDraw draws a planting on the time axis, with a ring where its date can be
// moved.
func (v *visit) laneDraw(view *desk.VegetableView, line *desk.PlantingLine, l *laneBody) string {
	o := draw.LaneOptions{HeightPX: laneHeight, Today: view.Today, Tried: l.Tried, Months: true, Out: cal.None,
		Label: v.say("web.vegetable_lane_label", words.Args{"letter": line.Letter, "name": line.Name, "when": l.When, "odds": l.Odds})}
	if line.Movable {
		o.Ring = v.say("web.vegetable_ring_label", words.Args{"letter": line.Letter, "name": line.Name})
		o.Date = v.words.Text(planned(line.Date, view.Today))
	}
	return draw.Lane(line, chartScale(view), o)
}

// courseDraw draws how a planting is likely to go; nothing when it has no days.
func (v *visit) courseDraw(view *desk.PlantingView, today cal.Date) string {
	if len(view.Course) == 0 {
		return ""
	}
	texts := v.axisTexts("", false)
	first, last := view.Course[0].Date, view.Course[len(view.Course)-1].Date
	return draw.Course(view, draw.CourseScale(view, courseWidth), draw.CourseOptions{HeightPX: courseHeight, Today: today,
		Label:  v.say("web.planting_course_label", words.Args{"first": first, "last": last}),
		Months: texts.Months, Year: texts.Year, TodayIs: v.say("web.axis_today", nil),
		Stage:  func(stage string) string { return v.named("web.planting_stage_", stage) },
		Weight: v.say("web.planting_weight", nil), Leaf: v.say("web.planting_leaf", nil),
		Light: v.say("web.planting_light", nil), Warmth: v.say("web.planting_mean", nil),
		Figure: v.words.Format().Plain})
}
