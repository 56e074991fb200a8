package draw

import (
	"math"

	"garner/internal/cal"
	"garner/internal/desk"
)

// RiskDaysOptions say how the days that a rule looked at are drawn.
type RiskDaysOptions struct {
	Scale   Scale
	Today   cal.Date
	Label   string // what it shows, in text
	Axis    AxisTexts
	TempC   []float64 // thresholds of temperature [C]
	Value   func(p *desk.RiskPoint) float64
	Action  float64 // what Value has to come to; 0: not drawn
	Most    float64 // top of Value's scale
	Celsius func(c float64) string
	Figure  func(v float64) string
	Temps   string // names of the two parts
	Values  string
	Fired   string // at the first mark
}

// Heights of the chart [px].
const (
	daysTop   = 40.0
	tempsHigh = 110.0
	daysGap   = 26.0
	valueHigh = 84.0
	daysFoot  = 8.0
)

// RiskDays draws temperature by day, from its minimum to its maximum, with the rule's
// thresholds, and under it what the rule makes of the day with what it has to come
// to. A day on which it fired is marked through both.
func RiskDays(days []desk.RiskPoint, o RiskDaysOptions) string {
	height := daysTop + tempsHigh + daysGap + valueHigh + daysFoot
	var c sheet
	c.frame("risk-days", "img", o.Label, o.Scale.WidthPX, height, false)
	c.path("hair", monthLines(o.Scale, 0, height))
	c.monthNames(o.Scale, 14, o.Axis)
	o.fired(&c, days, height)
	o.temps(&c, days)
	o.values(&c, days)
	if o.Scale.has(o.Today) {
		c.upright("pen today", o.Scale.X(o.Today), 18, height)
	}
	return c.done()
}

// fired marks the days on which the rule fired.
func (o *RiskDaysOptions) fired(c *sheet, days []desk.RiskPoint, height float64) {
	last := math.Inf(-1)
	for i := range days {
		if !days[i].Fired || !o.Scale.has(days[i].Date) {
			continue
		}
		x := o.Scale.X(days[i].Date) + o.dayPX()/2
		c.path("fired", "M"+px(x-4)+" 22h8l-4 8z")
		c.upright("hair", x, 30, height-daysFoot)
		if last == math.Inf(-1) {
			c.text("t-ink b halo f12", min(x+7, o.Scale.WidthPX-widthOf(o.Fired, 12)*semiBold), 30, o.Fired)
		}
		last = x
	}
}

func (o *RiskDaysOptions) dayPX() float64 { return o.Scale.WidthPX / float64(max(1, o.Scale.Days)) }

// temps draws the temperatures.
func (o *RiskDaysOptions) temps(c *sheet, days []desk.RiskPoint) {
	low, high := 0.0, 20.0
	for i := range days {
		low, high = min(low, days[i].TMinC), max(high, days[i].TMaxC)
	}
	for _, t := range o.TempC {
		low, high = min(low, t), max(high, t)
	}
	y := func(t float64) float64 { return daysTop + tempsHigh*(high-t)/(high-low) }
	c.text("f12", 2, daysTop-2, o.Temps)
	c.level("hair", 0, o.Scale.WidthPX, y(0))
	for i := range days {
		d := &days[i]
		if !o.Scale.has(d.Date) {
			continue
		}
		class := "temp"
		if d.Made {
			class = "temp made"
		}
		x, w := o.Scale.X(d.Date), o.dayPX()
		c.rect(class, x+w*.15, y(d.TMaxC), max(1, w*.7), max(1, y(d.TMinC)-y(d.TMaxC)))
	}
	for _, t := range o.TempC {
		c.level("level", 0, o.Scale.WidthPX, y(t))
		c.text("end t-ink halo f12", o.Scale.WidthPX-2, y(t)-3, o.Celsius(t))
	}
}

// values draws what the rule makes of the days.
func (o *RiskDaysOptions) values(c *sheet, days []desk.RiskPoint) {
	top := daysTop + tempsHigh + daysGap
	foot := top + valueHigh
	y := func(v float64) float64 { return foot - valueHigh*min(1, v/o.Most) }
	c.text("f12", 2, top-6, o.Values)
	for i := range days {
		d := &days[i]
		if v := o.Value(d); v > 0 && o.Scale.has(d.Date) {
			x, w := o.Scale.X(d.Date), o.dayPX()
			class := "ground"
			if d.Made {
				class = "store"
			}
			c.rect(class, x+w*.1, y(v), max(1, w*.8), foot-y(v))
		}
	}
	c.level("base", 0, o.Scale.WidthPX, foot)
	if o.Action > 0 {
		c.level("level", 0, o.Scale.WidthPX, y(o.Action))
		c.text("end t-ink halo f12", o.Scale.WidthPX-2, y(o.Action)-3, o.Figure(o.Action))
	}
}
