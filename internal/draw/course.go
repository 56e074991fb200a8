package draw

import (
	"math"

	"garner/internal/cal"
	"garner/internal/desk"
)

// CourseOptions say how a planting's expected course is drawn.
type CourseOptions struct {
	HeightPX float64 // of each panel
	Label    string  // what it shows, in text
	Months   [12]string
	Year     func(year int) string
	Today    cal.Date
	TodayIs  string
	Stage    func(stage string) string // a stage of the course, in words; "" leaves it out

	// The titles of the panels with their units.
	Weight, Leaf, Light, Warmth string
	Figure                      func(v float64) string // a figure of a scale
}

// The room round the panels of a course [px].
const (
	courseTop   = 22 // stage words
	courseTitle = 26 // over each panel
	courseFoot  = 24 // months
)

// panel is one quantity over the days of a course.
type panel struct {
	title, class string
	area         bool
	of           func(d desk.CourseDay) float64
}

// CourseScale is the scale from the first day of a course to the last.
func CourseScale(p *desk.PlantingView, widthPX float64) Scale {
	if len(p.Course) == 0 {
		return Scale{WidthPX: widthPX}
	}
	first, last := p.Course[0].Date, p.Course[len(p.Course)-1].Date
	return Scale{From: first, Days: int(last-first) + 1, WidthPX: widthPX}
}

// Course draws a planting's expected course in four panels over one time: the
// weight as a solid area, the leaf as a silhouette, the light that falls on it
// and the warmth as lines, the last two as means of about nine days. Hairlines
// stand where one stage gives way to the next, named along the top.
func Course(p *desk.PlantingView, s Scale, o CourseOptions) string {
	panels := []panel{
		{o.Weight, "ground", true, func(d desk.CourseDay) float64 { return d.KgM2 }},
		{o.Leaf, "leaf", true, func(d desk.CourseDay) float64 { return d.LAI }},
		{o.Light, "day", true, nil},
		{o.Warmth, "line", false, nil},
	}
	panels[2].of = smoothed(p.Course, func(d desk.CourseDay) float64 { return d.LightMJ })
	panels[3].of = smoothed(p.Course, func(d desk.CourseDay) float64 { return d.MeanC })
	each := o.HeightPX + courseTitle
	foot := courseTop + each*float64(len(panels))
	var c sheet
	c.frame("course", "img", o.Label, s.WidthPX, foot+courseFoot, false)
	c.path("month", monthLines(s, courseTop, foot))
	for i, q := range panels {
		c.panel(p.Course, s, q, courseTop+each*float64(i+1), o)
	}
	c.stages(p.Course, s, foot, o)
	for i, q := range panels {
		c.text("t-ink b f14 halo", 0, courseTop+each*float64(i)+courseTitle-9, q.title)
	}
	c.path("hair", monthLines(s, foot, foot+courseFoot))
	c.monthNames(s, foot+16, AxisTexts{Months: o.Months, Year: o.Year})
	if s.has(o.Today) {
		c.upright("pen today", s.X(o.Today), courseTop, foot)
		c.text("t-pen halo", s.X(o.Today)+4, courseTop+12, o.TodayIs)
	}
	return c.done()
}

// panel draws one quantity over its base line, with zero and one round figure.
func (c *sheet) panel(days []desk.CourseDay, s Scale, q panel, base float64, o CourseOptions) {
	low, high := 0.0, 0.0
	for _, d := range days {
		low, high = min(low, q.of(d)), max(high, q.of(d))
	}
	if high <= low {
		high = low + 1
	}
	y := func(v float64) float64 { return base - (v-low)/(high-low)*o.HeightPX }
	var line, area pen
	for i, d := range days {
		x, top := tenths(s.X(d.Date)), tenths(y(q.of(d)))
		if i == 0 {
			line.move(x, top)
			area.move(x, tenths(y(0)))
		}
		line.line(x, top)
		area.line(x, top)
	}
	if q.area && len(days) > 0 {
		area.line(area.x, tenths(y(0)))
		area.close()
		c.path(q.class, area.String())
	}
	if q.class != "ground" && q.class != "leaf" {
		c.path("line", line.String())
	}
	c.level("base", 0, s.WidthPX, y(0))
	if o.Figure != nil {
		for _, v := range []float64{0, round(max(high, 1e-9))} {
			c.text("end", -8, y(v)+4, o.Figure(v))
		}
	}
}

// smoothed returns the mean of a day and its neighbours in the course, which
// holds every third day.
func smoothed(days []desk.CourseDay, of func(desk.CourseDay) float64) func(desk.CourseDay) float64 {
	means := map[cal.Date]float64{}
	for i, d := range days {
		sum, n := 0.0, 0
		for k := max(0, i-1); k <= min(len(days)-1, i+1); k++ {
			sum, n = sum+of(days[k]), n+1
		}
		means[d.Date] = sum / float64(n)
	}
	return func(d desk.CourseDay) float64 { return means[d.Date] }
}

// stages sets a hairline where a stage begins, and its word where it has room.
func (c *sheet) stages(days []desk.CourseDay, s Scale, foot float64, o CourseOptions) {
	from := 0
	for i := 1; i <= len(days); i++ {
		if i < len(days) && days[i].Stage == days[from].Stage {
			continue
		}
		left, right := s.X(days[from].Date), s.WidthPX
		if i < len(days) {
			right = s.X(days[i].Date)
		}
		if from > 0 {
			c.upright("tick dashed", left, 4, foot)
		}
		words := ""
		if o.Stage != nil {
			words = o.Stage(days[from].Stage)
		}
		if widthOf(words, 14)+4 <= math.Max(0, right-left) {
			c.text("t-ink f14", left+4, 15, words)
		}
		from = i
	}
}
